using System.Globalization;
using System.Security.Claims;
using JobBoard.Shop.Running;

namespace JobBoard.Web.SignIn;

/// <summary>Between the sign-in cookie and people: the cookie names a person, what they are comes from the shop each time.</summary>
public sealed class Viewers(ShopRunner runner)
{
    internal const string Scheme = "jobboard";
    private const string PersonId = ClaimTypes.NameIdentifier;
    private const string WallId = "wall";
    private const string CustomerLinkId = "customer-link";
    private const string PinAtMs = "pin-at";
    private const string PinMarkOf = "pin-mark";

    /// <summary>Who a request comes from.</summary>
    public Viewer Of(ClaimsPrincipal user)
    {
        // First: whoever comes by a customer's link is that and nothing more, also in a browser where somebody of the shop is signed in.
        if (user.FindFirstValue(CustomerLinkId) is { } link) return new CustomerViewer(link);
        if (user.FindFirstValue(WallId) is { } wall) return new WallViewer(wall);
        var id = user.FindFirstValue(PersonId);
        return id is not null && runner.State.People.TryGetValue(id, out var person) && !person.Left
            ? new PersonViewer(person, PinAt(user))
            : new NoViewer();
    }

    /// <summary>Who a request comes from, when it is a person.</summary>
    public PersonViewer? PersonOf(ClaimsPrincipal user) => Of(user) as PersonViewer;

    internal static ClaimsPrincipal ForPerson(string id, DateTimeOffset pinAt, string pinMark) => Principal(
        new(PersonId, id), new(PinAtMs, pinAt.ToUnixTimeMilliseconds().ToString(CultureInfo.InvariantCulture)), new(PinMarkOf, pinMark));

    internal static ClaimsPrincipal ForWall(string tokenId) => Principal(new(PersonId, "wall:" + tokenId), new(WallId, tokenId));

    internal static ClaimsPrincipal ForCustomer(string linkId) => Principal(new(PersonId, "customer:" + linkId), new(CustomerLinkId, linkId));

    internal static string? PinMark(ClaimsPrincipal user) => user.FindFirstValue(PinMarkOf);

    private static ClaimsPrincipal Principal(params Claim[] claims) => new(new ClaimsIdentity(claims, Scheme));

    private static DateTimeOffset PinAt(ClaimsPrincipal user) =>
        long.TryParse(user.FindFirstValue(PinAtMs), NumberStyles.None, CultureInfo.InvariantCulture, out var at)
            ? DateTimeOffset.FromUnixTimeMilliseconds(at)
            : DateTimeOffset.MinValue;
}

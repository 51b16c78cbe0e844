using JobBoard.Web.Live;
using JobBoard.Web.SignIn;

namespace JobBoard.Web.Pages.Customer;

/// <summary>What the holder of a customer's link sees: all of it, from <see cref="CustomerView"/> alone.</summary>
public sealed class CustomerFragment(CustomerLinks links) : IFragment
{
    /// <inheritdoc/>
    public string Name => "page";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Customer;

    /// <inheritdoc/>
    public Type Component => typeof(CustomerScreen);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = CustomerMapping.Of(picture, links.CarOf(audience.LinkId)) };
}

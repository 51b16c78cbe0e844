using System.Security.Cryptography;
using System.Text;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Running;

namespace JobBoard.Web.SignIn;

/// <summary>While no owner can sign in, a one-time code from the console lets one person make the owner.</summary>
public sealed class FirstRun(ShopRunner runner, PinBook pins)
{
    // No letters or digits that are taken for one another.
    private const string Letters = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";

    private readonly string _code = RandomNumberGenerator.GetString(Letters, 4) + "-" + RandomNumberGenerator.GetString(Letters, 4);
    private volatile bool _done;

    /// <summary>Whether the owner is still to be made.</summary>
    public bool IsNeeded => !_done && !(_done = AnOwnerCanSignIn());

    /// <summary>The code, or nothing when it is not needed.</summary>
    public string? Code => IsNeeded ? _code : null;

    /// <summary>Whether it is the code, however it was typed.</summary>
    public bool IsCode(string? typed) => CryptographicOperations.FixedTimeEquals(
        Encoding.UTF8.GetBytes(Plain(typed ?? "")), Encoding.UTF8.GetBytes(Plain(_code)));

    private static string Plain(string text) => new([.. text.ToUpperInvariant().Where(char.IsLetterOrDigit)]);

    private bool AnOwnerCanSignIn()
    {
        var people = runner.State.People;
        return pins.People.Any(id => people.TryGetValue(id, out var person) && !person.Left && person.Position == Position.Owner);
    }
}

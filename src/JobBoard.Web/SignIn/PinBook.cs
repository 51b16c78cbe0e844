using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using JobBoard.Storage;
using JobBoard.Storage.SignIn;
using Microsoft.AspNetCore.Identity;

namespace JobBoard.Web.SignIn;

/// <summary>PINs of people: 4 to 8 digits, kept as salted slow hashes.</summary>
public sealed class PinBook(ShopDatabase database, TimeProvider clock)
{
    private readonly CredentialStore _store = new(database);
    private readonly PasswordHasher<string> _hasher = new();

    /// <summary>People who have a PIN.</summary>
    public IReadOnlyList<string> People => _store.PersonIds();

    /// <summary>What is wrong with a new PIN, or nothing.</summary>
    public static string? Fault(string? pin) => pin switch
    {
        null or { Length: < 4 or > 8 } => "A PIN has 4 to 8 digits.",
        _ when !pin.All(char.IsAsciiDigit) => "A PIN has digits only.",
        _ when pin.Distinct().Count() == 1 => "A PIN is not one digit over and over.",
        _ => null,
    };

    /// <summary>Keeps a person's PIN in place of the one before; who was signed in with that one is signed out.</summary>
    /// <exception cref="ArgumentException">It is no PIN (<see cref="Fault"/>).</exception>
    public void Set(string person, string pin)
    {
        if (Fault(pin) is { } fault) throw new ArgumentException(fault, nameof(pin));
        _store.Keep(person, _hasher.HashPassword(person, pin), clock.GetUtcNow().ToUnixTimeMilliseconds());
    }

    /// <summary>Whether it is the person's PIN; false for a person who has none, in about the same time.</summary>
    public bool IsRight(string person, string pin)
    {
        var hash = _store.FindPinHash(person);
        var right = _hasher.VerifyHashedPassword(person, hash ?? Nobody.Value, pin) != PasswordVerificationResult.Failed;
        return hash is not null && right;
    }

    /// <summary>Changes when the PIN does: a session begun with another one ends. Nothing for a person without a PIN.</summary>
    internal string? Mark(string person) =>
        _store.FindPinHash(person) is { } hash ? Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(hash)), 0, 8) : null;

    private static readonly Lazy<string> Nobody = new(() => new PasswordHasher<string>().HashPassword("", RandomNumberGenerator.GetHexString(16)));
}

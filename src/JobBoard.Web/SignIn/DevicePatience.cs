using System.Globalization;
using JobBoard.Storage;
using JobBoard.Storage.SignIn;
using Microsoft.AspNetCore.DataProtection;

namespace JobBoard.Web.SignIn;

/// <summary>
/// Wrong PINs slow the device down, never the person. A device is known by a cookie it gets with its first right PIN; until
/// then by its address on the network.
/// </summary>
public sealed class DevicePatience(ShopDatabase database, TimeProvider clock, IDataProtectionProvider protection)
{
    /// <summary>Wrong PINs in a row that cost nothing.</summary>
    public const int Free = 3;

    private const string Cookie = "jobboard-device";
    private static readonly TimeSpan First = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(5);

    private readonly DeviceStore _store = new(database);
    private readonly IDataProtector _protector = protection.CreateProtector("device");

    /// <summary>How long a device waits after so many wrong PINs in a row: 5 s, doubled each time, at most 5 min.</summary>
    public static TimeSpan WaitAfter(long wrong) =>
        wrong < Free ? TimeSpan.Zero : TimeSpan.FromTicks(Math.Min(Longest.Ticks, First.Ticks << (int)Math.Min(wrong - Free, 10)));

    /// <summary>How long this device still has to wait, in whole seconds; 0 when it need not.</summary>
    public int SecondsToWait(HttpContext http)
    {
        var until = _store.Find(IdOf(http)).BlockedUntil ?? 0;
        return (int)Math.Clamp(Math.Ceiling((until - Now) / 1000.0), 0, Longest.TotalSeconds);
    }

    /// <summary>Counts a wrong PIN.</summary>
    public void CountWrong(HttpContext http) => _store.CountWrong(
        IdOf(http), count => WaitAfter(count) is { Ticks: > 0 } wait ? Now + (long)wait.TotalMilliseconds : null);

    /// <summary>A right PIN: the count is cleared and the device becomes known.</summary>
    public void Clear(HttpContext http)
    {
        _store.Clear(IdOf(http));
        var id = KnownId(http) ?? Guid.CreateVersion7().ToString("N", CultureInfo.InvariantCulture);
        http.Response.Cookies.Append(Cookie, _protector.Protect(id), new CookieOptions
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Lax,
            Secure = http.Request.IsHttps,
            MaxAge = TimeSpan.FromDays(400),
            IsEssential = true,
        });
    }

    private long Now => clock.GetUtcNow().ToUnixTimeMilliseconds();

    private string IdOf(HttpContext http) => KnownId(http) ?? "at " + (http.Connection.RemoteIpAddress?.ToString() ?? "unknown");

    private string? KnownId(HttpContext http)
    {
        if (http.Request.Cookies[Cookie] is not { } kept) return null;
        try
        {
            return _protector.Unprotect(kept);
        }
        catch (System.Security.Cryptography.CryptographicException)
        {
            return null;
        }
    }
}

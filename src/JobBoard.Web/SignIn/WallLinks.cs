using System.Globalization;
using JobBoard.Storage;
using JobBoard.Storage.SignIn;
using Microsoft.AspNetCore.Authentication;

namespace JobBoard.Web.SignIn;

/// <summary>Links that open the floor on a wall screen, read only. The token is shown once and kept hashed; a link can be withdrawn.</summary>
public sealed class WallLinks(ShopDatabase database, TimeProvider clock)
{
    private const string Kind = "wall";
    private readonly TokenStore _tokens = new(database);
    private readonly WallScreenStore _screens = new(database);
    private IReadOnlyDictionary<string, WallScreen>? _known;

    /// <summary>What a screen is taken to be until it is set: seen from 4 m, 65 inch.</summary>
    public static WallScreen Usual { get; } = new(4, 65);

    /// <summary>All links, the newest first.</summary>
    public IReadOnlyList<TokenRow> All => _tokens.List(Kind);

    /// <summary>Makes a link; the token returned is the only copy.</summary>
    public string Make(string label, WallScreen? screen = null)
    {
        var id = Guid.CreateVersion7().ToString("N", CultureInfo.InvariantCulture);
        var token = _tokens.Create(id, Kind, label, Now);
        if (screen is not null) Set(id, screen);
        return token;
    }

    /// <summary>The screen of a link, the usual one where none was set.</summary>
    public WallScreen ScreenOf(string id) => (_known ??= _screens.All()).GetValueOrDefault(id) ?? Usual;

    /// <summary>Sets the screen of a link; false where there is no such link.</summary>
    public bool Set(string id, WallScreen screen)
    {
        if (!Stands(id)) return false;
        _screens.Set(id, screen);
        _known = null;
        return true;
    }

    /// <summary>Reads a distance and a diagonal as typed, with a point or a comma; a screen, or what is wrong in words.</summary>
    public static (WallScreen? Screen, string? Fault) Read(string? metres, string? inches)
    {
        var (far, across) = (Number(metres), Number(inches));
        if (far is not (>= 0.5 and <= 30)) return (null, "Metres from the screen: 0.5 to 30.");
        if (across is not (>= 10 and <= 200)) return (null, "Inches across the screen, corner to corner: 10 to 200.");
        return (new(far.Value, across.Value), null);
    }

    private static double? Number(string? typed) =>
        decimal.TryParse(typed?.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? (double)number : null;

    /// <summary>Withdraws a link: its screens go dark at their next request or push.</summary>
    public bool Withdraw(string id) => _tokens.Withdraw(id, Now);

    /// <summary>Whether a link still opens the wall.</summary>
    public bool Stands(string id) => All.Any(t => t.Id == id && t.OpensAt(Now));

    internal async Task<bool> Enter(HttpContext http, string token)
    {
        if (_tokens.Find(token, Kind, Now) is not { } row) return false;
        _tokens.NoteUse(row.Id, Now);
        await http.SignInAsync(Viewers.Scheme, Viewers.ForWall(row.Id), new() { IsPersistent = true }).ConfigureAwait(false);
        return true;
    }

    private long Now => clock.GetUtcNow().ToUnixTimeMilliseconds();
}

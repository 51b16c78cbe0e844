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

    /// <summary>All links, the newest first.</summary>
    public IReadOnlyList<TokenRow> All => _tokens.List(Kind);

    /// <summary>Makes a link; the token returned is the only copy.</summary>
    public string Make(string label) => _tokens.Create(Guid.CreateVersion7().ToString("N", CultureInfo.InvariantCulture), Kind, label, Now);

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

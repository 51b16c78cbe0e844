using Dapper;

namespace JobBoard.Storage.SignIn;

/// <summary>A wall's screen.</summary>
/// <param name="Metres">How far away people look at it from, above 0.</param>
/// <param name="Inches">Its diagonal, above 0.</param>
public sealed record WallScreen(double Metres, double Inches);

/// <summary>The screens of wall links, by the link's id.</summary>
public sealed class WallScreenStore(ShopDatabase database)
{
    /// <summary>Every screen that was set.</summary>
    public IReadOnlyDictionary<string, WallScreen> All() => database.Read(connection => connection
        .Query<(string Id, double Metres, double Inches)>("SELECT token_id, metres, inches FROM wall_screens")
        .ToDictionary(row => row.Id, row => new WallScreen(row.Metres, row.Inches), StringComparer.Ordinal));

    /// <summary>Sets the screen of a link that exists.</summary>
    public void Set(string id, WallScreen screen) => database.Write(connection => connection.Execute(
        "INSERT INTO wall_screens (token_id, metres, inches) VALUES (@id, @metres, @inches) ON CONFLICT (token_id) DO UPDATE SET metres = excluded.metres, inches = excluded.inches",
        new { id, metres = screen.Metres, inches = screen.Inches }));
}

using Dapper;

namespace JobBoard.Storage.SignIn;

/// <summary>Hashed PINs by person. The hash is made elsewhere; a PIN never comes here.</summary>
public sealed class CredentialStore(ShopDatabase database)
{
    /// <summary>The hash kept for a person, or null when there is none.</summary>
    public string? FindPinHash(string personId) => database.Read(connection =>
        connection.QuerySingleOrDefault<string>("SELECT pin_hash FROM credentials WHERE person_id = @personId", new { personId }));

    /// <summary>People who have a PIN.</summary>
    public IReadOnlyList<string> PersonIds() => database.Read(connection =>
        connection.Query<string>("SELECT person_id FROM credentials ORDER BY person_id").AsList());

    /// <summary>Keeps a person's hash in place of the one before.</summary>
    /// <param name="personId">The person.</param>
    /// <param name="pinHash">The hash, as text.</param>
    /// <param name="at">Unix milliseconds.</param>
    public void Keep(string personId, string pinHash, long at) => database.Write(connection => connection.Execute(
        """
        INSERT INTO credentials (person_id, pin_hash, updated_at) VALUES (@personId, @pinHash, @at)
        ON CONFLICT (person_id) DO UPDATE SET pin_hash = excluded.pin_hash, updated_at = excluded.updated_at
        """,
        new { personId, pinHash, at }));

    /// <summary>Forgets a person's hash; says whether there was one.</summary>
    public bool Remove(string personId) => database.Write(connection =>
        connection.Execute("DELETE FROM credentials WHERE person_id = @personId", new { personId })) == 1;
}

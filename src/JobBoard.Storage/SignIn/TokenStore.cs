using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using Dapper;

namespace JobBoard.Storage.SignIn;

/// <summary>What is known of a token; the token itself is known only to its holder.</summary>
/// <param name="Id">Names it, for withdrawing.</param>
/// <param name="Kind">What it opens, such as a wall or the owner's set-up page.</param>
/// <param name="Label">What people call it.</param>
/// <param name="CreatedAt">Unix milliseconds.</param>
/// <param name="ExpiresAt">Unix milliseconds; null when it does not run out.</param>
/// <param name="WithdrawnAt">Unix milliseconds; null while it stands.</param>
/// <param name="LastUsedAt">Unix milliseconds; null while it was never used.</param>
public sealed record TokenRow(string Id, string Kind, string Label, long CreatedAt, long? ExpiresAt, long? WithdrawnAt, long? LastUsedAt)
{
    /// <summary>True when it opens what it is for at that instant (Unix milliseconds).</summary>
    public bool OpensAt(long now) => WithdrawnAt is null && (ExpiresAt is null || now < ExpiresAt);
}

/// <summary>Random 256-bit tokens, of which only the SHA-256 is kept. Being random and long they need no slow hash.</summary>
/// <param name="database">Where they are kept.</param>
/// <param name="fill">Fills a token's 32 bytes; the system's random numbers by default.</param>
public sealed class TokenStore(ShopDatabase database, Action<byte[]>? fill = null)
{
    private const string Columns =
        """
        id AS Id, kind AS Kind, label AS Label, created_at AS CreatedAt, expires_at AS ExpiresAt,
        withdrawn_at AS WithdrawnAt, last_used_at AS LastUsedAt
        """;

    private readonly Action<byte[]> _fill = fill ?? (bytes => RandomNumberGenerator.Fill(bytes));

    /// <summary>Makes a token and keeps its hash. The text returned is the only copy there will ever be: 43 characters fit for an address.</summary>
    /// <param name="id">Not used before.</param>
    /// <param name="kind">What it opens.</param>
    /// <param name="label">What people call it.</param>
    /// <param name="createdAt">Unix milliseconds.</param>
    /// <param name="expiresAt">Unix milliseconds, or null.</param>
    public string Create(string id, string kind, string label, long createdAt, long? expiresAt = null)
    {
        var bytes = new byte[32];
        _fill(bytes);
        var token = Base64Url.EncodeToString(bytes);
        database.Write(connection => connection.Execute(
            "INSERT INTO tokens (id, kind, hash, label, created_at, expires_at) VALUES (@id, @kind, @hash, @label, @createdAt, @expiresAt)",
            new { id, kind, hash = Hash(token), label, createdAt, expiresAt }));
        return token;
    }

    /// <summary>The token's row when it opens that kind of thing now; null when it is unknown, of another kind, run out or withdrawn.</summary>
    public TokenRow? Find(string token, string kind, long now)
    {
        var row = database.Read(connection => connection.QuerySingleOrDefault<TokenRow>(
            $"SELECT {Columns} FROM tokens WHERE hash = @hash AND kind = @kind", new { hash = Hash(token), kind }));
        return row is not null && row.OpensAt(now) ? row : null;
    }

    /// <summary>Every token of a kind, the newest first, withdrawn ones too.</summary>
    public IReadOnlyList<TokenRow> List(string kind) => database.Read(connection => connection.Query<TokenRow>(
        $"SELECT {Columns} FROM tokens WHERE kind = @kind ORDER BY created_at DESC, id", new { kind }).AsList());

    /// <summary>Notes when it was last used (Unix milliseconds).</summary>
    public void NoteUse(string id, long at) =>
        database.Write(connection => connection.Execute("UPDATE tokens SET last_used_at = @at WHERE id = @id", new { id, at }));

    /// <summary>Withdraws a token for good. True for the one caller that did it: so a one-time code is spent once, by one.</summary>
    public bool Withdraw(string id, long at) => database.Write(connection =>
        connection.Execute("UPDATE tokens SET withdrawn_at = @at WHERE id = @id AND withdrawn_at IS NULL", new { id, at })) == 1;

    private static byte[] Hash(string token) => SHA256.HashData(Encoding.UTF8.GetBytes(token));
}

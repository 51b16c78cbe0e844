using Dapper;
using JobBoard.Storage.Outcomes;
using Microsoft.Data.Sqlite;

namespace JobBoard.Storage.Journal;

/// <summary>Gives entries their place and their hashes and writes them, within a transaction that is open.</summary>
internal sealed class JournalWriter
{
    private const string Insert =
        """
        INSERT INTO journal (shop_id, seq, stream, version, kind, schema, body, actor, occurred_at, recorded_at, command_id,
                             body_salt, body_commitment, prev_hash, entry_hash)
        VALUES (@ShopId, @Seq, @Stream, @Version, @Kind, @Schema, @Body, @Actor, @OccurredAt, @RecordedAt, @CommandId,
                @BodySalt, @BodyCommitment, @PrevHash, @EntryHash)
        """;

    private readonly SqliteConnection _connection;
    private readonly string _shopId;
    private readonly Action<byte[]> _fillSalt;
    private byte[] _lastHash;

    public JournalWriter(SqliteConnection connection, string shopId, Action<byte[]> fillSalt)
    {
        (_connection, _shopId, _fillSalt) = (connection, shopId, fillSalt);
        var last = connection.QuerySingleOrDefault<Place>("SELECT seq AS Seq, entry_hash AS Hash FROM journal ORDER BY seq DESC LIMIT 1");
        (Head, _lastHash) = last is null ? (0, ChainHash.Start) : (last.Seq, last.Hash);
    }

    /// <summary>The last number written, tentative ones included.</summary>
    public long Head { get; private set; }

    public Mark Here(bool blanked) => new(Head, _lastHash, blanked);

    public void GoBackTo(Mark mark) => (Head, _lastHash) = (mark.Head, mark.Hash);

    public JournalRow Write(CommandOutcome command, NewEntry entry)
    {
        Check(command, entry);
        var row = AtNextPlace(command, entry);
        _connection.Execute(Insert, row);
        (Head, _lastHash) = (row.Seq, row.EntryHash);
        return row.ToRow();
    }

    private StoredRow AtNextPlace(CommandOutcome command, NewEntry entry)
    {
        var salt = new byte[ChainHash.SaltBytes];
        _fillSalt(salt);
        var row = new StoredRow(
            _shopId, Head + 1, entry.Stream, NextVersion(entry.Stream), entry.Kind, entry.Schema, entry.Body, entry.Actor,
            entry.OccurredAt, command.At, command.CommandId.ToString("D"), salt, ChainHash.Commitment(salt, entry.Body), _lastHash, []);
        return row with { EntryHash = ChainHash.Entry(row) };
    }

    private long NextVersion(string stream) =>
        1 + _connection.ExecuteScalar<long>("SELECT COALESCE(MAX(version), 0) FROM journal WHERE stream = @stream", new { stream });

    private static void Check(CommandOutcome command, NewEntry entry)
    {
        ArgumentException.ThrowIfNullOrEmpty(entry.Stream);
        ArgumentException.ThrowIfNullOrEmpty(entry.Kind);
        ArgumentException.ThrowIfNullOrEmpty(entry.Body);
        ArgumentException.ThrowIfNullOrEmpty(entry.Actor);
        ArgumentOutOfRangeException.ThrowIfLessThan(entry.Schema, 1);
        if (entry.CommandId != command.CommandId)
        {
            throw new ArgumentException($"Entry {entry.Kind} names command {entry.CommandId}, but is appended for {command.CommandId}.", nameof(entry));
        }
    }

    /// <summary>Where the book stood, to go back to when a command is taken back.</summary>
    public readonly record struct Mark(long Head, byte[] Hash, bool Blanked);

    private sealed record Place(long Seq, byte[] Hash);
}

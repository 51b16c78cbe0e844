using System.Collections.Concurrent;
using Microsoft.Data.Sqlite;

namespace JobBoard.Benchmarks.Kill;

/// <summary>What the clients were told, to be held against what is written down.</summary>
internal sealed class Ledger
{
    private readonly ConcurrentDictionary<Guid, string> _answers = new();
    private readonly ConcurrentDictionary<string, byte> _synchronous = new();
    private int _answeredOtherwise;

    /// <summary>Letters answered with an outcome.</summary>
    public int Acknowledged => _answers.Count;

    /// <summary>Letters sent again that were answered otherwise than before.</summary>
    public int AnsweredOtherwise => _answeredOtherwise;

    /// <summary>Every setting the writers said of themselves, joined; nothing when none did.</summary>
    public string? Synchronous => _synchronous.IsEmpty ? null : string.Join(",", _synchronous.Keys.Order(StringComparer.Ordinal));

    /// <summary>The answers so far, by letter.</summary>
    public IReadOnlyDictionary<Guid, string> Answers => _answers;

    /// <summary>Notes an answer; false when no outcome was reached and the letter is to be sent again.</summary>
    public bool Note(Letter letter, Reply reply)
    {
        if (reply.Synchronous is { } level) _synchronous.TryAdd(level, 0);
        if (reply.Kept is not { } outcome) return false;
        if (_answers.GetOrAdd(letter.Id, outcome) != outcome) Interlocked.Increment(ref _answeredOtherwise);
        return true;
    }

    /// <summary>Holds every answer against the file, read by a connection that can only read.</summary>
    public Comparison Compare(string file)
    {
        using var connection = new SqliteConnection($"Data Source={file};Mode=ReadOnly;Pooling=False");
        connection.Open();
        using var transaction = connection.BeginTransaction(deferred: true);
        return Comparison.Of(_answers, Kept(connection), Entries(connection), Number(connection, Twice));
    }

    // Each client's note has words of its own, whatever the id it came under.
    private const string Twice =
        """
        SELECT COALESCE(SUM(n - 1), 0) FROM (SELECT COUNT(*) AS n FROM journal WHERE kind = 'note-written' GROUP BY json_extract(body, '$.words')) WHERE n > 1
        """;

    private static Dictionary<Guid, KeptOutcome> Kept(SqliteConnection connection) =>
        Read(connection, "SELECT command_id, outcome, first_seq, last_seq FROM commands", r => new KeptOutcome(r.GetString(1), Long(r, 2), Long(r, 3)));

    private static Dictionary<Guid, KeptEntries> Entries(SqliteConnection connection) => Read(
        connection, "SELECT command_id, MIN(seq), MAX(seq), COUNT(*) FROM journal GROUP BY command_id", r => new KeptEntries(r.GetInt64(1), r.GetInt64(2), r.GetInt64(3)));

    private static long? Long(SqliteDataReader row, int column) => row.IsDBNull(column) ? null : row.GetInt64(column);

    private static Dictionary<Guid, T> Read<T>(SqliteConnection connection, string sql, Func<SqliteDataReader, T> read)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        using var rows = command.ExecuteReader();
        var all = new Dictionary<Guid, T>();
        while (rows.Read()) all.Add(Guid.Parse(rows.GetString(0)), read(rows));
        return all;
    }

    private static long Number(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return (long)command.ExecuteScalar()!;
    }
}

/// <summary>An outcome as the file keeps it.</summary>
internal sealed record KeptOutcome(string Outcome, long? First, long? Last);

/// <summary>A command's entries as the file keeps them.</summary>
internal sealed record KeptEntries(long First, long Last, long Count);

/// <summary>What is missing or too much in the file.</summary>
/// <param name="Lost">Answered, and not there whole with the same outcome.</param>
/// <param name="Duplicated">More entries under a command than it has, or one note written more than once.</param>
/// <param name="Torn">Not answered to anybody, and there in part.</param>
internal sealed record Comparison(int Lost, int Duplicated, int Torn)
{
    public static Comparison Of(
        IReadOnlyDictionary<Guid, string> answers, Dictionary<Guid, KeptOutcome> kept, Dictionary<Guid, KeptEntries> entries, long notesTwice)
    {
        var lost = answers.Count(a => !kept.TryGetValue(a.Key, out var k) || k.Outcome != a.Value || CountOf(k) > CountIn(entries, a.Key));
        var doubled = entries.Count(e => e.Value.Count > (kept.TryGetValue(e.Key, out var k) ? CountOf(k) : 0));
        var torn = kept.Count(k => !answers.ContainsKey(k.Key) && CountOf(k.Value) > CountIn(entries, k.Key));
        return new(lost, doubled + (int)notesTwice, torn);
    }

    private static long CountOf(KeptOutcome kept) => kept.First is { } first ? kept.Last!.Value - first + 1 : 0;

    private static long CountIn(Dictionary<Guid, KeptEntries> entries, Guid id) =>
        entries.TryGetValue(id, out var e) && e.Last - e.First + 1 == e.Count ? e.Count : 0;
}

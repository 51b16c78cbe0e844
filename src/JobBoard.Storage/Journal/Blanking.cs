using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;

namespace JobBoard.Storage.Journal;

/// <summary>The one path on which a body is taken out. The table's triggers hold the same conditions on any connection.</summary>
internal static class Blanking
{
    public static void Check(SqliteConnection connection, NewEntry entry, IReadOnlyList<long> seqs)
    {
        if (seqs.Count == 0 || !Named(entry.Body).SequenceEqual(seqs))
        {
            throw new ArgumentException("The entry's \"blanks\" must be the numbers to blank, in the same order, and at least one.", nameof(entry));
        }

        var free = connection.Query<long>(
            "SELECT seq FROM journal WHERE seq IN @seqs AND seq NOT IN (SELECT seq FROM blankings) AND seq NOT IN (SELECT by_seq FROM blankings)",
            new { seqs }).ToHashSet();
        if (free.Count != seqs.Count)
        {
            throw new ArgumentException("Each number must be that of an entry, named once, not yet blanked and not itself a blanking.", nameof(seqs));
        }
    }

    public static void Write(SqliteConnection connection, long bySeq, IReadOnlyList<long> seqs)
    {
        foreach (var seq in seqs)
        {
            connection.Execute("INSERT INTO blankings (seq, by_seq) VALUES (@seq, @bySeq)", new { seq, bySeq });
            connection.Execute("UPDATE journal SET body = '', body_salt = x'' WHERE seq = @seq", new { seq });
        }
    }

    private static IEnumerable<long> Named(string body)
    {
        try
        {
            using var document = JsonDocument.Parse(body);
            var blanks = document.RootElement.GetProperty("blanks");
            return blanks.ValueKind == JsonValueKind.Array ? [.. blanks.EnumerateArray().Select(e => e.GetInt64())] : [blanks.GetInt64()];
        }
        catch (Exception error) when (error is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            return [];
        }
    }
}

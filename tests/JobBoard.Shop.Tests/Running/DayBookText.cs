using Microsoft.Data.Sqlite;

namespace JobBoard.Shop.Tests.Running;

/// <summary>Every table of a shop's file as text, without what is made at random: ids of the file, salts, and hashes over salts.</summary>
internal static class DayBookText
{
    private static readonly string[] Random = ["body_salt", "body_commitment", "prev_hash", "entry_hash"];

    /// <summary>Rows by table, in order; read by a connection that can only read.</summary>
    public static SortedDictionary<string, string[]> Of(string file)
    {
        using var connection = new SqliteConnection($"Data Source={file};Mode=ReadOnly;Pooling=False");
        connection.Open();
        var names = Rows(connection, "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name <> 'meta'", r => r.GetString(0));
        return new(names.ToDictionary(n => n, n => Rows(connection, $"SELECT * FROM \"{n}\"", Text).Order(StringComparer.Ordinal).ToArray()), StringComparer.Ordinal);
    }

    private static string Text(SqliteDataReader row) => string.Join(
        " | ", Enumerable.Range(0, row.FieldCount).Where(i => !Random.Contains(row.GetName(i))).Select(i => $"{row.GetName(i)}={Text(row.GetValue(i))}"));

    private static string Text(object value) => value is byte[] bytes ? Convert.ToHexString(bytes) : value.ToString() ?? "";

    private static List<string> Rows(SqliteConnection connection, string sql, Func<SqliteDataReader, string> read)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        using var rows = command.ExecuteReader();
        var all = new List<string>();
        while (rows.Read()) all.Add(read(rows));
        return all;
    }
}

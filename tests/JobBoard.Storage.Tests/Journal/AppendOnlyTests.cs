using Dapper;
using Microsoft.Data.Sqlite;

namespace JobBoard.Storage.Tests.Journal;

/// <summary>The triggers hold on a connection that nobody prepared, whatever its settings.</summary>
public sealed class AppendOnlyTests : IDisposable
{
    private const string Columns =
        "seq, shop_id, stream, version, kind, schema, body, actor, occurred_at, recorded_at, command_id, body_salt, body_commitment, prev_hash, entry_hash";

    private readonly ShopFile _file = new();

    public AppendOnlyTests()
    {
        _file.Append("car-1", """{"words":"one","blanks":[1,3]}""", """{"words":"two"}""");
        _file.Append("shop", """{"words":"three"}""");
        _file.Blank(2);
    }

    public void Dispose() => _file.Dispose();

    public static TheoryData<string> Attempts() =>
    [
        "UPDATE journal SET body = '{}' WHERE seq = 1",
        "UPDATE journal SET seq = 99 WHERE seq = 4",
        "UPDATE journal SET rowid = 99 WHERE seq = 4",
        "UPDATE journal SET actor = actor",
        "UPDATE OR REPLACE journal SET seq = 1 WHERE seq = 2",
        "UPDATE OR IGNORE journal SET version = 7 WHERE seq = 2",
        "DELETE FROM journal WHERE seq = 3",
        "DELETE FROM journal",
        Insert("INSERT", "1, 'shop-1', 'car-1', 3"),
        Insert("INSERT OR REPLACE", "1, 'shop-1', 'car-1', 3"),
        Insert("INSERT OR REPLACE", "5, 'shop-1', 'car-1', 1"),
        Insert("REPLACE", "1, 'shop-1', 'car-1', 1"),
        Insert("INSERT OR IGNORE", "1, 'shop-1', 'car-1', 3"),
        Insert("INSERT", "1, 'shop-1', 'car-1', 3") + " ON CONFLICT (seq) DO UPDATE SET body = excluded.body",
        Insert("INSERT", "5, 'shop-1', 'car-1', 1") + " ON CONFLICT (stream, version) DO UPDATE SET body = excluded.body",
        Insert("INSERT", "6, 'shop-1', 'car-1', 3"),
        Insert("INSERT", "5, 'shop-1', 'car-1', 4"),
        Insert("INSERT", "5, 'shop-2', 'car-1', 3"),
        Insert("INSERT", "NULL, 'shop-1', 'car-1', 1"),
        Insert("INSERT OR REPLACE", "1, 'shop-1', 'car-1', 3").Replace("(seq,", "(rowid,", StringComparison.Ordinal),
        "UPDATE journal SET body = '', body_salt = x'' WHERE seq = 1",
        "UPDATE journal SET body = '' WHERE seq = 1",
        "UPDATE journal SET body_salt = x'' WHERE seq = 1",
        "UPDATE journal SET body = 'again' WHERE seq = 2",
        "UPDATE journal SET actor = 'p-2', body = '', body_salt = x'' WHERE seq = 2",
        "UPDATE journal SET body = NULL WHERE seq = 2",
        "INSERT INTO blankings (seq, by_seq) VALUES (1, 4)",
        "INSERT INTO blankings (seq, by_seq) VALUES (1, 3)",
        "INSERT OR REPLACE INTO blankings (seq, by_seq) VALUES (2, 3)",
        "INSERT INTO blankings (seq, by_seq) VALUES (4, 4)",
        "INSERT INTO blankings (seq, by_seq) VALUES (1, 1)",
        "INSERT INTO blankings (seq, by_seq) VALUES (3, 1)",
        "UPDATE blankings SET seq = 1",
        "DELETE FROM blankings",
        "UPDATE commands SET outcome = 'other'",
        "INSERT OR REPLACE INTO commands SELECT command_id, hash, accepted, 'other', first_seq, last_seq, actor, at FROM commands",
    ];

    [Theory]
    [MemberData(nameof(Attempts))]
    public void Nothing_changes_on_a_raw_connection(string sql)
    {
        foreach (var recursive in (string[])["OFF", "ON"])
        {
            using var raw = _file.Raw();
            raw.Execute($"PRAGMA recursive_triggers = {recursive}; PRAGMA foreign_keys = {recursive};");
            var before = Everything(raw);

            Assert.Throws<SqliteException>(() => raw.Execute(sql));

            Assert.Equal(before, Everything(raw));
        }
    }

    [Fact]
    public void The_next_entry_is_taken_on_a_raw_connection()
    {
        using var raw = _file.Raw();

        raw.Execute(Insert("INSERT", "5, 'shop-1', 'car-1', 3"));

        Assert.Equal(5, raw.ExecuteScalar<long>("SELECT MAX(seq) FROM journal"));
    }

    private static string Insert(string verb, string place) =>
        $"{verb} INTO journal ({Columns}) VALUES ({place}, 'Noted', 1, 'forged', 'p-9', 0, 0, 'c', x'00', x'00', x'00', x'00')";

    private static List<string> Everything(SqliteConnection raw) =>
    [
        .. raw.Query($"SELECT rowid AS place, {Columns} FROM journal").Select(Line),
        .. raw.Query("SELECT seq, by_seq FROM blankings").Select(Line),
        .. raw.Query("SELECT * FROM commands").Select(Line),
    ];

    private static string Line(dynamic row) =>
        string.Join('|', ((IDictionary<string, object?>)row).Values.Select(v => v is byte[] bytes ? Convert.ToHexString(bytes) : v?.ToString()));
}

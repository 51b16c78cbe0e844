using Dapper;
using JobBoard.Storage.Schema;

namespace JobBoard.Storage.Tests.Schema;

public sealed class SchemaScriptsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private string Db => _folder.File("shop.db");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Numbers_run_from_one_without_gaps() =>
        Assert.Equal(Enumerable.Range(1, SchemaScripts.Known.Count), SchemaScripts.Known.Select(s => s.Number));

    [Fact]
    public void A_file_remembers_how_far_it_got()
    {
        Open(SchemaScripts.Known);

        Open([.. SchemaScripts.Known, Next("CREATE TABLE added (id INTEGER PRIMARY KEY)")]);
        Open([.. SchemaScripts.Known, Next("CREATE TABLE added (id INTEGER PRIMARY KEY)")]);

        Assert.Equal([(SchemaScripts.Known.Count + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)], Meta("schema"));
    }

    [Fact]
    public void A_newer_file_is_refused_and_left_as_it_was()
    {
        Open([.. SchemaScripts.Known, Next("CREATE TABLE added (id INTEGER PRIMARY KEY)")]);
        var before = Meta("journal_id");

        var error = Assert.Throws<SchemaTooNewException>(() => Open(SchemaScripts.Known));

        Assert.Equal((SchemaScripts.Known.Count + 1, SchemaScripts.Known.Count), (error.Found, error.Known));
        Assert.Contains("newer Job Board", error.Message, StringComparison.Ordinal);
        Assert.Contains(Db, error.Message, StringComparison.Ordinal);
        Assert.Equal(before, Meta("journal_id"));
    }

    [Fact]
    public void A_script_that_fails_leaves_the_file_where_it_was()
    {
        Open(SchemaScripts.Known);

        Assert.Throws<StorageException>(() => Open([.. SchemaScripts.Known, Next("CREATE TABLE added (id INTEGER PRIMARY KEY); INSERT INTO nowhere VALUES (1)")]));

        Open(SchemaScripts.Known);
    }

    [Fact]
    public void The_journal_id_is_made_once()
    {
        Open(SchemaScripts.Known);
        var first = Meta("journal_id");

        Open(SchemaScripts.Known);

        Assert.Equal(first, Meta("journal_id"));
    }

    private static SchemaScript Next(string sql) => new(SchemaScripts.Known.Count + 1, "next.sql", sql);

    private void Open(IReadOnlyList<SchemaScript> scripts) => ShopDatabase.Open(Db, null, scripts).Dispose();

    private List<string> Meta(string key)
    {
        using var database = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Db};Pooling=False");
        return database.Query<string>("SELECT value FROM meta WHERE key = @key", new { key }).AsList();
    }
}

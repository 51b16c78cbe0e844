using System.Globalization;
using System.Reflection;
using Dapper;
using Microsoft.Data.Sqlite;

namespace JobBoard.Storage.Schema;

/// <summary>A numbered change to the tables, kept as an embedded <c>.sql</c> file named <c>001-what-it-does.sql</c>.</summary>
/// <param name="Number">1 and up, applied in order, each once.</param>
/// <param name="Name">The file's name.</param>
/// <param name="Sql">Its statements.</param>
public sealed record SchemaScript(int Number, string Name, string Sql);

/// <summary>Brings a database file to the newest schema this program knows.</summary>
public static class SchemaScripts
{
    private const string Meta = "CREATE TABLE IF NOT EXISTS meta (key TEXT NOT NULL PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID";

    /// <summary>The scripts of this program, by number.</summary>
    public static IReadOnlyList<SchemaScript> Known { get; } = Load(typeof(SchemaScripts).Assembly);

    /// <summary>Applies what is missing, all of it in one transaction, and records the number reached.</summary>
    /// <exception cref="SchemaTooNewException">The file was written by a newer program.</exception>
    internal static void Apply(SqliteConnection connection, IReadOnlyList<SchemaScript> scripts, Func<Guid> newId)
    {
        using var transaction = connection.BeginTransaction(deferred: false);
        connection.Execute(Meta);
        var reached = Reached(connection);
        var newest = scripts.Count == 0 ? 0 : scripts[^1].Number;
        if (reached > newest)
        {
            throw new SchemaTooNewException(connection.DataSource, reached, newest);
        }

        foreach (var script in scripts.Where(s => s.Number > reached))
        {
            connection.Execute(script.Sql);
            SetMeta(connection, "schema", script.Number.ToString(CultureInfo.InvariantCulture));
        }

        connection.Execute("INSERT OR IGNORE INTO meta (key, value) VALUES ('journal_id', @id)", new { id = newId().ToString("D") });
        transaction.Commit();
    }

    internal static string? GetMeta(SqliteConnection connection, string key) =>
        connection.QuerySingleOrDefault<string>("SELECT value FROM meta WHERE key = @key", new { key });

    internal static void SetMeta(SqliteConnection connection, string key, string value) =>
        connection.Execute("INSERT INTO meta (key, value) VALUES (@key, @value) ON CONFLICT (key) DO UPDATE SET value = excluded.value", new { key, value });

    private static int Reached(SqliteConnection connection) =>
        int.Parse(GetMeta(connection, "schema") ?? "0", CultureInfo.InvariantCulture);

    private static IReadOnlyList<SchemaScript> Load(Assembly assembly)
    {
        var prefix = typeof(SchemaScripts).Namespace + ".";
        return [.. assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(prefix, StringComparison.Ordinal) && name.EndsWith(".sql", StringComparison.Ordinal))
            .Select(name => Script(assembly, name, name[prefix.Length..]))
            .OrderBy(script => script.Number)];
    }

    private static SchemaScript Script(Assembly assembly, string resource, string file)
    {
        using var reader = new StreamReader(assembly.GetManifestResourceStream(resource)!);
        return new SchemaScript(int.Parse(file.AsSpan(0, 3), CultureInfo.InvariantCulture), file, reader.ReadToEnd());
    }
}

using System.Globalization;
using Dapper;
using JobBoard.Storage.Journal;
using JobBoard.Storage.Schema;
using Microsoft.Data.Sqlite;

namespace JobBoard.Storage.History;

/// <summary>Keeps the history tables in step with the journal, and builds them anew beside the live ones.</summary>
internal sealed class HistoryBook(IReadOnlyList<IHistoryProjection> projections)
{
    private const string Live = "history_";
    private const string Shadow = "shadow_";
    private const int Page = 1000;

    public void Apply(SqliteConnection connection, JournalRow row) => Apply(new HistoryTarget(connection, Live), projections, row);

    /// <summary>Rebuilds what was filled by other code, and forgets the stamps of projections that are not here to be kept in step.</summary>
    public void BringUpToDate(SqliteConnection connection)
    {
        var stamps = connection.Query<(string Name, string Stamp)>("SELECT name, stamp FROM history_stamps").ToDictionary(s => s.Name, s => s.Stamp);
        connection.Execute("DELETE FROM history_stamps WHERE name NOT IN @names", new { names = projections.Select(p => p.Name).Append("") });
        RebuildInSteps(connection, [.. projections.Where(p => stamps.GetValueOrDefault(p.Name) != p.Stamp)]);
    }

    /// <summary>Fills all tables anew, a page of entries to a transaction; the live ones stay readable until the swap.</summary>
    public void RebuildAll(SqliteConnection connection) => RebuildInSteps(connection, projections);

    /// <summary>The same inside the transaction that is open, so that it is kept or lost with the rest of it.</summary>
    public void RebuildWithin(SqliteConnection connection) => Rebuild(connection, projections, step => step());

    private static void RebuildInSteps(SqliteConnection connection, IReadOnlyList<IHistoryProjection> wanted) =>
        Rebuild(connection, wanted, step =>
        {
            using var transaction = connection.BeginTransaction(deferred: false);
            step();
            transaction.Commit();
        });

    private static void Rebuild(SqliteConnection connection, IReadOnlyList<IHistoryProjection> wanted, Action<Action> inTransaction)
    {
        if (wanted.Count == 0)
        {
            return;
        }

        inTransaction(() => StartShadows(connection, wanted));
        for (long reached = 0, before = -1; reached > before;)
        {
            before = reached;
            inTransaction(() => reached = FillPage(connection, wanted, before));
        }

        inTransaction(() => Swap(connection, wanted));
    }

    private static void StartShadows(SqliteConnection connection, IReadOnlyList<IHistoryProjection> wanted)
    {
        var generation = (1 + long.Parse(SchemaScripts.GetMeta(connection, "history_generation") ?? "0", CultureInfo.InvariantCulture))
            .ToString(CultureInfo.InvariantCulture);
        SchemaScripts.SetMeta(connection, "history_generation", generation);
        foreach (var table in wanted.SelectMany(p => p.Tables))
        {
            connection.Execute($"DROP TABLE IF EXISTS {Shadow}{table.Name}; CREATE TABLE {Shadow}{table.Name} ({table.Columns}) STRICT;");
            for (var i = 0; i < table.Indexes.Length; i++)
            {
                // An index keeps its name when its table is renamed, so the name carries the rebuild's own number.
                connection.Execute($"CREATE INDEX history_{table.Name}_{i}_{generation} ON {Shadow}{table.Name} ({table.Indexes[i]})");
            }
        }
    }

    private static long FillPage(SqliteConnection connection, IReadOnlyList<IHistoryProjection> wanted, long after)
    {
        var target = new HistoryTarget(connection, Shadow);
        var rows = connection.Query<StoredRow>(
            $"SELECT {StoredRow.Columns} FROM journal WHERE seq > @after ORDER BY seq LIMIT {Page}", new { after }).AsList();
        rows.ForEach(row => Apply(target, wanted, row.ToRow()));
        return rows.Count == 0 ? after : rows[^1].Seq;
    }

    private static void Swap(SqliteConnection connection, IReadOnlyList<IHistoryProjection> wanted)
    {
        foreach (var table in wanted.SelectMany(p => p.Tables))
        {
            connection.Execute($"DROP TABLE IF EXISTS {Live}{table.Name}; ALTER TABLE {Shadow}{table.Name} RENAME TO {Live}{table.Name};");
        }

        connection.Execute(
            "INSERT INTO history_stamps (name, stamp) VALUES (@Name, @Stamp) ON CONFLICT (name) DO UPDATE SET stamp = excluded.stamp",
            wanted.Select(p => new { p.Name, p.Stamp }));
    }

    private static void Apply(HistoryTarget target, IReadOnlyList<IHistoryProjection> wanted, JournalRow row)
    {
        foreach (var projection in wanted)
        {
            projection.Apply(target, row);
        }
    }
}

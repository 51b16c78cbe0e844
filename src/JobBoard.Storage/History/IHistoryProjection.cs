using System.Data;
using JobBoard.Storage.Journal;

namespace JobBoard.Storage.History;

/// <summary>Fills the tables of one question about the past, entry by entry, in the append's transaction.</summary>
public interface IHistoryProjection
{
    /// <summary>Unique among the projections of a journal.</summary>
    string Name { get; }

    /// <summary>Changes whenever the code or its tables change; a table filled under another stamp is rebuilt at open.</summary>
    string Stamp { get; }

    /// <summary>Its tables.</summary>
    IReadOnlyList<HistoryTable> Tables { get; }

    /// <summary>Writes what an entry changes. Entries come once each, in order; a blanked one has an empty body.</summary>
    /// <param name="target">Where to write: the live tables, or those being rebuilt beside them.</param>
    /// <param name="row">The entry.</param>
    void Apply(HistoryTarget target, JournalRow row);
}

/// <summary>A table of history.</summary>
/// <param name="Name">Lower-case letters and underscores; the live table is <c>history_</c> and this.</param>
/// <param name="Columns">The column list in SQL, keys included, without the brackets round it.</param>
/// <param name="Indexes">For each index its columns, such as <c>car, task</c>.</param>
public sealed record HistoryTable(string Name, string Columns, params string[] Indexes);

/// <summary>Where a projection writes.</summary>
/// <param name="Connection">A connection with a transaction open.</param>
/// <param name="Prefix">Stands before every table's name.</param>
public readonly record struct HistoryTarget(IDbConnection Connection, string Prefix)
{
    /// <summary>The full name of a table to use in SQL.</summary>
    public string Table(string name) => Prefix + name;
}

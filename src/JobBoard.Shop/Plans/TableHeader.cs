using System.Collections.Immutable;
using JobBoard.Scheduling;

namespace JobBoard.Shop.Plans;

/// <summary>The first line of a pasted table: which column is which, and a unit named in it, such as "usual (h)".</summary>
internal sealed class TableHeader
{
    private readonly Dictionary<string, int> places = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> units = new(StringComparer.Ordinal);
    private readonly IReadOnlyList<string> written;

    private TableHeader(IReadOnlyList<string> written) => this.written = written;

    /// <summary>Columns that are not known, or stand twice.</summary>
    public ImmutableArray<TableFault> Faults { get; private set; } = [];

    public static TableHeader Of(CsvRecord line)
    {
        var header = new TableHeader(line.Fields);
        for (var n = 0; n < line.Fields.Count; n++) header.Take(line.Fields[n], n, line.Line);
        return header;
    }

    public bool Has(string column) => places.ContainsKey(column);

    /// <summary>The unit the header names for a column, or nothing.</summary>
    public string? Unit(string column) => units.GetValueOrDefault(column);

    /// <summary>The column as the table calls it.</summary>
    public string Written(string column) => places.TryGetValue(column, out var n) ? written[n] : column;

    /// <summary>The cell of a row; empty where there is no such column or cell.</summary>
    public string Cell(CsvRecord row, string column) =>
        places.TryGetValue(column, out var n) && n < row.Fields.Count ? row.Fields[n].Trim() : "";

    /// <summary>Cells beyond the header's columns that say something.</summary>
    public bool IsTooLong(CsvRecord row) => row.Fields.Skip(written.Count).Any(f => f.Length > 0);

    private void Take(string cell, int n, int line)
    {
        if (cell.Length == 0) return;
        var (words, unit) = Split(cell.ToLowerInvariant());
        var known = PlanTable.Columns.FirstOrDefault(c => c.Words.Contains(words)).Column;
        if (known is null) Faults = Faults.Add(new(line, cell, "This column is not read. Everything else is."));
        else if (!places.TryAdd(known, n)) Faults = Faults.Add(new(line, cell, $"The column “{known}” stands twice; the first counts."));
        else if (unit is not null) units[known] = unit;
    }

    private static (string Words, string? Unit) Split(string cell)
    {
        var words = cell.Trim().TrimEnd(')', ']', ':').Split(['(', '[', ','], 2);
        return words.Length == 2 ? (words[0].Trim(), words[1].Trim()) : (words[0].Trim(), null);
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Plans;
using JobBoard.Scheduling;

namespace JobBoard.Shop.Plans;

/// <summary>A table pasted from a spreadsheet, read as tasks: what becomes of each row, and what could not be read.</summary>
/// <param name="Rows">Each row below the header, in order.</param>
/// <param name="Faults">What is wrong with the table as a whole.</param>
/// <param name="Plan">The plan with the rows that could be read.</param>
/// <param name="Rest">The header and the rows that could not be read, to be put right; empty where all could.</param>
public sealed record PlanTable(ImmutableArray<TableRow> Rows, ImmutableArray<TableFault> Faults, Plan Plan, string Rest)
{
    /// <summary>Longest text taken at once, in characters.</summary>
    public const int LongestText = 400_000;

    /// <summary>The columns it knows, with the header words each goes by, the one people are told first.</summary>
    public static ImmutableArray<(string Column, ImmutableArray<string> Words)> Columns { get; } =
    [
        ("number", ["no", "no.", "nr", "number", "#", "id"]),
        ("task", ["task", "tasks", "name", "work", "job", "what", "description"]),
        ("stage", ["stage", "group", "section"]),
        ("after", ["after", "comes after", "follows", "waits on", "predecessor", "predecessors"]),
        ("low", ["low", "least", "shortest", "min", "minimum"]),
        ("usual", ["usual", "time", "duration", "estimate", "likely", "how long"]),
        ("high", ["high", "most", "longest", "max", "maximum"]),
        ("unit", ["unit", "units", "in"]),
        ("people", ["people", "persons", "crew", "how many"]),
        ("qualification", ["qualified for", "qualification", "qualifications", "asks for"]),
        ("place", ["place", "where"]),
        ("parts", ["parts", "part"]),
        ("steps", ["steps", "how", "notes", "note"]),
    ];

    /// <summary>Reads tab-separated cells as a spreadsheet copies them, or comma- or semicolon-separated text, below a line that names the columns.</summary>
    /// <param name="text">The table.</param>
    /// <param name="plan">The plan the tasks are added to.</param>
    /// <param name="dayMinutes">Shop minutes in a day, for estimates in days.</param>
    public static PlanTable Read(string text, Plan plan, int dayMinutes)
    {
        if (text.Length > LongestText) return Not(plan, text, "the table", $"The table is longer than {LongestText:N0} characters. Paste it in parts.");
        var separator = Separator(text);
        var unread = new List<InputFault>();
        var records = new CsvRecords("table", text.Trim('\uFEFF', '\r', '\n'), unread, separator).Read().Where(r => r.Fields.Any(f => f.Length > 0)).ToList();
        if (records.Count == 0) return Not(plan, text, "the table", "Nothing is pasted. Copy the cells with the line that names the columns, and paste them here.");
        var header = TableHeader.Of(records[0]);
        if (!header.Has("task")) return Not(plan, text, "line 1", $"No column of the first line is called “task”. Name the columns in the first line: {string.Join(", ", Columns.Select(c => c.Words[0]).Where(w => w != "no"))}.");
        var faults = unread.Select(f => new TableFault(f.Line, "", f.Words)).Concat(header.Faults).ToImmutableArray();
        if (records.Count == 1) faults = faults.Add(new(1, "", "There is no row below the names of the columns."));
        var rows = new TableRows(plan, header, dayMinutes).Read(records.Skip(1));
        return new([.. rows.All], faults, rows.Plan, Left(records[0], records.Skip(1).Where(r => rows.All.Any(row => row.Line == r.Line && !row.Faults.IsEmpty))));
    }

    private static PlanTable Not(Plan plan, string text, string column, string words) => new([], [new(1, column, words)], plan, text);

    private static char Separator(string text)
    {
        var first = text.TrimStart('\uFEFF', '\r', '\n').Split('\n')[0];
        return first.Contains('\t') ? '\t' : first.Count(c => c == ';') > first.Count(c => c == ',') ? ';' : ',';
    }

    private static string Left(CsvRecord header, IEnumerable<CsvRecord> left)
    {
        var rows = left.ToList();
        return rows.Count == 0 ? "" : string.Join('\n', rows.Prepend(header).Select(r => string.Join('\t', r.Fields.Select(Cell))));
    }

    private static string Cell(string field) =>
        field.AsSpan().IndexOfAny("\t\n\r") >= 0 || field.StartsWith('"') ? "\"" + field.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : field;
}

/// <summary>One row of a pasted table.</summary>
/// <param name="Line">Its line in the text, from 1.</param>
/// <param name="Name">What it calls the task; may be empty.</param>
/// <param name="Becomes">What becomes of it, in words; empty where it could not be read.</param>
/// <param name="Faults">What could not be read.</param>
public sealed record TableRow(int Line, string Name, string Becomes, ImmutableArray<TableFault> Faults);

/// <summary>Something in a pasted table that could not be read.</summary>
/// <param name="Line">The line, from 1.</param>
/// <param name="Column">The column as the table calls it; empty where it is the whole line.</param>
/// <param name="Words">What is wrong and what to write instead.</param>
public sealed record TableFault(int Line, string Column, string Words);

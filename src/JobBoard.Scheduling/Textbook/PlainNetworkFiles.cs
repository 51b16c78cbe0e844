namespace JobBoard.Scheduling;

/// <summary>Reads <c>tasks.csv</c> and <c>links.csv</c> of a folder, listing everything that is wrong with them.</summary>
internal sealed class PlainNetworkFiles(string folder, TimeUnit plainUnit, List<InputFault> faults)
{
    public const string TasksFile = "tasks.csv";
    public const string LinksFile = "links.csv";

    private static readonly string[] KindWords = ["finish-start", "start-start", "finish-finish", "start-finish"];
    private static readonly string[] ClockWords = ["working", "elapsed"];
    private static readonly TimeUnit[] Units = Enum.GetValues<TimeUnit>();

    private readonly Dictionary<string, int> taskNumbers = [];
    private readonly Dictionary<string, int> taskLines = [];

    public static string[] UnitWords { get; } = [.. Units.Select(u => u.ToString().ToLowerInvariant())];

    public static TimeUnit? UnitOf(string word) =>
        Array.IndexOf(UnitWords, word.ToLowerInvariant()) is >= 0 and var at ? Units[at] : null;

    /// <summary>The network; of no use if there are faults.</summary>
    public PlainNetwork Read()
    {
        var tasks = ReadTasks();
        return new PlainNetwork(tasks, ReadLinks());
    }

    private List<PlainTask> ReadTasks()
    {
        var tasks = new List<PlainTask>();
        var sheet = CsvSheet.Open(folder, TasksFile, ["task"], ["duration", "unit", "low", "usual", "high"], faults);
        if (sheet is null)
            return tasks;
        if (!sheet.Has("duration") && !sheet.Has("usual"))
            sheet.Fault(1, "duration", "the column is missing. The first line needs task,duration (or task,low,usual,high).");
        else if (sheet.Rows.Count == 0)
            sheet.Fault(1, "", "there are no tasks. Write one on each line after the first.");
        else
            tasks.AddRange(sheet.Rows.Select(row => ReadTask(sheet, row)));
        return tasks;
    }

    private PlainTask ReadTask(CsvSheet sheet, CsvRecord row)
    {
        var name = sheet.Needed(row, "task", "the task's name") ?? "";
        if (name.Length > 0 && !taskNumbers.TryAdd(name, taskNumbers.Count))
            sheet.Fault(row.Line, "task", $"'{name}' stands already on line {taskLines[name]}. Give each task a name of its own.");
        taskLines.TryAdd(name, row.Line);
        var unit = Unit(sheet, row);
        string[] estimates = ["low", "usual", "high"];
        var given = estimates.Count(e => sheet.Field(row, e) is not null);
        var hasDuration = sheet.Field(row, "duration") is not null;
        if (given > 0 && hasDuration)
            sheet.Fault(row.Line, "duration", "stands beside low, usual and high. Give either the duration or the three estimates.");
        else if (given > 0)
            return Estimated(sheet, row, name, unit);
        else if (!hasDuration)
            sheet.Fault(row.Line, sheet.Has("duration") ? "duration" : "usual", "is empty. Write how long the task takes, 0 for a milestone.");
        return new PlainTask(row.Line, name, 6 * (sheet.Number(row, "duration", 0) ?? 0), unit, null);
    }

    private static PlainTask Estimated(CsvSheet sheet, CsvRecord row, string name, TimeUnit unit)
    {
        foreach (var column in new[] { "low", "usual", "high" })
            sheet.Needed(row, column, "all three estimates: low, usual and high");
        var (low, usual, high) = (sheet.Number(row, "low", 0), sheet.Number(row, "usual", 0), sheet.Number(row, "high", 0));
        if (low > usual)
            sheet.Fault(row.Line, "low", $"{low} is above usual, {usual}. The three go from low to high.");
        if (usual > high)
            sheet.Fault(row.Line, "high", $"{high} is below usual, {usual}. The three go from low to high.");
        return new PlainTask(row.Line, name, (low + 4 * usual + high) ?? 0, unit, high - low);
    }

    private List<PlainLink> ReadLinks()
    {
        var sheet = CsvSheet.Open(folder, LinksFile, ["task", "after"], ["kind", "lag", "unit", "clock"], faults);
        if (sheet is null)
            return [];
        var links = sheet.Rows.Select(row => ReadLink(sheet, row)).ToList();
        foreach (var same in links.Where(l => l.Task >= 0 && l.After >= 0).GroupBy(l => (l.Task, l.After, l.Kind)).Where(g => g.Count() > 1))
            sheet.Fault(same.Last().Line, "", $"says the same link as line {same.First().Line}. Keep one of them.");
        return links;
    }

    private PlainLink ReadLink(CsvSheet sheet, CsvRecord row) => new(
        row.Line,
        TaskNumber(sheet, row, "task"),
        TaskNumber(sheet, row, "after"),
        (LinkKind)(sheet.Word(row, "kind", KindWords, 0) ?? 0),
        sheet.Number(row, "lag", decimal.MinValue) ?? 0,
        Unit(sheet, row),
        (LagClock)(sheet.Word(row, "clock", ClockWords, 0) ?? 0));

    private int TaskNumber(CsvSheet sheet, CsvRecord row, string column)
    {
        if (sheet.Needed(row, column, $"the name of a task in {TasksFile}") is not { } name)
            return -1;
        if (taskNumbers.TryGetValue(name, out var number))
            return number;
        sheet.Fault(row.Line, column, $"'{name}' is no task of {TasksFile}. Write a name as it stands there, or add the task.");
        return -1;
    }

    private TimeUnit Unit(CsvSheet sheet, CsvRecord row) =>
        sheet.Word(row, "unit", UnitWords, null) is { } at ? Units[at] : plainUnit;
}

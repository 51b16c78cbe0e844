namespace JobBoard.Scheduling.Tests;

/// <summary>A published network in the shorthand of its source: "C8 after A, B" in bare units, without a calendar.</summary>
internal sealed class Example
{
    private readonly List<string> names = [];
    private readonly List<long> work = [];
    private readonly List<Link> links = [];

    /// <summary>Rows such as <c>D4&lt;C(FS+1)</c>: name, duration, and what it comes after; without brackets finish-start, lag 0.</summary>
    public static Example Parse(string rows)
    {
        var example = new Example();
        foreach (var row in rows.Split(';', StringSplitOptions.TrimEntries))
        {
            var (task, after) = row.Split('<') is [var t, var a] ? (t, a) : (row, "");
            example.Add(task.TrimEnd("0123456789".ToCharArray()), long.Parse(task.TrimStart("ABCDEFGHIJKLMNOPQRSTUVWXYZ".ToCharArray())));
            foreach (var one in after.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
                example.AddLink(one);
        }

        return example;
    }

    public void Add(string name, long duration)
    {
        names.Add(name);
        work.Add(duration);
    }

    public void Add(string name, long duration, params string[] after)
    {
        Add(name, duration);
        foreach (var one in after)
            AddLink(one);
    }

    public Dates Dates()
    {
        var network = Network.Build(names.Count, links.ToArray());
        var times = new TaskTimes(network);
        for (var task = 0; task < work.Count; task++)
            times.SetWork(task, work[task]);
        return CriticalPath.Compute(times, WorkCalendar.NeverCloses, 0);
    }

    /// <summary>"A 0-2/0-2/0/0": early start and finish, late start and finish, total and free float.</summary>
    public string Table(Dates dates) => string.Join("; ", names.Select((name, task) =>
        $"{name} {dates[task].EarlyStart}-{dates[task].EarlyFinish}/{dates[task].LateStart}-{dates[task].LateFinish}/{dates[task].TotalFloat}/{dates[task].FreeFloat}"));

    public string EarlyStarts(Dates dates) => Each(task => dates[task].EarlyStart);

    public string Early(Dates dates) => Each(task => $" {dates[task].EarlyStart}-{dates[task].EarlyFinish}");

    public string EarlyAndLate(Dates dates) =>
        Each(task => $" {dates[task].EarlyStart}-{dates[task].EarlyFinish}/{dates[task].LateStart}-{dates[task].LateFinish}");

    public string TotalFloats(Dates dates) => Each(task => dates[task].TotalFloat);

    /// <summary>Total floats of those tasks that have any.</summary>
    public string Slack(Dates dates) => string.Join(' ', names
        .Select((name, task) => (name, slack: dates[task].TotalFloat))
        .Where(t => t.slack > 0).Select(t => $"{t.name}{t.slack}"));

    /// <summary>The tasks that set the date, in the order of their starts.</summary>
    public string Critical(Dates dates) => string.Join('-', names
        .Select((name, task) => (name, dates: dates[task]))
        .Where(t => t.dates.SetsTheDate).OrderBy(t => t.dates.EarlyStart).ThenBy(t => t.dates.EarlyFinish).Select(t => t.name));

    public string Chain(Dates dates) => string.Join('-', dates.Chain().Select(step => names[step.Task]));

    public TaskDates Of(Dates dates, string name) => dates[names.IndexOf(name)];

    private string Each(Func<int, object?> value) => string.Join(' ', names.Select((name, task) => $"{name}{value(task)}"));

    private void AddLink(string one)
    {
        var parts = one.TrimEnd(')').Split('(');
        var kind = parts.Length == 1 ? LinkKind.FinishStart : parts[1][..2] switch
        {
            "FS" => LinkKind.FinishStart,
            "SS" => LinkKind.StartStart,
            "FF" => LinkKind.FinishFinish,
            _ => LinkKind.StartFinish,
        };
        var lag = parts.Length == 1 || parts[1].Length == 2 ? 0 : long.Parse(parts[1][2..]);
        links.Add(new Link(names.Count - 1, names.IndexOf(parts[0]), kind, lag));
    }
}

using System.Collections.Immutable;
using System.Globalization;
using JobBoard.Domain.Plans;
using JobBoard.Scheduling;
using Link = JobBoard.Domain.Plans.Link;

namespace JobBoard.Shop.Plans;

/// <summary>The rows of a pasted table on their way to becoming tasks of a plan.</summary>
internal sealed class TableRows(Plan plan, TableHeader header, int dayMinutes)
{
    private readonly HashSet<string> taken = [.. PlanIndex.Of(plan).Nodes];
    private readonly List<(CsvRecord Row, PlanTask? Task, List<TableFault> Faults, List<string> Said)> read = [];
    private string stage = plan.Stages.FirstOrDefault()?.Id ?? "";

    /// <summary>The plan with what could be read.</summary>
    public Plan Plan { get; private set; } = plan;

    /// <summary>What became of each row.</summary>
    public IReadOnlyList<TableRow> All { get; private set; } = [];

    public TableRows Read(IEnumerable<CsvRecord> rows)
    {
        foreach (var row in rows) ReadOne(row);
        foreach (var (row, task, faults, said) in read.Where(r => r.Task is not null)) TakeLinks(row, task!, faults, said);
        KeepTogether();
        var good = read.Where(r => r.Faults.Count == 0).Select(r => r.Task!).ToList();
        var left = read.Where(r => r.Faults.Count > 0 && r.Task is not null).Select(r => r.Task!.Id).ToHashSet(StringComparer.Ordinal);
        Plan = Plan with { Tasks = [.. Plan.Tasks, .. good], Links = [.. Plan.Links.Where(l => !left.Contains(l.Task) && !left.Contains(l.After))] };
        All = [.. read.Select(r => new TableRow(r.Row.Line, header.Cell(r.Row, "task"), r.Faults.Count == 0 ? string.Join(", ", r.Said) : "", [.. r.Faults]))];
        return this;
    }

    private void ReadOne(CsvRecord row)
    {
        var (faults, said) = (new List<TableFault>(), new List<string>());
        var name = header.Cell(row, "task");
        if (name.Length == 0) faults.Add(new(row.Line, header.Written("task"), "It has no name. Write what the task is called."));
        if (header.IsTooLong(row)) faults.Add(new(row.Line, "", "It has more cells than the first line names columns. Name them, or take them out."));
        if (name.Length > 80) faults.Add(new(row.Line, header.Written("task"), "The name is longer than 80 characters. Shorten it; put the rest in steps."));
        TakeStage(header.Cell(row, "stage"), said);
        var estimate = Estimate(row, faults, said);
        var crew = Crew(row, faults, said);
        var id = PlanIds.For(name, taken.Contains, "task");
        if (name.Length > 0) taken.Add(id);
        var task = new PlanTask
        {
            Id = id,
            Name = name,
            Stage = stage,
            Estimate = estimate ?? new(1, 1, 1),
            Crew = [crew],
            Place = header.Cell(row, "place") is { Length: > 0 } place ? place.ToLowerInvariant() : "car",
            Steps = Lines(header.Cell(row, "steps")),
            Parts = Parts(header.Cell(row, "parts"), said),
        };
        if (task.Place != "car") said.Add($"at the {task.Place}");
        read.Add((row, name.Length > 0 ? task : null, faults, said));
    }

    private void TakeStage(string cell, List<string> said)
    {
        if (cell.Length > 0)
        {
            var known = Plan.Stages.FirstOrDefault(s => Is(s.Name, cell) || s.Id == cell);
            if (known is null)
            {
                known = new(PlanIds.For(cell, id => Plan.Stages.Any(s => s.Id == id), "stage"), cell);
                Plan = Plan with { Stages = Plan.Stages.Add(known) };
                said.Add($"new stage “{cell}”");
            }

            stage = known.Id;
        }
        else if (stage.Length == 0)
        {
            Plan = Plan with { Stages = Plan.Stages.Add(new("work", "Work")) };
            stage = "work";
        }

        said.Add($"in “{Plan.Stages.First(s => s.Id == stage).Name}”");
    }

    private Estimate? Estimate(CsvRecord row, List<TableFault> faults, List<string> said)
    {
        var unit = header.Cell(row, "unit");
        if (unit.Length > 0 && !WorkAmount.IsUnit(unit))
        {
            faults.Add(new(row.Line, header.Written("unit"), $"“{unit}” is no unit. Write minutes, hours or days."));
            return null;
        }

        var (low, usual, high) = (Minutes(row, "low", unit, faults), Minutes(row, "usual", unit, faults), Minutes(row, "high", unit, faults));
        if (faults.Any(f => f.Column == header.Written("low") || f.Column == header.Written("usual") || f.Column == header.Written("high"))) return null;
        if ((usual ?? low ?? high) is not { } some)
        {
            said.Add("no time given: 30, 60, 120 min");
            return new(30, 60, 120);
        }

        var middle = usual ?? (low is { } l && high is { } h ? (l + h) / 2 : some);
        var estimate = new Estimate(low ?? Math.Min(middle, high ?? middle), middle, high ?? Math.Max(middle, low ?? middle));
        if (!(estimate.Low > 0 && estimate.Low <= estimate.Usual && estimate.Usual <= estimate.High && estimate.High <= 60_000))
        {
            faults.Add(new(row.Line, header.Written(header.Has("usual") ? "usual" : "low"), $"{estimate.Low}, {estimate.Usual}, {estimate.High} minutes cannot be right: above 0, low not above usual, usual not above high, at most 60,000."));
            return null;
        }

        said.Add(string.Create(CultureInfo.InvariantCulture, $"{estimate.Low}, {estimate.Usual}, {estimate.High} min"));
        return estimate;
    }

    private int? Minutes(CsvRecord row, string column, string unit, List<TableFault> faults)
    {
        var cell = header.Cell(row, column);
        if (cell.Length == 0) return null;
        var minutes = WorkAmount.Minutes(cell, unit.Length > 0 ? unit : header.Unit(column), dayMinutes);
        if (minutes is null) faults.Add(new(row.Line, header.Written(column), $"“{cell}” is no time. Write 90, 1.5 h, 1:30 or 2 days."));
        return minutes;
    }

    private CrewNeed Crew(CsvRecord row, List<TableFault> faults, List<string> said)
    {
        var (cell, qualification) = (header.Cell(row, "people"), header.Cell(row, "qualification"));
        var people = 1;
        if (cell.Length > 0 && !(int.TryParse(cell, NumberStyles.None, CultureInfo.InvariantCulture, out people) && people is >= 1 and <= 20))
            faults.Add(new(row.Line, header.Written("people"), $"“{cell}” is no number of people. Write 1 to 20."));
        if (people > 1) said.Add($"{people} people");
        if (qualification.Length > 0) said.Add($"qualified for {qualification}");
        return new("lead", qualification.Length > 0 ? qualification : null, people);
    }

    private ImmutableArray<string> Parts(string cell, List<string> said)
    {
        var parts = ImmutableArray.CreateBuilder<string>();
        foreach (var name in Split(cell, ';', '\n'))
        {
            var known = Plan.Parts.FirstOrDefault(p => Is(p.Name, name) || p.Id == name);
            if (known is null)
            {
                known = new(PlanIds.For(name, id => Plan.Parts.Any(p => p.Id == id), "part"), name);
                Plan = Plan with { Parts = Plan.Parts.Add(known) };
            }

            parts.Add(known.Id);
            said.Add($"part “{known.Name}”");
        }

        return parts.DrainToImmutable();
    }

    /// <summary>A row that comes after one that could not be read waits with it, so that no link is lost.</summary>
    private void KeepTogether()
    {
        bool more;
        do
        {
            var left = read.Where(r => r.Faults.Count > 0 && r.Task is not null).Select(r => r.Task!).ToDictionary(t => t.Id, StringComparer.Ordinal);
            var behind = read.Where(r => r.Faults.Count == 0).Select(r => (r.Row, r.Faults, Link: Plan.Links.FirstOrDefault(l => l.Task == r.Task!.Id && left.ContainsKey(l.After)))).Where(r => r.Link is not null).ToList();
            foreach (var (row, faults, link) in behind) faults.Add(new(row.Line, header.Written("after"), $"It comes after “{left[link!.After].Name}”, which could not be read. Put that right; then this is taken too."));
            more = behind.Count > 0;
        }
        while (more);
    }

    private void TakeLinks(CsvRecord row, PlanTask task, List<TableFault> faults, List<string> said)
    {
        var cell = header.Cell(row, "after");
        if (cell.Length == 0) return;
        var whole = Find(cell);
        foreach (var name in whole is null ? Split(cell, cell.AsSpan().IndexOfAny(";\n") >= 0 ? [';', '\n'] : [',']) : [cell])
        {
            var (bare, lag) = Lag(name);
            if ((Find(name) ?? Find(bare)) is not { } earlier) faults.Add(new(row.Line, header.Written("after"), $"There is no task “{bare}” in the table or the plan. Write a name or a row's number, several with semicolons."));
            else if (earlier == task.Id) faults.Add(new(row.Line, header.Written("after"), "It cannot come after itself."));
            else Add(new(task.Id, earlier, Lag: Find(name) is null ? lag : 0), said);
        }
    }

    private void Add(Link link, List<string> said)
    {
        if (!Plan.Links.Any(l => l.Task == link.Task && l.After == link.After)) Plan = Plan with { Links = Plan.Links.Add(link) };
        said.Add($"after “{read.Select(r => r.Task).FirstOrDefault(t => t?.Id == link.After)?.Name ?? PlanIndex.Of(Plan).NameOf(link.After)}”{(link.Lag == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" and {link.Lag} min"))}");
    }

    /// <summary>A name with a lag behind it, as in "Paint + 12 h".</summary>
    private (string Name, int Lag) Lag(string text)
    {
        var at = text.LastIndexOf('+');
        return at > 0 && WorkAmount.Minutes(text[(at + 1)..], null, dayMinutes) is { } lag ? (text[..at].Trim(), lag) : (text, 0);
    }

    /// <summary>The node a cell means: a row's own number, a task of the table, a node of the plan.</summary>
    private string? Find(string name)
    {
        var numbered = header.Has("number") ? read.FirstOrDefault(r => r.Task is not null && header.Cell(r.Row, "number") == name) : default;
        if (numbered.Task is { } byNumber) return byNumber.Id;
        if (read.Select(r => r.Task).FirstOrDefault(t => t is not null && Is(t.Name, name)) is { } byName) return byName.Id;
        return Plan.Tasks.FirstOrDefault(t => Is(t.Name, name) || t.Id == name)?.Id ?? Plan.Holds.FirstOrDefault(h => Is(h.Name, name) || h.Id == name)?.Id;
    }

    private static bool Is(string name, string written) => string.Equals(name.Trim(), written.Trim(), StringComparison.OrdinalIgnoreCase);

    private static ImmutableArray<string> Lines(string cell) => [.. Split(cell, '\n')];

    private static IEnumerable<string> Split(string cell, params char[] at) => cell.Split(at, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}

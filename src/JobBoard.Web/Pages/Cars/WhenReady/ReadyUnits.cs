using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Shop.Dates;
using JobBoard.Web.Live;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Bay;
using JobBoard.Web.Pages.Cars.CarTask;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars.WhenReady;

/// <summary>A car's plan as it is drawn: finished stages folded, unless asked for; every other node with its dates, links and what it waits on.</summary>
public sealed class ReadyUnits
{
    private const int MostWaits = 4;

    private readonly Picture _picture;
    private readonly CarBoard _car;
    private readonly PlanIndex _index;
    private readonly ILookup<string, WaitingOn> _waiting;
    private readonly Dictionary<string, string> _unitOf = new(StringComparer.Ordinal);

    private ReadyUnits(Picture picture, CarBoard car, bool unfolded)
    {
        (_picture, _car, _index) = (picture, car, PlanIndex.Of(car.Plan));
        Dates = picture.Dates.Of(picture.Shop, car, picture.Now);
        Drawn = ReadyParts.AsIfHere(picture, car);
        _waiting = picture.Open(car).SelectMany(e => e.Waiting.Select(w => (e.Task.Id, w))).ToLookup(p => p.Id, p => p.w, StringComparer.Ordinal);
        foreach (var node in _index.Nodes) _unitOf[node] = !unfolded && IsFolded(StageOf(node)) ? "stage:" + StageOf(node) : node;
        var line = ToTheEnd([.. Drawn.SetsTheDate.Select(s => s.Node).Where(n => !Counts(n))]);
        var all = _index.InOrder.GroupBy(n => _unitOf[n]).Select(g => g.Key.StartsWith("stage:", StringComparison.Ordinal) ? Folded(g.Key, [.. g]) : Node(g.Key)).ToArray();
        Line = [.. all.Where(u => u.Bolt is not null && u.Id.StartsWith("stage:", StringComparison.Ordinal)).OrderBy(u => u.Finish).Select(u => u.Id), .. line];
        var onLine = Line.ToHashSet(StringComparer.Ordinal);
        All = [.. all.Select(u => u with { OnLine = onLine.Contains(u.Id) })];
        Links = [.. car.Plan.Links.Select(l => (Task: _unitOf[l.Task], After: _unitOf[l.After])).Where(l => l.Task != l.After).Distinct()];
    }

    /// <summary>The dates as they are; the end may not be known.</summary>
    public CarDates Dates { get; }

    /// <summary>The dates that are drawn: where some are not known, as they would be if the parts they rest on came now.</summary>
    public CarDates Drawn { get; }

    /// <summary>Everything that is shown, in the plan's order.</summary>
    public ImmutableArray<ReadyUnit> All { get; }

    /// <summary>What sets the date, finished stages first.</summary>
    public ImmutableArray<string> Line { get; }

    /// <summary>Links between what is shown.</summary>
    public ImmutableArray<(string Task, string After)> Links { get; }

    /// <summary>How many stages are finished.</summary>
    public int FinishedStages => _car.Plan.Stages.Count(s => IsFolded(s.Id));

    /// <summary>A car as of a picture.</summary>
    public static ReadyUnits Of(Picture picture, CarBoard car, bool unfolded) => new(picture, car, unfolded);

    // Hold points at the very end have no length: they stand on the line too.
    private List<string> ToTheEnd(List<string> line)
    {
        while (line.Count > 0 && _index.LinksFrom(line[^1]).Select(l => l.Task).FirstOrDefault(n => _index.Hold(n) is not null && !Counts(n) && !line.Contains(n) && Drawn.Nodes[n].EarlyFinish == Drawn.Nodes[line[^1]].EarlyFinish) is { } hold)
            line.Add(hold);
        return line;
    }

    private bool Counts(string node) => _car.Tasks.TryGetValue(node, out var task) ? task.Counts : _car.Holds[node].Counts;

    private string StageOf(string node) => _index.Task(node)?.Stage ?? _index.Hold(node)!.Stage;

    private bool IsFolded(string stage) => _index.Nodes.Where(n => StageOf(n) == stage) is var nodes && nodes.Any() && nodes.All(Counts);

    private ReadyUnit Folded(string id, ImmutableArray<string> nodes)
    {
        var name = _car.Plan.Stages.FirstOrDefault(s => "stage:" + s.Id == id)?.Name ?? id;
        var dates = nodes.Select(n => Drawn.Nodes[n]).ToArray();
        var tasks = nodes.Count(n => _index.Task(n) is not null);
        return new()
        {
            Id = id,
            Name = name,
            Stage = name,
            Bolt = BoltState.SignedOff,
            Note = tasks == 1 ? "1 task" : $"{tasks} tasks",
            State = $"finished: all {tasks} tasks signed off",
            Start = dates.Min(d => d.EarlyStart) ?? _picture.Now,
            Finish = dates.Max(d => d.EarlyFinish) ?? _picture.Now,
            IsDone = true,
            After = Neighbours(nodes, into: true),
            Then = Neighbours(nodes, into: false),
        };
    }

    private ReadyUnit Node(string id)
    {
        var (dates, really) = (Drawn.Nodes[id], Dates.Nodes[id]);
        var unit = _index.Task(id) is { } task ? Task(task, _car.Tasks[id]) : Hold(_index.Hold(id)!, _car.Holds[id]);
        return unit with
        {
            Stage = _car.Plan.Stages.FirstOrDefault(s => s.Id == StageOf(id))?.Name ?? "",
            Start = dates.EarlyStart ?? dates.EarlyFinish ?? _picture.Now,
            Finish = dates.EarlyFinish ?? _picture.Now,
            IsDone = Counts(id),
            NotKnown = really.RestsOn is not null,
            Note = unit.Note ?? (really.RestsOn is { } part ? RestsOnNote(id, part) : PartNote(id, dates.EarlyStart)),
            Slack = Counts(id) || really.RestsOn is not null ? null : dates.Slack,
            After = Neighbours([id], into: true),
            Then = Neighbours([id], into: false),
        };
    }

    private string PartName(string part) => _car.Plan.Parts.FirstOrDefault(p => p.Id == part)?.Name ?? part;

    // Said where the part itself is needed; what comes after rests on it too.
    private string? RestsOnNote(string node, string part) => _index.Task(node)?.Parts.Contains(part) == true ? "rests on " + PartName(part) : null;

    // The part that a task starts with, where that is what it starts on.
    private string? PartNote(string node, DateTimeOffset? start)
    {
        if (_index.Task(node) is not { } task || _car.Tasks[node].StartedAt is not null) return null;
        var awaited = ReadyParts.Awaited(_car, task, _picture.Now).OrderBy(p => p.Expected).LastOrDefault();
        return awaited is { Expected: { } at } && start is { } s && s >= at && s - at < TimeSpan.FromDays(1) ? "part " + ShopTime.Day(_picture.Local(at)) : null;
    }

    private ReadyUnit Task(PlanTask task, TaskState state)
    {
        var stop = _picture.Shop.Stops.Values.Any(s => s.Car == _car.Id && (s.Task == task.Id || (s.Task is null && s.Tasks.Contains(_car.Id + "/" + task.Id))));
        var reading = task.Readings.FirstOrDefault(r => Looks.Holds(_car, task, r));
        return new()
        {
            Id = task.Id,
            Name = task.Name,
            Path = $"/cars/{_car.Id}/task/{task.Id}",
            Bolt = TaskWords.Mark(state),
            Mark = stop ? ReadyMark.Stop : reading is not null ? ReadyMark.Tag : ReadyMark.None,
            Note = stop ? "stop" : reading is not null ? "reading holds" : state.Status == WorkStatus.ForSecondCheck ? "for second check" : state.Status == WorkStatus.PartDone ? "left part-done" : null,
            State = state.Status == WorkStatus.InHand ? $"{TaskWords.State(state)}, {ShopTime.Names([.. state.Crew.Select(m => _picture.Shop.NameOf(m.Person))])}" : TaskWords.State(state),
            InHand = state.Status == WorkStatus.InHand,
            Start = default,
            Finish = default,
            WaitsOn = [.. _waiting[task.Id].Take(MostWaits).Select(w => BayMapping.Wait(_picture, w)), .. More(_waiting[task.Id].Count())],
        };
    }

    private static IEnumerable<BayWait> More(int waits) => waits > MostWaits ? [new($"and {waits - MostWaits} more")] : [];

    private ReadyUnit Hold(HoldPoint hold, HoldState state) => new()
    {
        Id = hold.Id,
        Name = hold.Name,
        Path = "/holds",
        Bolt = state.Counts ? BoltState.SignedOff : null,
        Note = state.Counts ? "released" : hold.KeyCheck ? "key check" : "hold point",
        State = state.Counts ? "released" : state.Released is null ? "hold point, not released" : "hold point, its release lapsed",
        Start = default,
        Finish = default,
        WaitsOn = state.Counts ? [] : [.. _index.LinksInto(hold.Id).Where(l => !Counts(l.After)).Take(MostWaits).Select(l => new BayWait($"{_index.NameOf(l.After)} is not done.")), new($"Its release, by the {hold.ReleasedBy.ToString().ToLowerInvariant()}.")],
    };

    private ImmutableArray<ReadyNeighbour> Neighbours(ImmutableArray<string> nodes, bool into)
    {
        var found = new List<ReadyNeighbour>();
        foreach (var link in nodes.SelectMany(n => into ? _index.LinksInto(n) : _index.LinksFrom(n)))
        {
            var other = into ? link.After : link.Task;
            var unit = _unitOf[other];
            if (unit == _unitOf[into ? link.Task : link.After] || found.Any(f => f.Id == unit)) continue;
            var name = unit == other ? _index.NameOf(other) : _car.Plan.Stages.First(s => "stage:" + s.Id == unit).Name;
            found.Add(new(unit, name, link is { Kind: LinkKind.FinishStart, Lag: 0 } || unit != other ? null : LinkWords.Of(link)));
        }

        return [.. found];
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Histories;

/// <summary>Makes up small plans without faults: lanes of work, dressed up at random and tied together.</summary>
public sealed class PlanMaker(Dice dice, bool corner)
{
    private static readonly Func<Dice, Lane>[] Kinds = [Lane.Lift, Lane.Fuel, Lane.Electric, Lane.Cooling, Lane.Under, Lane.Hot, Lane.Run];

    private readonly List<Link> _links = [];
    private readonly List<HoldPoint> _holds = [];
    private readonly List<PlanTask> _tasks = [];

    public Plan Make(string id)
    {
        var small = dice.Chance(30);
        var kinds = small ? [Lane.Small] : dice.Shuffled(Kinds).Take(dice.Between(2, 3));
        var lanes = kinds.Select(kind => kind(dice)).ToList();
        var chains = lanes.Select(Chain).ToList();
        if (!small) Tie(chains);
        if (small || dice.Chance(70)) End(chains);
        return new Plan
        {
            Id = id,
            Name = id,
            Stages = [new("s1", "All of it")],
            Items = [.. lanes.SelectMany(l => l.Items)],
            Parts = [new("fuse", "Fuse"), new("bracket", "Bracket", 3), new("seal", "Seal")],
            Tasks = [.. _tasks],
            Holds = [.. _holds],
            Links = [.. _links],
        };
    }

    /// <summary>Dresses the lane's work up and ties it into one chain; the ids of its nodes in order.</summary>
    private List<string> Chain(Lane lane)
    {
        var tasks = Dress(lane).ToList();
        var holds = new HoldPoint?[tasks.Count];
        for (var i = 0; i < tasks.Count - 1; i++)
            if (dice.Chance(tasks.Count == 2 ? 60 : 14)) holds[i] = Hold("after-" + tasks[i].Id, lane);
        TakeAgain(tasks, holds);
        _tasks.AddRange(tasks);
        _holds.AddRange(holds.OfType<HoldPoint>());
        var nodes = tasks.SelectMany((t, i) => holds[i] is { } hold ? new[] { t.Id, hold.Id } : [t.Id]).ToList();
        for (var i = 1; i < nodes.Count; i++) _links.Add(Lagged(new Link(nodes[i], nodes[i - 1])));
        return nodes;
    }

    private Link Lagged(Link link) => dice.Below(6) switch
    {
        0 => link with { Lag = dice.Pick([15, 30, 90]) },
        1 => link with { Lag = dice.Pick([20, 60, 120]), Clock = LagClock.Elapsed },
        _ => link,
    };

    private HoldPoint Hold(string id, Lane lane) => new()
    {
        Id = id,
        Name = id,
        Stage = "s1",
        ReleasedBy = dice.Chance(70) ? Position.Foreman : Position.Technician,
        Qualification = dice.Chance(30) ? "inspection" : null,
        StandsOn = dice.Chance(50) ? [AnyAspect(lane)] : [],
        KeyCheck = dice.Chance(40),
    };

    private Aspect AnyAspect(Lane lane)
    {
        var item = dice.Pick(lane.Items);
        return new Aspect(item.Id, dice.Pick(item.Aspects));
    }

    private IEnumerable<PlanTask> Dress(Lane lane)
    {
        var conditions = lane.Items.ToDictionary(i => i.Id, i => i.AtTakeIn);
        foreach (var task in WithExtras(lane))
        {
            var dressed = Crewed(Dressed(task, lane));
            if (task.Needs.IsEmpty && task.Changes.IsEmpty && dice.Chance(30))
                dressed = dressed with { Needs = [NeedOf(lane, conditions)] };
            yield return dressed;
            foreach (var change in task.Changes) conditions[change.Item] = change.To;
        }
    }

    private IEnumerable<PlanTask> WithExtras(Lane lane)
    {
        foreach (var task in lane.Tasks)
        {
            yield return task;
            if (dice.Chance(18)) yield return Lane.Job("see-" + task.Id) with { Hazards = dice.Chance(35) ? [new("fuel-under-pressure")] : [] };
        }
    }

    private Need NeedOf(Lane lane, Dictionary<string, string> conditions)
    {
        var item = dice.Pick(lane.Items);
        var also = dice.Pick(item.Conditions);
        return new Need(item.Id, also == conditions[item.Id] || dice.Chance(50) ? [conditions[item.Id]] : [conditions[item.Id], also]);
    }

    private PlanTask Dressed(PlanTask task, Lane lane)
    {
        if (task.Readings.IsEmpty && dice.Chance(20))
            task = task with { Readings = [new() { Id = "gap", Name = "gap", Unit = "mm", Min = 1, Max = 3, Source = "made up", StandsOn = [AnyAspect(lane)], HoldsWhenTooClose = dice.Chance(40), SeenByTwo = dice.Chance(15) }] };
        if (task.StandsOn.IsEmpty && dice.Chance(25)) task = task with { StandsOn = [AnyAspect(lane)] };
        if (task.Touches.IsEmpty && dice.Chance(12)) task = task with { Touches = [AnyAspect(lane)] };
        if (dice.Chance(16)) task = task with { SecondCheck = true, SecondCheckQualification = dice.Chance(50) ? "inspection" : null };
        if (task.HowLeft.IsEmpty && dice.Chance(18)) task = task with { HowLeft = ["as found", "covered"] };
        if (task.Parts.IsEmpty && dice.Chance(12)) task = task with { Parts = ["seal"] };
        if (task.Place == "car" && task.Hazards.IsEmpty && task.Changes.IsEmpty && dice.Chance(15)) task = task with { Place = corner && dice.Chance(50) ? "fuel corner" : "bench" };
        return task with { Estimate = Estimate() };
    }

    private Estimate Estimate()
    {
        var low = dice.Between(10, 60);
        var usual = low + dice.Between(0, 60);
        return new(low, usual, usual + dice.Between(0, 90));
    }

    private PlanTask Crewed(PlanTask task) => task.Crew is not [{ Qualification: null, Count: 1 }] ? task : dice.Below(8) switch
    {
        0 => task with { Crew = [new("lead"), new("hand")] },
        1 => task with { Crew = [new("lead", "lifting")] },
        2 => task with { Crew = [new("lead", Count: 2)] },
        3 => task with { Crew = [new("lead", "fuel")] },
        _ => task,
    };

    /// <summary>Whatever lapses by plan is taken again by a later node of the lane, or by the one that disturbs it.</summary>
    private void TakeAgain(List<PlanTask> tasks, HoldPoint?[] holds)
    {
        for (var early = 0; early < tasks.Count; early++)
        {
            for (var late = early + 1; late < tasks.Count; late++)
            {
                if (Disturbs(tasks[late], Evidence(tasks[early]))) Assign(tasks, early, late, tasks[early].Id);
                if (holds[early] is { } hold && Disturbs(tasks[late], hold.StandsOn)) Assign(tasks, early, late, hold.Id);
            }
        }
    }

    private void Assign(List<PlanTask> tasks, int early, int late, string node)
    {
        var by = late + 1 < tasks.Count && dice.Chance(70) ? dice.Between(late + 1, tasks.Count - 1) : late;
        if (by > early && !tasks[by].TakesAgain.Contains(node))
            tasks[by] = tasks[by] with { TakesAgain = tasks[by].TakesAgain.Add(node) };
    }

    private static IEnumerable<Aspect> Evidence(PlanTask task) => task.StandsOn.Concat(task.Readings.SelectMany(r => r.StandsOn));

    private static bool Disturbs(PlanTask task, IEnumerable<Aspect> evidence) =>
        evidence.Any(a => task.Changes.Any(c => c.Item == a.Item) || task.Touches.Contains(a));

    /// <summary>Links between lanes, always from an earlier lane to a later one: no circle can come of them.</summary>
    private void Tie(List<List<string>> chains)
    {
        var tasks = _tasks.Select(t => t.Id).ToHashSet();
        for (var n = dice.Between(2, 6); n > 0; n--)
        {
            var from = dice.Below(chains.Count - 1);
            var early = dice.Pick(chains[from]);
            var late = dice.Pick(chains[dice.Between(from + 1, chains.Count - 1)]);
            if (_links.Any(l => l.Task == late && l.After == early)) continue;
            _links.Add(tasks.Contains(early) && tasks.Contains(late) ? Between(late, early) : new Link(late, early));
        }
    }

    private Link Between(string late, string early) => dice.Below(6) switch
    {
        0 => new Link(late, early, LinkKind.StartStart, dice.Pick([0, 20, 60]), dice.Pick([LagClock.Working, LagClock.Elapsed])),
        1 => new Link(late, early, LinkKind.FinishFinish, dice.Pick([0, 15, 45]), dice.Pick([LagClock.Working, LagClock.Elapsed])),
        2 => new Link(late, early, LinkKind.StartFinish, dice.Pick([0, 15, 45])),
        3 => new Link(late, early, LinkKind.FinishStart, -dice.Pick([5, 20, 40])),
        _ => Lagged(new Link(late, early)),
    };

    private void End(List<List<string>> chains)
    {
        _holds.Add(new HoldPoint { Id = "handover", Name = "Handover", Stage = "s1", Handover = true });
        _links.AddRange(chains.Select(chain => new Link("handover", chain[^1])));
    }
}

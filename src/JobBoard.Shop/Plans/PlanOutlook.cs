using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Shop.Dates;

namespace JobBoard.Shop.Plans;

/// <summary>What a revised plan of a running car would do, looked at by the same rules that will decide it, before it is sent.</summary>
public sealed record PlanOutlook
{
    /// <summary>What differs from the running plan.</summary>
    public required PlanDifference Differs { get; init; }

    /// <summary>Faults it adds.</summary>
    public ImmutableArray<PlanFault> Faults { get; init; } = [];

    /// <summary>Faults the running plan has already; they stand against nothing.</summary>
    public ImmutableArray<PlanFault> Known { get; init; } = [];

    /// <summary>What else stands against it: changed since, begun, released.</summary>
    public ImmutableArray<WaitingOn> Against { get; init; } = [];

    /// <summary>The end of everything as things stand; nothing where it is not known.</summary>
    public DateTimeOffset? Before { get; init; }

    /// <summary>The end of everything then; nothing where it is not known or cannot be worked out.</summary>
    public DateTimeOffset? After { get; init; }

    /// <summary>Shop hours from the one end to the other, above zero for later; nothing where one is not known.</summary>
    public TimeSpan? Moves { get; init; }

    /// <summary>Whether dates could be worked out at all: not while links go round or names are unknown.</summary>
    public bool HasDates { get; init; }

    /// <summary>Tasks and hold points that would end at another time, the most moved first.</summary>
    public ImmutableArray<MovedNode> Moved { get; init; } = [];

    /// <summary>Work in hand or left part-done that is touched.</summary>
    public ImmutableArray<TouchedWork> Touched { get; init; } = [];

    /// <summary>Tasks still to do that could not be done any more, and can be as things stand.</summary>
    public ImmutableArray<Reached> Lost { get; init; } = [];

    private static readonly ImmutableHashSet<string> NoOrder =
        ImmutableHashSet.Create(StringComparer.Ordinal, "circle", "unknown-id", "id-twice", "id-form", "too-many", "estimate", "number");

    /// <summary>Looks at it.</summary>
    public static PlanOutlook Of(ShopState shop, RevisePlan change, string actor, DateTimeOffset now, RuleBook rules, DateBook dates)
    {
        var car = shop.Cars[change.Car];
        var facts = ShopFacts.Of(shop, now);
        var known = PlanFaults.Find(car.Plan, facts);
        var envelope = new Envelope(Guid.CreateVersion7(now), actor, now, null, change with { Why = change.Why.Length == 0 ? "a look" : change.Why });
        var decision = Deciding.Decide(shop, envelope, now, rules);
        var outlook = new PlanOutlook
        {
            Differs = PlanDifference.Between(car.Plan, change.Plan),
            Faults = PlanFaults.Added(car.Plan, change.Plan, facts),
            Known = known,
            Against = decision is Decision.Refused refused ? [.. refused.Reasons.Where(r => r.Rule != RuleBook.Ids.PlanFault && r.About != "plan" || r.Rule == RuleBook.Ids.Stale)] : [],
            Before = dates.EarliestIf(shop, car, now),
        };
        if (outlook.Differs.IsNothing || outlook.Faults.Concat(known).Any(f => NoOrder.Contains(f.Code))) return outlook;
        var made = decision is Decision.Accepted accepted ? accepted.Facts : [new PlanRevised(change.Plan, outlook.Differs, "a look") { Car = car.Id }];
        return outlook.With(shop, car, made, envelope, dates);
    }

    private PlanOutlook With(ShopState shop, CarBoard car, ImmutableArray<Fact> made, Envelope envelope, DateBook dates)
    {
        var now = envelope.OccurredAt;
        var then = shop;
        foreach (var fact in made) then = Folding.Apply(then, new(then.Seq + 1, fact.Stream, envelope.Actor, now, now, envelope.Id, fact));
        var board = then.Cars[car.Id];
        var (was, after) = (dates.If(shop, car, now, new()), dates.If(then, board, now, new()));
        return this with
        {
            HasDates = true,
            After = after.Earliest,
            Moves = Between(shop, was.Earliest, after.Earliest),
            Moved = [.. MovedNodes(shop, board, was, after).OrderByDescending(m => m.By.Duration())],
            Touched = [.. Touching(car, Differs, made)],
            Lost = [.. LostIn(board).Where(l => !LostIn(car).Any(k => k.Task == l.Task && k.Item == l.Item))],
        };
    }

    private static IEnumerable<Reached> LostIn(CarBoard car) => Reach.Lost(
        car.Plan, i => car.Items.GetValueOrDefault(i)?.Condition, t => car.Tasks[t].Status == WorkStatus.NotStarted, t => !car.Tasks[t].Counts);

    private static IEnumerable<MovedNode> MovedNodes(ShopState shop, CarBoard board, CarDates was, CarDates then)
    {
        foreach (var (id, dates) in then.Nodes)
        {
            if (!was.Nodes.TryGetValue(id, out var before) || before.EarlyFinish is not { } from || dates.EarlyFinish is not { } to) continue;
            if ((board.Tasks.TryGetValue(id, out var task) && task.Counts) || Between(shop, from, to) is not { } by || by.Duration() < TimeSpan.FromMinutes(1)) continue;
            yield return new(id, from, to, by);
        }
    }

    private static IEnumerable<TouchedWork> Touching(CarBoard car, PlanDifference differs, ImmutableArray<Fact> made)
    {
        var linked = differs.LinksAdded.Concat(differs.LinksTakenOut).SelectMany(l => new[] { l.Task, l.After }).ToHashSet(StringComparer.Ordinal);
        foreach (var task in car.Tasks.Values.Where(t => t.Status is WorkStatus.InHand or WorkStatus.PartDone))
        {
            var planned = PlanIndex.Of(car.Plan).Task(task.Id)!;
            var stop = made.OfType<StopRaised>().FirstOrDefault(s => s.Car == car.Id && (s.Task == task.Id || s.Task is null));
            var altered = differs.ItemsAltered.Any(i => planned.Changes.Any(c => c.Item == i) || planned.Needs.Any(n => n.Item == i));
            if (stop is null && !altered && !linked.Contains(task.Id)) continue;
            yield return new(task.Id, [.. task.Crew.Select(m => m.Person).DefaultIfEmpty(task.Left?.By ?? "").Where(p => p.Length > 0)], task.Status == WorkStatus.InHand, stop?.Why);
        }
    }

    private static TimeSpan? Between(ShopState shop, DateTimeOffset? from, DateTimeOffset? to)
    {
        if (from is not { } f || to is not { } t) return null;
        var hours = ShopHours.Of(shop);
        return TimeSpan.FromMinutes(t >= f ? hours.WorkingMinutes(f, t) : -hours.WorkingMinutes(t, f));
    }
}

/// <summary>A task or hold point that would end at another time.</summary>
/// <param name="Node">Which.</param>
/// <param name="Before">Its early finish as things stand.</param>
/// <param name="After">Its early finish then.</param>
/// <param name="By">Shop hours, above zero for later.</param>
public sealed record MovedNode(string Node, DateTimeOffset Before, DateTimeOffset After, TimeSpan By);

/// <summary>Work that was begun and is touched by a change of the plan.</summary>
/// <param name="Task">The task.</param>
/// <param name="People">Who is on it, or who left it.</param>
/// <param name="InHand">Whether it is in hand; else it was left part-done.</param>
/// <param name="Stop">Why it gets a stop, or nothing.</param>
public sealed record TouchedWork(string Task, ImmutableArray<string> People, bool InHand, string? Stop);

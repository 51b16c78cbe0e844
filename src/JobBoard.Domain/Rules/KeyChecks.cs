using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>One system of a key check.</summary>
/// <param name="System">Which; nothing for what belongs to none.</param>
/// <param name="Against">What stands against it, in words; empty for a go.</param>
/// <param name="Nodes">Tasks and hold points behind it, in an order in which they are done.</param>
public sealed record KeyRow(KeySystem? System, ImmutableArray<WaitingOn> Against, ImmutableArray<string> Nodes)
{
    /// <summary>Nothing recorded stands against it. That is all it says.</summary>
    public bool Go => Against.IsEmpty;
}

/// <summary>A key check as it stands: each system, what is open before it, and the call.</summary>
/// <param name="Hold">The hold point.</param>
/// <param name="Rows">One per system, in the order they are called; what belongs to none comes last, where there is any.</param>
/// <param name="Open">The least that is still open, in an order in which it can be done.</param>
/// <param name="Asked">Everybody who is in, with their answer, or nothing.</param>
public sealed record KeyLook(HoldPoint Hold, ImmutableArray<KeyRow> Rows, ImmutableArray<OpenStep> Open, ImmutableArray<(string Person, CallAnswer? Answer)> Asked);

/// <summary>Looks at the go / no-go before the engine is first turned under its own power.</summary>
public static class KeyChecks
{
    /// <summary>Rules about order: they are said by what is open, not once more by the start behind the key check.</summary>
    private static readonly ImmutableHashSet<string> Order =
    [
        RuleBook.Ids.Link, RuleBook.Ids.Lag, RuleBook.Ids.HoldPoint, RuleBook.Ids.Lapsed, RuleBook.Ids.AgainOrNot, RuleBook.Ids.ReadingHold, RuleBook.Ids.Call,
        RuleBook.Ids.TaskState, RuleBook.Ids.HowLeft,
    ];

    /// <summary>The key check of a hold point of a car.</summary>
    public static KeyLook Of(ShopState shop, CarBoard car, HoldPoint hold, DateTimeOffset now)
    {
        var index = PlanIndex.Of(car.Plan);
        var before = index.AllBefore(hold.Id).ToHashSet(StringComparer.Ordinal);
        var nodes = index.InOrder.Where(before.Contains).ToLookup(n => SystemOf(index, n));
        var starts = Starts(shop, car, hold, now).ToLookup(s => s.System, s => s.Waiting);
        var systems = Enum.GetValues<KeySystem>().Select(s => (KeySystem?)s).Append(null);
        return new(
            hold,
            [.. systems.Select(s => new KeyRow(s, [.. nodes[s].SelectMany(n => Against(shop, car, index, n)).Concat(starts[s]).DistinctBy(w => w.Words)], [.. nodes[s]])).Where(r => r.System is not null || r.Nodes.Length > 0)],
            StillOpen.Before(car, hold.Id),
            [.. Calling.Asked(shop).Select(p => (p.Id, car.Call.GetValueOrDefault(CallAnswer.Key(hold.Id, p.Id))))]);
    }

    /// <summary>The system a task or hold point belongs to.</summary>
    public static KeySystem? SystemOf(PlanIndex index, string node)
    {
        var (own, stage) = index.Task(node) is { } task ? (task.System, task.Stage) : (index.Hold(node)?.System, index.Hold(node)?.Stage);
        return own ?? index.Plan.Stages.FirstOrDefault(s => s.Id == stage)?.System;
    }

    private static IEnumerable<WaitingOn> Against(ShopState shop, CarBoard car, PlanIndex index, string node)
    {
        foreach (var step in StillOpen.Of(car, index, node)) yield return new(RuleBook.Ids.ReleaseOrder, Words(shop, car, index, step), Who(car, node), About: node);
    }

    private static string Words(ShopState shop, CarBoard car, PlanIndex index, OpenStep step)
    {
        var name = index.NameOf(step.Node);
        var lapse = car.Tasks.TryGetValue(step.Node, out var task) ? task.SignedOff?.LapsedBy : car.Holds[step.Node].Released?.LapsedBy;
        return step.Kind switch
        {
            OpenKind.Again => $"{name} has lapsed: {HoldRules.Cause(new(shop, car, car.Plan.Tasks[0], default, RuleBook.Full, ShopHours.Of(shop)), lapse!)}.",
            OpenKind.Check => $"{name} waits for its second check.",
            OpenKind.Answer => $"{name}: again or not?",
            OpenKind.Reading => $"{index.Task(step.Node)!.Readings.First(r => r.Id == step.Reading).Name} ({name}) is not in limits.",
            OpenKind.Release => $"{name} is not released.",
            _ => $"{name} {Status(task!)}.",
        };
    }

    private static string Status(TaskState task) => task.Status switch
    {
        WorkStatus.InHand => "is in hand, " + string.Join(", ", task.Crew.Select(m => "{" + m.Person + "}")),
        WorkStatus.PartDone => task.Left is { } left ? $"is left part-done: {left.Words}, {{{left.By}}}" : "is left part-done",
        WorkStatus.Undone => "has to be done again" + (task.UndoneBecause is { } why ? ": " + why : ""),
        _ => "is not done",
    };

    private static ImmutableArray<string> Who(CarBoard car, string node) => car.Tasks.TryGetValue(node, out var task) ? [.. task.Crew.Select(m => m.Person)] : [];

    /// <summary>What else stands against the starts behind the key check, each under the system it belongs to.</summary>
    private static IEnumerable<(KeySystem? System, WaitingOn Waiting)> Starts(ShopState shop, CarBoard car, HoldPoint hold, DateTimeOffset now)
    {
        var index = PlanIndex.Of(car.Plan);
        foreach (var id in Calling.Behind(index, hold.Id).Where(t => car.Tasks[t].Status is WorkStatus.NotStarted or WorkStatus.PartDone or WorkStatus.Undone))
        {
            foreach (var waiting in StartCheck.Of(shop, car.Id, id, now, RuleBook.Full).Where(w => !Order.Contains(w.Rule)))
                yield return (Under(index, hold, id, waiting), waiting);
        }
    }

    private static KeySystem? Under(PlanIndex index, HoldPoint hold, string task, WaitingOn waiting) => waiting.Rule switch
    {
        RuleBook.Ids.Condition or RuleBook.Ids.InWork when waiting.About?.StartsWith("shop/", StringComparison.Ordinal) == false => OfItem(index, hold, waiting.About),
        RuleBook.Ids.PartRight => SystemOf(index, task),
        _ => KeySystem.PeopleAndPlace,
    };

    /// <summary>The system of the task that brings an item last before the key check.</summary>
    private static KeySystem? OfItem(PlanIndex index, HoldPoint hold, string item)
    {
        var last = index.Changers(item).LastOrDefault(c => index.IsAfter(hold.Id, c.Task.Id));
        return last.Task is null ? null : SystemOf(index, last.Task.Id);
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>What has to be done to something that is still open.</summary>
public enum OpenKind
{
    /// <summary>A task to be started, gone on with or finished.</summary>
    Work,

    /// <summary>A task or release that lapsed, to be done or given again.</summary>
    Again,

    /// <summary>A second check.</summary>
    Check,

    /// <summary>"Again or not?", the foreman's answer.</summary>
    Answer,

    /// <summary>A reading out or too close, to be taken again or released.</summary>
    Reading,

    /// <summary>A hold point to be released.</summary>
    Release,
}

/// <summary>One thing still open before a hold point.</summary>
/// <param name="Node">The task or hold point.</param>
/// <param name="Kind">What has to be done.</param>
/// <param name="Reading">The reading, for <see cref="OpenKind.Reading"/>.</param>
public sealed record OpenStep(string Node, OpenKind Kind, string? Reading = null);

/// <summary>
/// The least that is still open before a node, in an order in which it can be done: what lapsed is left out where something
/// that is open anyway takes it again before anything needs it.
/// </summary>
public static class StillOpen
{
    /// <summary>Everything that has to be done before <paramref name="node"/>, each in an order that respects the plan.</summary>
    public static ImmutableArray<OpenStep> Before(CarBoard car, string node)
    {
        var index = PlanIndex.Of(car.Plan);
        var before = index.AllBefore(node).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<OpenStep> open = [.. index.InOrder.Where(before.Contains).SelectMany(n => Of(car, index, n))];
        return open.RemoveAll(step => step.Kind == OpenKind.Again && IsTakenAgain(index, step.Node, open));
    }

    /// <summary>What is open about one node.</summary>
    public static IEnumerable<OpenStep> Of(CarBoard car, PlanIndex index, string node)
    {
        if (car.Holds.TryGetValue(node, out var hold))
        {
            if (!hold.Counts) yield return new(node, hold.Released is null ? OpenKind.Release : OpenKind.Again);
            yield break;
        }

        var state = car.Tasks[node];
        if (car.Questions.ContainsKey(node)) yield return new(node, OpenKind.Answer);
        if (state.Status is WorkStatus.SignedOff or WorkStatus.ForSecondCheck && state.SignedOff is { LapsedBy.Holds: true }) yield return new(node, OpenKind.Again);
        else if (state.Status == WorkStatus.ForSecondCheck) yield return new(node, OpenKind.Check);
        else if (state.Status != WorkStatus.SignedOff) yield return new(node, OpenKind.Work);
        else
        {
            foreach (var need in index.Task(node)!.Readings.Where(r => HoldRules.Holding(car, index.Task(node)!, r) is not null)) yield return new(node, OpenKind.Reading, need.Id);
        }
    }

    /// <summary>
    /// Whether an open node takes a lapsed one again, with nothing open between the two: that would wait on the lapsed one.
    /// </summary>
    private static bool IsTakenAgain(PlanIndex index, string lapsed, ImmutableArray<OpenStep> open) =>
        index.TakenAgainBy(lapsed).Any(again => open.Any(o => o.Node == again)
            && !open.Any(o => o.Node != again && index.IsAfter(o.Node, lapsed) && index.IsAfter(again, o.Node) && !index.TakenAgainBy(lapsed).Contains(o.Node)));
}

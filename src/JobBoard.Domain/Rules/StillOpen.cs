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
    /// <summary>Everything that has to be done before <paramref name="node"/>, in an order in which it can be done.</summary>
    public static ImmutableArray<OpenStep> Before(CarBoard car, string node)
    {
        var index = PlanIndex.Of(car.Plan);
        var before = index.AllBefore(node).ToHashSet(StringComparer.Ordinal);
        List<OpenStep> open = [.. index.InOrder.Where(before.Contains).SelectMany(n => Of(car, index, n))];
        var first = new HashSet<(string First, string Then)>();
        foreach (var lapsed in open.Where(o => o.Kind == OpenKind.Again).ToArray())
        {
            foreach (var again in index.TakenAgainBy(lapsed.Node).Where(a => open.Any(o => o.Node == a)))
            {
                if (WithoutIt(index, open, first, lapsed, again) is not { } rest) continue;
                open = rest;
                break;
            }
        }

        return [.. first.Count == 0 ? open : Ordered(index, open, first)!];
    }

    /// <summary>
    /// The rest, in order, when a lapsed node is left to the one that takes it again: that comes before all that waits on the
    /// lapsed one. Nothing where no order does that; else <paramref name="first"/> has learned it.
    /// </summary>
    private static List<OpenStep>? WithoutIt(PlanIndex index, List<OpenStep> open, HashSet<(string First, string Then)> first, OpenStep lapsed, string again)
    {
        var rest = open.Where(o => o != lapsed).ToList();
        var more = rest.Where(o => o.Node != again && index.IsAfter(o.Node, lapsed.Node) && !index.TakenAgainBy(lapsed.Node).Contains(o.Node)).Select(o => (again, o.Node)).ToArray();
        var tried = first.Concat(more).ToHashSet();
        if (Ordered(index, rest, tried) is not { } ordered) return null;
        first.UnionWith(more);
        return ordered;
    }

    /// <summary>In the order of the links and of what comes first besides; nothing where that is a circle.</summary>
    private static List<OpenStep>? Ordered(PlanIndex index, List<OpenStep> open, HashSet<(string First, string Then)> first)
    {
        var (left, ordered) = (open.ToList(), new List<OpenStep>(open.Count));
        while (left.Count > 0)
        {
            var next = left.FindIndex(o => !left.Any(l => l.Node != o.Node && (index.IsAfter(o.Node, l.Node) || first.Contains((l.Node, o.Node)))));
            if (next < 0) return null;
            ordered.Add(left[next]);
            left.RemoveAt(next);
        }

        return ordered;
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
}

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
    /// <summary>So many lapsed nodes are weighed against each other; of more, each is left to the first that takes it again.</summary>
    private const int MostWeighed = 10;

    /// <summary>Everything that has to be done before <paramref name="node"/>, in an order in which it can be done.</summary>
    public static ImmutableArray<OpenStep> Before(CarBoard car, string node)
    {
        var index = PlanIndex.Of(car.Plan);
        var before = index.AllBefore(node).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<OpenStep> open = [.. index.InOrder.Where(before.Contains).SelectMany(n => Of(car, index, n))];
        return Fewest(index, open, [.. open.Where(o => o.Kind == OpenKind.Again)], 0, [], []);
    }

    /// <summary>The fewest, in order, when each lapsed node from <paramref name="at"/> on is done again or left to one that takes it again.</summary>
    private static ImmutableArray<OpenStep> Fewest(
        PlanIndex index, ImmutableArray<OpenStep> open, ImmutableArray<OpenStep> lapsed, int at, ImmutableHashSet<(string First, string Then)> first, ImmutableHashSet<string> needed)
    {
        if (at == lapsed.Length) return open;
        ImmutableArray<OpenStep>? best = null;
        var step = lapsed[at];
        foreach (var again in needed.Contains(step.Node) ? [] : index.TakenAgainBy(step.Node).Where(a => open.Any(o => o.Node == a)))
        {
            var learned = first.Union(Waiting(index, open, step.Node, again));
            if (Ordered(index, open.Remove(step), learned) is not { } rest) continue;
            var found = Fewest(index, rest, lapsed, at + 1, learned, needed.Add(again));
            if (found.Length == open.Length - (lapsed.Length - at) || lapsed.Length > MostWeighed) return found;
            if (best is null || found.Length < best.Value.Length) best = found;
        }

        var kept = Fewest(index, open, lapsed, at + 1, first, needed);
        return best is { } without && without.Length < kept.Length ? without : kept;
    }

    /// <summary>What waits on a lapsed node comes after the one it is left to.</summary>
    private static IEnumerable<(string First, string Then)> Waiting(PlanIndex index, ImmutableArray<OpenStep> open, string lapsed, string again) =>
        open.Where(o => o.Node != again && index.IsAfter(o.Node, lapsed) && !index.TakenAgainBy(lapsed).Contains(o.Node)).Select(o => (again, o.Node));

    /// <summary>In the order of the links and of what comes first besides; nothing where that is a circle.</summary>
    private static ImmutableArray<OpenStep>? Ordered(PlanIndex index, ImmutableArray<OpenStep> open, ImmutableHashSet<(string First, string Then)> first)
    {
        var (left, ordered) = (open.ToList(), ImmutableArray.CreateBuilder<OpenStep>(open.Length));
        while (left.Count > 0)
        {
            var next = left.FindIndex(o => !left.Any(l => l.Node != o.Node && (index.IsAfter(o.Node, l.Node) || first.Contains((l.Node, o.Node)))));
            if (next < 0) return null;
            ordered.Add(left[next]);
            left.RemoveAt(next);
        }

        return ordered.DrainToImmutable();
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

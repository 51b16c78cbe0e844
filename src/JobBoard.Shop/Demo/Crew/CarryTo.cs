using System.Collections.Immutable;
using JobBoard.Domain.Plans;

namespace JobBoard.Shop.Demo;

/// <summary>How far a scripted crew carries one car. Names are ids of tasks, hold points or stages.</summary>
/// <param name="Car">The car.</param>
public sealed record CarryTo(string Car)
{
    /// <summary>These and all they come after are done; the whole plan when empty.</summary>
    public ImmutableArray<string> Reach { get; init; } = [];

    /// <summary>These are not done, nor anything after them.</summary>
    public ImmutableArray<string> Short { get; init; } = [];

    /// <summary>Ids of the tasks and hold points to do.</summary>
    /// <exception cref="ArgumentException">A name is none of the plan's.</exception>
    public ImmutableHashSet<string> Nodes(Plan plan)
    {
        var index = PlanIndex.Of(plan);
        var wanted = Reach.IsEmpty ? [.. index.Nodes] : Spread(Named(index, Reach), n => index.LinksInto(n).Select(l => l.After));
        return wanted.Except(Spread(Named(index, Short), n => index.LinksFrom(n).Select(l => l.Task)));
    }

    private static IEnumerable<string> Named(PlanIndex index, ImmutableArray<string> names) => names.SelectMany(name => OfName(index, name));

    private static IEnumerable<string> OfName(PlanIndex index, string name)
    {
        if (index.IsNode(name)) return [name];
        if (index.StageOrder(name) < 0) throw new ArgumentException($"'{name}' is no task, hold point or stage of {index.Plan.Id}.", nameof(name));
        return index.Plan.Tasks.Where(t => t.Stage == name).Select(t => t.Id).Concat(index.Plan.Holds.Where(h => h.Stage == name).Select(h => h.Id));
    }

    private static ImmutableHashSet<string> Spread(IEnumerable<string> from, Func<string, IEnumerable<string>> next)
    {
        var found = ImmutableHashSet.CreateRange(StringComparer.Ordinal, from).ToBuilder();
        var open = new Stack<string>(found);
        while (open.TryPop(out var node))
        {
            foreach (var other in next(node).Where(found.Add)) open.Push(other);
        }

        return found.ToImmutable();
    }
}

/// <summary>What a scripted crew is told.</summary>
public sealed record CrewOrders
{
    /// <summary>The cars, the one to look at first in front.</summary>
    public required ImmutableArray<CarryTo> Cars { get; init; }

    /// <summary>The same seed gives the same commands.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>What is read, in order, where it is not to be made up: <c>car/task/reading</c> to numbers as typed. The last is expected to be in limits.</summary>
    public ImmutableDictionary<string, ImmutableArray<string>> Readings { get; init; } = ImmutableDictionary<string, ImmutableArray<string>>.Empty;

    /// <summary>
    /// Whether other people work in the shop too. What is refused was theirs first and is looked at again later; their work is
    /// left alone; their stops are heard and waited for. It ends when the first car is where it is to be.
    /// </summary>
    public bool AmongOthers { get; init; }

    /// <summary>A part ordered is here after its usual time, but after no more days than this.</summary>
    public int MostPartDays { get; init; } = 2;
}

/// <summary>What a scripted crew did.</summary>
/// <param name="Commands">Commands sent and accepted.</param>
/// <param name="Kinds">How many of each kind.</param>
/// <param name="Until">The shop's time at the end.</param>
/// <param name="Open">What it was told to do and could not, each with what it waits on; empty when all is done.</param>
public sealed record CrewReport(int Commands, ImmutableSortedDictionary<string, int> Kinds, DateTimeOffset Until, ImmutableArray<string> Open);

/// <summary>A command of the scripted crew was refused although the rules had said it could be done.</summary>
public sealed class CrewException(string message) : Exception(message);

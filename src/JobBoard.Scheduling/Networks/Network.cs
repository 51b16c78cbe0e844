namespace JobBoard.Scheduling;

/// <summary>
/// Tasks and links in an order in which each task comes after everything it waits on, laid out for the passes: rows of links
/// per task, both ways. Made once for a plan and used for every computation until the plan changes. Safe to share.
/// </summary>
/// <remarks>
/// A ring of links is refused whatever their kinds, also where start and finish alone could be satisfied.
/// Inside, tasks are numbered by their place in that order.
/// </remarks>
public sealed class Network
{
    /// <summary>Largest number of tasks.</summary>
    public const int MostTasks = 1 << 24;

    /// <summary>Largest lag, lead or duration in seconds or units: a thousand years of seconds.</summary>
    public const long LongestTime = 1L << 35;

    private Network(int[] order, ReadOnlySpan<Link> links)
    {
        TaskAt = order;
        PlaceOf = new int[order.Length];
        for (var place = 0; place < order.Length; place++)
            PlaceOf[order[place]] = place;
        Before = new LinkRows(this, links, after: true);
        Behind = new LinkRows(this, links, after: false);
        foreach (var link in links)
            TotalLag += Math.Abs(link.Lag);
    }

    /// <summary>How many tasks there are, numbered from 0.</summary>
    public int TaskCount => TaskAt.Length;

    /// <summary>How many links there are.</summary>
    public int LinkCount => Before.Row.Length;

    internal int[] TaskAt { get; }

    internal int[] PlaceOf { get; }

    /// <summary>Per task the links to what it waits on.</summary>
    internal LinkRows Before { get; }

    /// <summary>Per task the links to what waits on it.</summary>
    internal LinkRows Behind { get; }

    internal long TotalLag { get; }

    /// <summary>Makes a network.</summary>
    /// <exception cref="CycleException">Tasks wait on one another in a ring.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A task number or a lag is out of range.</exception>
    public static Network Build(int taskCount, ReadOnlySpan<Link> links) =>
        TryBuild(taskCount, links, out var network, out var ring) ? network! : throw new CycleException(ring);

    /// <summary>Makes a network, or names a ring of tasks that wait on one another.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A task number or a lag is out of range.</exception>
    public static bool TryBuild(int taskCount, ReadOnlySpan<Link> links, out Network? network, out IReadOnlyList<int> ring)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(taskCount);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(taskCount, MostTasks);
        foreach (var link in links)
            Check(link, taskCount);
        var order = TaskOrder.Of(taskCount, links, out ring);
        network = order is null ? null : new Network(order, links);
        return network is not null;
    }

    private static void Check(Link link, int taskCount)
    {
        if ((uint)link.Task >= (uint)taskCount || (uint)link.After >= (uint)taskCount)
            throw new ArgumentOutOfRangeException(nameof(link), link, $"A link names a task outside 0 to {taskCount - 1}.");
        if (link.Lag is > LongestTime or < -LongestTime)
            throw new ArgumentOutOfRangeException(nameof(link), link, $"A lag is beyond {LongestTime}.");
        if (!Enum.IsDefined(link.Kind) || !Enum.IsDefined(link.Clock))
            throw new ArgumentOutOfRangeException(nameof(link), link, "A link's kind or clock is not one of those there are.");
    }
}

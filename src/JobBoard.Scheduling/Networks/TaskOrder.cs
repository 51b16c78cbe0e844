namespace JobBoard.Scheduling;

/// <summary>
/// Orders tasks so that each comes after everything it waits on, or finds a ring. Tasks equally deep in the network stand
/// together, and among them those with as many links: the passes then do the same thing many times in a row.
/// </summary>
internal static class TaskOrder
{
    public static int[]? Of(int taskCount, ReadOnlySpan<Link> links, out IReadOnlyList<int> ring)
    {
        var waits = new int[taskCount];
        var first = new int[taskCount + 1];
        foreach (var link in links)
        {
            waits[link.Task]++;
            first[link.After + 1]++;
        }

        var likeness = Likeness(waits, first, links);
        for (var task = 0; task < taskCount; task++)
            first[task + 1] += first[task];
        var depth = Depths(waits, first, Behind(links, first), out var reached);
        ring = reached == taskCount ? [] : Ring(waits, links);
        return reached == taskCount ? Sorted(depth, likeness) : null;
    }

    /// <summary>A number that is the same for tasks with as many links before and behind, and as many elapsed lags.</summary>
    private static int[] Likeness(int[] before, int[] behind, ReadOnlySpan<Link> links)
    {
        var elapsed = new byte[before.Length];
        foreach (var link in links)
        {
            if (link.Clock == LagClock.Elapsed && elapsed[link.Task] < 15)
                elapsed[link.Task]++;
        }

        var likeness = new int[before.Length];
        for (var task = 0; task < likeness.Length; task++)
            likeness[task] = Math.Min(before[task], 31) << 9 | elapsed[task] << 5 | Math.Min(behind[task + 1], 31);
        return likeness;
    }

    private static int[] Behind(ReadOnlySpan<Link> links, int[] first)
    {
        var behind = new int[links.Length];
        var next = (int[])first.Clone();
        foreach (var link in links)
            behind[next[link.After]++] = link.Task;
        return behind;
    }

    /// <summary>Kahn's way. Leaves in <paramref name="waits"/> what was never reached.</summary>
    private static int[] Depths(int[] waits, int[] first, int[] behind, out int reached)
    {
        var (order, depth) = (new int[waits.Length], new int[waits.Length]);
        reached = 0;
        for (var task = 0; task < waits.Length; task++)
        {
            if (waits[task] == 0)
                order[reached++] = task;
        }

        for (var at = 0; at < reached; at++)
        {
            for (var k = first[order[at]]; k < first[order[at] + 1]; k++)
            {
                depth[behind[k]] = Math.Max(depth[behind[k]], depth[order[at]] + 1);
                if (--waits[behind[k]] == 0)
                    order[reached++] = behind[k];
            }
        }

        return depth;
    }

    private static int[] Sorted(int[] depth, int[] likeness)
    {
        var order = new int[depth.Length];
        var keys = new (int Depth, int Likeness, int Task)[depth.Length];
        for (var task = 0; task < order.Length; task++)
            keys[task] = (depth[task], likeness[task], task);
        Array.Sort(keys);
        for (var place = 0; place < order.Length; place++)
            order[place] = keys[place].Task;
        return order;
    }

    /// <summary>Every task left over waits on one left over; going back from any of them must come round.</summary>
    private static List<int> Ring(int[] waits, ReadOnlySpan<Link> links)
    {
        var after = new Dictionary<int, int>();
        foreach (var link in links)
        {
            if (waits[link.Task] > 0 && waits[link.After] > 0)
                after.TryAdd(link.Task, link.After);
        }

        var seen = new Dictionary<int, int>();
        var path = new List<int>();
        var task = Array.FindIndex(waits, w => w > 0);
        while (seen.TryAdd(task, path.Count))
        {
            path.Add(task);
            task = after[task];
        }

        path.RemoveRange(0, seen[task]);
        path.Reverse();
        return path;
    }
}

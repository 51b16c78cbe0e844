namespace JobBoard.Scheduling;

/// <summary>Orders tasks so that each comes after everything it waits on (Kahn's way, ties by number), or finds a ring.</summary>
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

        for (var task = 0; task < taskCount; task++)
            first[task + 1] += first[task];
        var behind = Behind(links, first);
        var order = Ordered(waits, first, behind, out var ordered);
        ring = ordered == taskCount ? [] : Ring(waits, links);
        return ordered == taskCount ? order : null;
    }

    private static int[] Behind(ReadOnlySpan<Link> links, int[] first)
    {
        var behind = new int[links.Length];
        var next = (int[])first.Clone();
        foreach (var link in links)
            behind[next[link.After]++] = link.Task;
        return behind;
    }

    private static int[] Ordered(int[] waits, int[] first, int[] behind, out int count)
    {
        var order = new int[waits.Length];
        count = 0;
        for (var task = 0; task < waits.Length; task++)
        {
            if (waits[task] == 0)
                order[count++] = task;
        }

        for (var at = 0; at < count; at++)
        {
            for (var k = first[order[at]]; k < first[order[at] + 1]; k++)
            {
                if (--waits[behind[k]] == 0)
                    order[count++] = behind[k];
            }
        }

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

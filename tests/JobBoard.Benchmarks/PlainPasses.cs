using JobBoard.Scheduling;

namespace JobBoard.Benchmarks;

/// <summary>
/// The yardstick: plain arrays, Kahn's order made anew each time, one forward and one backward pass, finish-start only, no lags,
/// no calendar, no free float.
/// </summary>
internal sealed class PlainPasses
{
    private readonly int[] duration;
    private readonly int[] firstBefore;
    private readonly int[] before;
    private readonly int[] firstBehind;
    private readonly int[] behind;
    private readonly int[] waits;
    private readonly int[] order;
    private readonly int[] earlyFinish;
    private readonly int[] lateStart;

    public PlainPasses(int[] duration, Link[] links)
    {
        this.duration = duration;
        (firstBefore, before) = Rows(links, l => l.Task, l => l.After);
        (firstBehind, behind) = Rows(links, l => l.After, l => l.Task);
        (waits, order) = (new int[duration.Length], new int[duration.Length]);
        (earlyFinish, lateStart) = (new int[duration.Length], new int[duration.Length]);
    }

    public int Run()
    {
        Order();
        var end = Forward();
        Backward(end);
        return end;
    }

    private void Order()
    {
        var count = 0;
        for (var task = 0; task < waits.Length; task++)
        {
            waits[task] = firstBefore[task + 1] - firstBefore[task];
            if (waits[task] == 0)
                order[count++] = task;
        }

        for (var at = 0; at < count; at++)
        {
            var task = order[at];
            for (var k = firstBehind[task]; k < firstBehind[task + 1]; k++)
            {
                if (--waits[behind[k]] == 0)
                    order[count++] = behind[k];
            }
        }
    }

    private int Forward()
    {
        var end = 0;
        foreach (var task in order)
        {
            var start = 0;
            for (var k = firstBefore[task]; k < firstBefore[task + 1]; k++)
                start = Math.Max(start, earlyFinish[before[k]]);
            earlyFinish[task] = start + duration[task];
            end = Math.Max(end, earlyFinish[task]);
        }

        return end;
    }

    private void Backward(int end)
    {
        for (var at = order.Length - 1; at >= 0; at--)
        {
            var task = order[at];
            var finish = end;
            for (var k = firstBehind[task]; k < firstBehind[task + 1]; k++)
                finish = Math.Min(finish, lateStart[behind[k]]);
            lateStart[task] = finish - duration[task];
        }
    }

    private (int[] First, int[] Other) Rows(Link[] links, Func<Link, int> row, Func<Link, int> other)
    {
        var first = new int[duration.Length + 1];
        foreach (var link in links)
            first[row(link) + 1]++;
        for (var task = 0; task < duration.Length; task++)
            first[task + 1] += first[task];
        var next = (int[])first.Clone();
        var others = new int[links.Length];
        foreach (var link in links)
            others[next[row(link)]++] = other(link);
        return (first, others);
    }
}

namespace JobBoard.Scheduling.Tests;

internal enum Status
{
    NotStarted,
    InHand,
    SignedOff,
}

/// <summary>A task as the slow oracle sees it; times in ticks of <see cref="SlowShop"/>.</summary>
internal sealed record SlowTask(int Work, Status Status = Status.NotStarted, int Start = 0, int Finish = 0, int NotBefore = 0);

/// <summary>A link as the slow oracle sees it; lag in ticks.</summary>
internal sealed record SlowLink(int Task, int After, bool FromFinish, bool ToFinish, int Lag, bool Elapsed);

/// <summary>
/// Dates by definition, with no order of tasks and no late pass: early dates by going over all tasks until nothing moves;
/// floats by pushing a task tick by tick and looking whether what hangs on it still keeps its time.
/// </summary>
internal sealed class SlowDates
{
    private readonly SlowShop shop;
    private readonly SlowTask[] tasks;
    private readonly SlowLink[] links;
    private readonly int now;

    public SlowDates(SlowShop shop, SlowTask[] tasks, SlowLink[] links, int now)
    {
        (this.shop, this.tasks, this.links, this.now) = (shop, tasks, links, now);
        (Starts, Finishes) = Settle(_ => true, (now, now), null);
        End = Finishes.Max();
    }

    public int[] Starts { get; }

    public int[] Finishes { get; }

    public int End { get; }

    /// <summary>How far the task can be pushed before it or what hangs on it ends after <paramref name="by"/>, in ticks, from -most to most.</summary>
    public int TotalFloat(int task, int by, int most)
    {
        var hanging = Hanging(task);
        for (var push = most; push > -most; push--)
        {
            var (_, finishes) = Settle(hanging.Contains, (0, 0), (task, push));
            if (hanging.Append(task).All(t => finishes[t] <= by))
                return push;
        }

        return -most;
    }

    /// <summary>How far the task can be pushed before a link to a task at its early dates, or the end, breaks.</summary>
    public int FreeFloat(int task, int most)
    {
        var outgoing = links.Where(l => l.After == task && Counts(l)).ToList();
        for (var push = most; push > 0; push--)
        {
            var (start, finish) = Pushed(task, push);
            if (finish <= End && outgoing.All(l => Lagged(l, l.FromFinish ? finish : start) <= (l.ToFinish ? Finishes : Starts)[l.Task]))
                return push;
        }

        return 0;
    }

    private bool Counts(SlowLink link) => tasks[link.Task].Status switch
    {
        Status.SignedOff => false,
        Status.InHand => link.ToFinish && !IsPastStart(link),
        _ => !IsPastStart(link),
    };

    private bool IsPastStart(SlowLink link) => !link.FromFinish && tasks[link.After].Status != Status.NotStarted;

    private HashSet<int> Hanging(int task)
    {
        var hanging = new HashSet<int>();
        var known = new List<int> { task };
        for (var i = 0; i < known.Count; i++)
        {
            foreach (var link in links.Where(l => l.After == known[i] && Counts(l)))
            {
                if (hanging.Add(link.Task))
                    known.Add(link.Task);
            }
        }

        return hanging;
    }

    /// <summary>Start and finish of the task after work worth so many ticks has been put before it.</summary>
    private (int Start, int Finish) Pushed(int task, int push)
    {
        if (push == 0)
            return (Starts[task], Finishes[task]);
        if (tasks[task].Status == Status.InHand)
            return (Starts[task], shop.After(Finishes[task], push));
        if (tasks[task].Work == 0)
            return (shop.After(Starts[task], push), shop.After(Finishes[task], push));
        return (shop.NextOpen(shop.After(Starts[task], push)), shop.After(Finishes[task], push));
    }

    /// <summary>
    /// Goes over the tasks until nothing moves. With a pushed task only what hangs on it counts, held by nothing but the links
    /// that come from it.
    /// </summary>
    private (int[] Starts, int[] Finishes) Settle(Func<int, bool> moves, (int Start, int Finish) least, (int Task, int Push)? pushed)
    {
        var starts = Enumerable.Repeat(least.Start, tasks.Length).ToArray();
        var finishes = Enumerable.Repeat(least.Finish, tasks.Length).ToArray();
        if (pushed is { } p)
            (starts[p.Task], finishes[p.Task]) = Pushed(p.Task, p.Push);
        bool moved;
        do
        {
            moved = false;
            for (var task = 0; task < tasks.Length; task++)
            {
                if (pushed?.Task == task || !moves(task))
                    continue;
                var relevant = links.Where(l => l.Task == task && (pushed is null || (Counts(l) && (l.After == pushed.Value.Task || moves(l.After)))));
                var next = Place(task, relevant, (starts, finishes), pushed is null);
                moved |= next != (starts[task], finishes[task]);
                (starts[task], finishes[task]) = next;
            }
        }
        while (moved);
        return (starts, finishes);
    }

    private (int Start, int Finish) Place(int task, IEnumerable<SlowLink> relevant, (int[] Starts, int[] Finishes) at, bool fromNow)
    {
        var it = tasks[task];
        if (it.Status == Status.SignedOff)
            return (it.Start, it.Finish);
        var (start, finish) = fromNow ? (Math.Max(now, it.NotBefore), 0) : (0, 0);
        foreach (var link in relevant)
        {
            var bound = Lagged(link, (link.FromFinish ? at.Finishes : at.Starts)[link.After]);
            if (link.ToFinish)
                finish = Math.Max(finish, bound);
            else if (it.Status == Status.NotStarted)
                start = Math.Max(start, bound);
        }

        if (it.Status == Status.InHand)
            return (it.Start, fromNow ? InHand(it, start, finish) : shop.InHours(finish));
        return it.Work == 0 ? NoLength(start, finish) : Worked(it, start, finish);
    }

    private (int, int) NoLength(int start, int finish)
    {
        var at = shop.InHours(Math.Max(start, finish));
        return (at, at);
    }

    private int InHand(SlowTask it, int from, int finish)
    {
        var begin = Math.Max(from, it.Start);
        return Math.Max(it.Work == 0 ? shop.InHours(begin) : shop.After(begin, it.Work), shop.InHours(finish));
    }

    private (int, int) Worked(SlowTask it, int from, int finish)
    {
        for (var start = shop.NextOpen(from); ; start = shop.NextOpen(start + 1))
        {
            var end = shop.After(start, it.Work);
            if (finish <= end)
                return (start, end);
            if (shop.Worked(end, finish) == 0)
                return (start, shop.InHours(finish));
        }
    }

    private int Lagged(SlowLink link, int tick) => Math.Max(0, link.Elapsed ? tick + link.Lag : shop.After(tick, link.Lag));
}

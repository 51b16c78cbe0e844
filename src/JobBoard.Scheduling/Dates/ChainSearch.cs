namespace JobBoard.Scheduling;

/// <summary>Goes back from the task that ends last through the links that bound each early date.</summary>
internal sealed class ChainSearch(Network network, TaskTimes times, WorkCalendar calendar, Dates dates)
{
    public IReadOnlyList<ChainStep> Find()
    {
        var chain = new List<ChainStep>();
        var (place, end) = (Last(), 1);
        while (place >= 0)
        {
            var (before, endBefore, link) = BoundBy(place, end);
            chain.Add(new ChainStep(network.TaskAt[place], link));
            (place, end) = (before, endBefore);
        }

        chain.Reverse();
        return chain;
    }

    private int Last()
    {
        var best = -1;
        for (var place = 0; place < network.TaskCount; place++)
        {
            if (Finish(place) == dates.End && (best < 0 || IsBetter(place, best)))
                best = place;
        }

        return best;
    }

    /// <summary>What bound this end of a task. An end that has happened was bound by nothing that is still to come.</summary>
    private (int Place, int End, int Link) BoundBy(int place, int end)
    {
        var (best, through, from) = (-1, -1, 1);
        var rows = network.Before;
        if (Happened(place, end) is not null)
            return (best, from, through);
        for (var k = rows.First[place]; k < rows.First[place + 1]; k++)
        {
            var before = LinkRows.Place(rows.Row[k]);
            if (Binds(place, rows.Row[k]) && (best < 0 || IsBetter(before, best)))
                (best, through, from) = (before, rows.Link[k], LinkRows.Other(rows.Row[k]) & 1);
        }

        return (best, from, through);
    }

    private bool Binds(int place, long row)
    {
        var twice = 2 * times.Work[place];
        var side = twice == 0 ? 0L : 1L;
        var at = After(row);
        if ((times.Marks[place] & TaskTimes.IsInHand) != 0)
            return (row & LinkRows.AtFinish) != 0 && at == Mark(place, 1);
        if ((row & LinkRows.AtFinish) == 0)
            return (at | side) == Mark(place, 0);
        return at == Mark(place, 1) || (at - twice | side) == Mark(place, 0);
    }

    private long After(long row)
    {
        var lag = LinkRows.Lag(row);
        var (place, end) = (LinkRows.Place(row), LinkRows.Other(row) & 1);
        if ((row & LinkRows.Elapsed) == 0)
            return (Mark(place, end) | (lag & 1)) + lag;
        return calendar.FirstMark((Happened(place, end) ?? calendar.InstantOf(Mark(place, end))) + lag);
    }

    private long Mark(int place, int end) =>
        Happened(place, end) is { } actual ? calendar.FirstMark(actual) : dates.Early[2 * place + end];

    private long Finish(int place) => Happened(place, 1) ?? calendar.InstantOf(dates.Early[2 * place + 1]);

    private long? Happened(int place, int end)
    {
        var how = times.Marks[place];
        if ((how & TaskTimes.IsSignedOff) != 0)
            return end == 0 ? times.Starts![place] : times.Finishes![place];
        return (how & TaskTimes.IsInHand) != 0 && end == 0 ? times.Starts![place] : null;
    }

    private bool IsBetter(int place, int than)
    {
        var (one, other) = (Slack(place), Slack(than));
        return one != other ? one < other : network.TaskAt[place] < network.TaskAt[than];
    }

    private long Slack(int place) => (times.Marks[place] & TaskTimes.IsSignedOff) != 0 ? 0 : dates.TotalFloatAt(place);
}

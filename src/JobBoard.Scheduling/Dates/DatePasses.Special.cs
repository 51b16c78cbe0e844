namespace JobBoard.Scheduling;

/// <content>Elapsed lags, and tasks that are in hand, signed off, limited or not known.</content>
internal sealed partial class DatePasses
{
    /// <summary>The first mark once the lag has run from the source end.</summary>
    private long AfterElapsed(long row, long mark)
    {
        if (!happened && table is not null && table.CoversMark(mark))
        {
            var instant = unchecked(table.InstantOf(mark) + LinkRows.Lag(row));
            if (table.Covers(instant))
                return table.FirstMark(instant);
        }

        return mark >= Unbounded ? Never : AfterElapsedAnywhere(row, mark);
    }

    private long AfterElapsedAnywhere(long row, long mark)
    {
        var from = Actual(LinkRows.Place(row), (row & LinkRows.OtherFinish) != 0) ?? calendar.InstantOf(mark);
        var after = calendar.FirstMark(from + LinkRows.Lag(row));
        table = calendar.Table;
        return after;
    }

    /// <summary>The last mark from which the lag still runs out by the mark.</summary>
    private long BeforeElapsed(long row, long mark)
    {
        if (table is not null && table.CoversMark(mark))
        {
            var instant = unchecked(table.InstantOf(mark) - LinkRows.Lag(row));
            if (table.Covers(instant))
                return table.LastMark(instant);
        }

        return mark >= Unbounded ? Never : calendar.LastMark(calendar.InstantOf(mark) - LinkRows.Lag(row));
    }

    private long? Actual(int place, bool atFinish) =>
        (special[place] & TaskTimes.IsSignedOff) != 0 && atFinish ? times.Finishes![place]
        : IsStarted(place) && !atFinish ? times.Starts![place]
        : null;

    private (long Start, long Finish) Special(int place, long floor, long start, long finish)
    {
        var how = special[place];
        if ((how & TaskTimes.IsSignedOff) != 0)
            return (calendar.FirstMark(times.Starts![place]), calendar.FirstMark(times.Finishes![place]));
        var earliest = (how & TaskTimes.IsNotKnown) != 0 ? Never : floor;
        if (times.Earliest is { } limits && limits[place] != long.MinValue)
            earliest = Math.Max(earliest, calendar.FirstMark(limits[place]));
        if ((how & TaskTimes.IsInHand) == 0)
            return Set(Math.Max(start, earliest), finish, 2 * work[place]);
        var started = calendar.FirstMark(times.Starts![place]);
        return (started, Set(Math.Max(started, earliest), finish, 2 * work[place]).Finish);
    }

    /// <summary>The instant of the last finish; what was signed off in closed hours has an instant that no mark stands for.</summary>
    private long End(long mark)
    {
        if (times.Finishes is null)
            return calendar.InstantOf(mark);
        var end = long.MinValue;
        for (var place = 0; place < special.Length; place++)
        {
            var happened = (special[place] & TaskTimes.IsSignedOff) != 0;
            end = Math.Max(end, happened ? times.Finishes[place] : calendar.InstantOf(early[2 * place + 1]));
        }

        return end;
    }

    /// <summary>What has happened bounds nobody any more: take it out of sight of the backward pass.</summary>
    private void HideStarts()
    {
        if (times.Starts is null)
            return;
        for (var place = 0; place < special.Length; place++)
        {
            if (IsStarted(place))
                early[2 * place] = Never;
            if ((special[place] & TaskTimes.IsSignedOff) != 0)
                early[2 * place + 1] = Never;
        }
    }

    private long Cap()
    {
        var cap = into.End is { } end ? calendar.LastMark(end) : Never;
        return times.DateGiven is { } given ? Math.Min(cap, calendar.LastMark(given)) : cap;
    }

    private (long Start, long Finish, long Slack) Special(int place, long cap, long lastWork, (long, long, long) usual)
    {
        var (start, finish, slack) = usual;
        if ((special[place] & TaskTimes.IsSignedOff) != 0)
            return (Never, Never, Never);
        if ((special[place] & TaskTimes.IsInHand) != 0)
            (start, finish, slack) = InHand(place, cap, lastWork);
        if (times.Latest is { } latest && latest[place] != long.MaxValue)
            finish = Math.Min(finish, calendar.LastMark(latest[place]));
        return (start, finish, slack);
    }

    /// <summary>The start of a task in hand is past; only what hangs on its finish still counts.</summary>
    private (long Start, long Finish, long Slack) InHand(int place, long cap, long lastWork)
    {
        var (first, rows) = (network.Behind.First, network.Behind.Row);
        var atFinish = early[2 * place + 1] >> 1;
        var (finish, slack) = (cap, lastWork - atFinish);
        for (var k = first[place]; k < first[place + 1]; k++)
        {
            if ((rows[k] & LinkRows.AtFinish) == 0)
                continue;
            finish = Math.Min(finish, Back(rows[k], late[LinkRows.Other(rows[k])]));
            slack = Math.Min(slack, (Back(rows[k], early[LinkRows.Other(rows[k])]) >> 1) - atFinish);
        }

        return (Never, finish, slack);
    }

    private long Back(long row, long mark) =>
        (row & LinkRows.Elapsed) == 0 ? Before(mark, LinkRows.Lag(row)) : BeforeElapsed(row, mark);
}

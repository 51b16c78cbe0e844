namespace JobBoard.Scheduling;

/// <summary>
/// The two passes. Times are marks of working time (<see cref="OpenTable"/>); the calendar is asked only where a lag counts
/// clock hours and where a task carries an instant of its own. Every link bounds a mark by a monotone function forward and by
/// that function's exact residual backward, so that early is never after late unless a date given asks for it.
/// </summary>
/// <remarks>
/// Work begins at an opening mark (odd) and ends at a closing mark (even) unless it has to wait for an elapsed lag; a task
/// without length takes the mark as it comes. A working lag other than 0 ends at a closing mark: <c>(m | 1) + 2 * lag - 1</c>.
/// Four values per place: early start, early finish, late start, late finish.
/// </remarks>
internal sealed partial class DatePasses(Network network, TaskTimes times, WorkCalendar calendar, long now, Dates into)
{
    /// <summary>Not known, or not bounded. Far above every sum of work and lags that is let in.</summary>
    internal const long Never = 1L << 61;

    /// <summary>Marks from here on are <see cref="Never"/> give or take some work.</summary>
    internal const long Unbounded = 1L << 60;

    private readonly long[] marks = into.Marks;
    private readonly long[] work = times.Work;
    private readonly byte[] special = times.Marks;

    public void Run()
    {
        var floor = calendar.FirstMark(now);
        var end = work.Length == 0 ? floor : Forward(floor);
        into.EndMark = end;
        into.End = end < Unbounded ? End(end) : null;
        HideStarts();
        Backward(Cap(), end < Unbounded ? end >> 1 : Never >> 1);
        if (end >= Unbounded)
            FindReasons();
    }

    private long Forward(long floor)
    {
        var (first, entry, lags) = (network.Before.First, network.Before.Entry, network.Before.Lag);
        var end = long.MinValue;
        for (var place = 0; place < work.Length; place++)
        {
            var (start, finish, twice) = (floor, long.MinValue, 2 * work[place]);
            for (var k = first[place]; k < first[place + 1]; k++)
            {
                var (link, lag) = (entry[k], lags[k]);
                var at = marks[From(link)];
                at = (link & Network.Elapsed) == 0 ? (at | (lag & 1)) + lag : AfterElapsed(link, at, lag);
                var toFinish = (link & Network.ToFinish) != 0;
                finish = Math.Max(finish, toFinish ? at : long.MinValue);
                start = Math.Max(start, toFinish ? at - twice : at);
            }

            if (special[place] != 0)
                (start, finish) = Special(place, floor, start, finish);
            else
                (start, finish) = Set(start, finish, twice);
            marks[4 * place] = start;
            marks[4 * place + 1] = finish;
            end = Math.Max(end, finish);
        }

        return end;
    }

    private static (long Start, long Finish) Set(long start, long finish, long twice)
    {
        var side = twice == 0 ? 0L : 1L;
        start |= side;
        return (start, Math.Max(start - side + twice, finish));
    }

    private static int From(int link) => link >> Network.PlaceBits << 2 | (link & Network.FromFinish);

    private static int To(int link) => link >> Network.PlaceBits << 2 | (link & Network.ToFinish) >> 1;

    private long AfterElapsed(int link, long mark, long lag)
    {
        var place = link >> Network.PlaceBits;
        if (mark >= Unbounded)
            return Never;
        var atFinish = (link & Network.FromFinish) != 0;
        return calendar.FirstMark(Actual(place, atFinish) is { } actual ? actual + lag : calendar.InstantOf(mark) + lag);
    }

    private long? Actual(int place, bool atFinish) =>
        (special[place] & TaskTimes.IsSignedOff) != 0 && atFinish ? times.Finishes![place]
        : (special[place] & (TaskTimes.IsSignedOff | TaskTimes.IsInHand)) != 0 && !atFinish ? times.Starts![place]
        : null;

    /// <summary>A task in hand, signed off, limited or not known.</summary>
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

    /// <summary>What has happened bounds nobody any more: take it out of sight of the backward pass.</summary>
    private void HideStarts()
    {
        if (times.Starts is null)
            return;
        for (var place = 0; place < special.Length; place++)
        {
            if ((special[place] & (TaskTimes.IsInHand | TaskTimes.IsSignedOff)) != 0)
                marks[4 * place] = Never;
            if ((special[place] & TaskTimes.IsSignedOff) != 0)
                marks[4 * place + 1] = Never;
        }
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
            end = Math.Max(end, happened ? times.Finishes[place] : calendar.InstantOf(marks[4 * place + 1]));
        }

        return end;
    }

    private long Cap()
    {
        var cap = into.End is { } end ? calendar.LastMark(end) : Never;
        return times.DateGiven is { } given ? Math.Min(cap, calendar.LastMark(given)) : cap;
    }

    private void Backward(long cap, long lastWork)
    {
        var (first, entry, lags, free) = (network.Behind.First, network.Behind.Entry, network.Behind.Lag, into.Free);
        for (var place = work.Length - 1; place >= 0; place--)
        {
            var (start, finish, twice) = (Never, cap, 2 * work[place]);
            var (atStart, atFinish) = (marks[4 * place] >> 1, marks[4 * place + 1] >> 1);
            var slack = lastWork - atFinish;
            for (var k = first[place]; k < first[place + 1]; k++)
            {
                var (link, lag) = (entry[k], lags[k]);
                var (early, late) = (marks[To(link)], marks[To(link) + 2]);
                if ((link & Network.Elapsed) == 0)
                    (early, late) = ((early | (lag & 1)) - lag - (lag & 1), (late | (lag & 1)) - lag - (lag & 1));
                else
                    (early, late) = (BeforeElapsed(early, lag), BeforeElapsed(late, lag));
                var bySource = (link & Network.FromFinish) != 0;
                finish = Math.Min(finish, bySource ? late : late + twice);
                start = Math.Min(start, bySource ? start : late);
                slack = Math.Min(slack, (early >> 1) - (bySource ? atFinish : atStart));
            }

            if (special[place] != 0)
                (start, finish, slack) = Special(place, cap, lastWork, (start, finish, slack));
            var side = twice == 0 ? 0L : 1L;
            marks[4 * place + 2] = IsStarted(place) ? Never : Math.Min((finish & ~side) + side - twice, start);
            marks[4 * place + 3] = finish;
            free[place] = slack;
        }
    }

    private bool IsStarted(int place) => (special[place] & (TaskTimes.IsInHand | TaskTimes.IsSignedOff)) != 0;

    private long BeforeElapsed(long mark, long lag) =>
        mark >= Unbounded ? Never : calendar.LastMark(calendar.InstantOf(mark) - lag);

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
        var rows = network.Behind;
        var atFinish = marks[4 * place + 1] >> 1;
        var (finish, slack) = (cap, lastWork - atFinish);
        for (var k = rows.First[place]; k < rows.First[place + 1]; k++)
        {
            var (link, lag) = (rows.Entry[k], rows.Lag[k]);
            if ((link & Network.FromFinish) == 0)
                continue;
            var (early, late) = (Back(link, marks[To(link)], lag), Back(link, marks[To(link) + 2], lag));
            finish = Math.Min(finish, late);
            slack = Math.Min(slack, (early >> 1) - atFinish);
        }

        return (Never, finish, slack);
    }

    private long Back(int link, long mark, long lag) =>
        (link & Network.Elapsed) == 0 ? (mark | (lag & 1)) - lag - (lag & 1) : BeforeElapsed(mark, lag);
}

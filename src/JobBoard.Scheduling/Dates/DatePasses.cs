using System.Runtime.CompilerServices;

namespace JobBoard.Scheduling;

/// <summary>
/// The two passes. Times are marks of working time (<see cref="OpenTable"/>); the calendar is asked only where a lag counts
/// clock hours and where a task carries an instant of its own. Every link bounds a mark by a monotone function forward and by
/// that function's exact residual backward, so that early is never after late unless a date given asks for it.
/// </summary>
/// <remarks>
/// Work begins at an opening mark (odd) and ends at a closing mark (even) unless it has to wait for an elapsed lag; a task
/// without length takes the mark as it comes. A working lag other than 0 ends at a closing mark: <c>(m | 1) + 2 * lag - 1</c>.
/// The loops choose by masks and not by branches: which end a link has, and which of two marks is the later, cannot be foretold.
/// Overflow is not checked in them: <see cref="CriticalPath"/> has let in no more time than fits.
/// </remarks>
internal sealed partial class DatePasses(Network network, TaskTimes times, WorkCalendar calendar, long now, Dates into)
{
    /// <summary>Not known, or not bounded. Far above every sum of work and lags that is let in.</summary>
    internal const long Never = 1L << 60;

    /// <summary>Marks from here on are <see cref="Never"/> give or take some work.</summary>
    internal const long Unbounded = 1L << 59;

    private readonly long[] early = into.Early;
    private readonly long[] late = into.Late;
    private readonly long[] work = times.Work;
    private readonly byte[] special = times.Marks;
    private readonly bool happened = times.Starts is not null;
    private OpenTable? table;

    public void Run()
    {
        var floor = calendar.FirstMark(now);
        table = calendar.Table;
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
        unchecked
        {
            var (first, rows) = (network.Before.First, network.Before.Row);
            var end = -Never;
            for (int place = 0, k = 0; place < work.Length; place++)
            {
                var (start, finish, twice) = (floor, -Never, 2 * work[place]);
                for (var last = first[place + 1]; k < last; k++)
                {
                    var row = rows[k];
                    var at = early[LinkRows.Other(row)];
                    at = ((int)row & LinkRows.Elapsed) == 0 ? After(at, LinkRows.Lag(row)) : AfterElapsed(row, at);
                    var toFinish = -(row >> 1 & 1);
                    finish = Later(finish, (at & toFinish) | (-Never & ~toFinish));
                    start = Later(start, at - (twice & toFinish));
                }

                (start, finish) = special[place] == 0 ? Set(start, finish, twice) : Special(place, floor, start, finish);
                early[2 * place] = start;
                early[2 * place + 1] = finish;
                end = Later(end, finish);
            }

            return end;
        }
    }

    private void Backward(long cap, long lastWork)
    {
        unchecked
        {
            var (first, rows, free) = (network.Behind.First, network.Behind.Row, into.Free);
            for (int place = work.Length - 1, k = rows.Length - 1; place >= 0; place--)
            {
                var (start, finish, twice) = (Never, cap, 2 * work[place]);
                var (atStart, atFinish) = (early[2 * place] >> 1, early[2 * place + 1] >> 1);
                var slack = lastWork - atFinish;
                for (var last = first[place]; k >= last; k--)
                {
                    var row = rows[k];
                    var (soon, latest) = (early[LinkRows.Other(row)], late[LinkRows.Other(row)]);
                    (soon, latest) = ((int)row & LinkRows.Elapsed) == 0
                        ? (Before(soon, LinkRows.Lag(row)), Before(latest, LinkRows.Lag(row)))
                        : (BeforeElapsed(row, soon), BeforeElapsed(row, latest));
                    var fromFinish = -(row >> 1 & 1);
                    finish = Sooner(finish, latest + (twice & ~fromFinish));
                    start = Sooner(start, latest | (Never & fromFinish));
                    slack = Sooner(slack, (soon >> 1) - (atFinish & fromFinish) - (atStart & ~fromFinish));
                }

                if (special[place] != 0)
                    (start, finish, slack) = Special(place, cap, lastWork, (start, finish, slack));
                late[2 * place] = IsStarted(place) ? Never : LateStart(finish, start, twice);
                late[2 * place + 1] = finish;
                free[place] = slack;
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static long After(long mark, long lag) => unchecked((mark | (lag & 1)) + lag);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static long Before(long mark, long lag) => unchecked((mark | (lag & 1)) - lag - (lag & 1));

    /// <summary>The greater, without a branch.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static long Later(long one, long other)
    {
        var ahead = unchecked(one - other);
        return unchecked(one - (ahead & (ahead >> 63)));
    }

    /// <summary>The lesser, without a branch.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static long Sooner(long one, long other)
    {
        var ahead = unchecked(one - other);
        return unchecked(other + (ahead & (ahead >> 63)));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (long Start, long Finish) Set(long start, long finish, long twice)
    {
        var side = unchecked((-twice >> 63) & 1);
        start |= side;
        return (start, Later(unchecked(start - side + twice), finish));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static long LateStart(long finish, long start, long twice)
    {
        var side = unchecked((-twice >> 63) & 1);
        return Sooner(unchecked((finish & ~side) + side - twice), start);
    }

    private bool IsStarted(int place) => (special[place] & (TaskTimes.IsInHand | TaskTimes.IsSignedOff)) != 0;
}

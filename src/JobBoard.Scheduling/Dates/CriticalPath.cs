namespace JobBoard.Scheduling;

/// <summary>
/// The critical path method over all four link kinds, leads, working and elapsed lags, on a shop's calendar, from now on.
/// Answers "earliest possible, people and places aside".
/// </summary>
/// <remarks>
/// Work goes on without a break but for closed hours. Precedence diagramming as in the standard texts: a link bounds the start
/// (finish-start, start-start) or the finish (finish-finish, start-finish) of the task that waits. Early and late times are
/// computed anew for every task each time; only the order of the tasks is kept in the <see cref="Network"/>.
/// </remarks>
public static class CriticalPath
{
    private const long MostTime = 1L << 57;

    /// <summary>Works out all dates.</summary>
    /// <param name="times">What is known of the tasks of a network.</param>
    /// <param name="calendar">The shop's hours.</param>
    /// <param name="now">Nothing that is not yet started or left over comes before this instant (Unix seconds; units without a calendar).</param>
    /// <param name="reuse">Dates of the same network that are no longer needed, to be written over.</param>
    /// <exception cref="OverflowException">All work and lags together run out of the range of dates.</exception>
    public static Dates Compute(TaskTimes times, WorkCalendar calendar, long now, Dates? reuse = null)
    {
        ArgumentNullException.ThrowIfNull(times);
        ArgumentNullException.ThrowIfNull(calendar);
        if (times.TotalWork + times.Network.TotalLag > MostTime)
            throw new OverflowException("All work and lags together run out of the range of dates.");
        var dates = reuse?.Prepared(times, calendar) ?? new Dates(times, calendar);
        new DatePasses(times.Network, times, calendar, now, dates).Run();
        return dates;
    }
}

namespace JobBoard.Scheduling;

/// <summary>The dates of all tasks of a network, as <see cref="CriticalPath"/> worked them out.</summary>
public sealed class Dates
{
    private readonly Network network;
    private TaskTimes times;
    private WorkCalendar calendar;

    internal Dates(TaskTimes times, WorkCalendar calendar)
    {
        (network, this.times, this.calendar) = (times.Network, times, calendar);
        Early = new long[2 * network.TaskCount];
        Late = new long[2 * network.TaskCount];
        Free = new long[network.TaskCount];
    }

    /// <summary>How many tasks there are.</summary>
    public int Count => network.TaskCount;

    /// <summary>The earliest possible end of everything, now if there are no tasks; null if it rests on something that is not known.</summary>
    public long? End { get; internal set; }

    /// <summary>The dates of a task.</summary>
    public TaskDates this[int task] => DatesAt(network.PlaceOf[task]);

    internal long EndMark { get; set; }

    /// <summary>Start and finish by place, as marks of working time; <see cref="DatePasses.Never"/> where it has happened.</summary>
    internal long[] Early { get; }

    internal long[] Late { get; }

    internal long[] Free { get; }

    internal int[]? Reasons { get; set; }

    /// <summary>
    /// The tasks that set the date, first to last: the task that ends last, and before each the one it had to wait for. Where
    /// several would do, the one with least total float, then the lowest number. Ends where a task waited for nothing but now, a part or
    /// its own start. A task of the chain may have slack where an elapsed lag runs into closed hours (the night gives it), or
    /// where it is in hand and the next waits on its start alone.
    /// </summary>
    /// <returns>Empty if the end is not known.</returns>
    public IReadOnlyList<ChainStep> Chain() => EndMark < DatePasses.Unbounded ? new ChainSearch(network, times, calendar, this).Find() : [];

    /// <summary>The callers' numbers of everything a task's dates rest on, in order; empty if they are known.</summary>
    public IReadOnlyList<int> RestsOn(int task)
    {
        var found = new SortedSet<int>();
        var start = network.PlaceOf[task];
        if (Reasons is null || Reasons[start] < 0)
            return [];
        var seen = new HashSet<int> { start };
        var open = new Stack<int>(seen);
        while (open.TryPop(out var place))
        {
            if ((times.Marks[place] & TaskTimes.IsNotKnown) != 0)
                found.Add(times.Reasons![place]);
            foreach (var before in NotKnownBefore(place).Where(seen.Add))
                open.Push(before);
        }

        return [.. found];
    }

    internal Dates Prepared(TaskTimes anew, WorkCalendar hours)
    {
        if (anew.Network != network)
            throw new ArgumentException("Dates can only be written over by those of the same network.", nameof(anew));
        (times, calendar, Reasons) = (anew, hours, null);
        return this;
    }

    /// <summary>Shop hours between early and late finish.</summary>
    internal long TotalFloatAt(int place) => (Late[2 * place + 1] >> 1) - (Early[2 * place + 1] >> 1);

    private IEnumerable<int> NotKnownBefore(int place)
    {
        var rows = network.Before;
        for (var k = rows.First[place]; k < rows.First[place + 1]; k++)
        {
            if (Reasons![LinkRows.Place(rows.Row[k])] >= 0)
                yield return LinkRows.Place(rows.Row[k]);
        }
    }

    private TaskDates DatesAt(int place)
    {
        var how = times.Marks[place];
        if ((how & TaskTimes.IsSignedOff) != 0)
            return Happened(times.Starts![place], times.Finishes![place]);
        var started = (how & TaskTimes.IsInHand) != 0 ? times.Starts![place] : (long?)null;
        var restsOn = Reasons is { } reasons && reasons[place] >= 0 ? reasons[place] : (int?)null;
        var (finish, late) = (Early[2 * place + 1], Late[2 * place + 1]);
        var floats = restsOn is null && late < DatePasses.Unbounded;
        return new TaskDates
        {
            EarlyStart = started ?? Instant(Early[2 * place]),
            EarlyFinish = Instant(finish),
            LateStart = started ?? Instant(Late[2 * place]),
            LateFinish = Instant(times.Work[place] > 0 ? late & ~1L | finish & 1 : late),
            TotalFloat = floats ? TotalFloatAt(place) : null,
            FreeFloat = restsOn is null && Free[place] < DatePasses.Unbounded >> 2 ? Free[place] : null,
            SetsTheDate = floats && TotalFloatAt(place) <= 0,
            MissesDateGiven = floats && finish > late,
            RestsOn = restsOn,
        };
    }

    private static TaskDates Happened(long start, long finish) =>
        new() { EarlyStart = start, EarlyFinish = finish, LateStart = start, LateFinish = finish };

    private long? Instant(long mark) => mark < DatePasses.Unbounded ? calendar.InstantOf(mark) : null;
}

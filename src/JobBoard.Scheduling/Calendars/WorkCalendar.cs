namespace JobBoard.Scheduling;

/// <summary>
/// A shop's hours: weekly openings in local time with an IANA zone, closed dates and extra dates. Answers how much working time
/// lies between two instants, and where a given amount of it leads. Safe to share between threads.
/// </summary>
/// <remarks>
/// Instants are Unix seconds (<see cref="long"/>) or <see cref="DateTimeOffset"/>, amounts of work are seconds of opening.
/// An opening or closing inside an hour skipped by daylight saving moves forward to the end of the skip; of an ambiguous hour an
/// opening takes the earlier instant, a closing the later. The table of stretches grows as later or earlier instants are asked for.
/// </remarks>
public sealed partial class WorkCalendar
{
    private const int FirstDaysBefore = 40;
    private const int FirstDaysAfter = 400;

    private readonly LocalClock? clock;
    private readonly OpenSpan[][] week = new OpenSpan[7][];
    private readonly HashSet<DateOnly> closed = [];
    private readonly Dictionary<DateOnly, OpenSpan[]> extra = [];
    private readonly Lock growing = new();
    private volatile OpenTable? table;
    private long origin;

    /// <param name="zone">The shop's zone, by its IANA name.</param>
    /// <param name="hours">Weekly openings; at least one. Stretches that meet or overlap are joined.</param>
    /// <param name="closedDates">Dates on which no stretch begins.</param>
    /// <param name="extraDates">Dates with hours of their own in place of the weekly ones.</param>
    /// <exception cref="ArgumentException">There is no weekly opening, a stretch is out of range, or a date is both closed and extra.</exception>
    public WorkCalendar(
        TimeZoneInfo zone,
        IEnumerable<WeeklyOpening> hours,
        IEnumerable<DateOnly>? closedDates = null,
        IEnumerable<DateOpening>? extraDates = null)
    {
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentNullException.ThrowIfNull(hours);
        clock = new LocalClock(zone);
        var weekly = hours.ToLookup(h => h.Day, h => Checked(h.Span));
        if (weekly.Count == 0)
            throw new ArgumentException("A calendar needs at least one weekly opening.", nameof(hours));
        for (var day = 0; day < 7; day++)
            week[day] = [.. weekly[(DayOfWeek)day]];
        closed.UnionWith(closedDates ?? []);
        foreach (var date in (extraDates ?? []).GroupBy(e => e.Date, e => Checked(e.Span)))
            extra.Add(date.Key, [.. date]);
        if (closed.Overlaps(extra.Keys))
            throw new ArgumentException("A date is both closed and extra: keep one of the two.", nameof(extraDates));
    }

    private WorkCalendar()
    {
    }

    /// <summary>A calendar that never closes: working time is plain time. For networks counted in bare units.</summary>
    public static WorkCalendar NeverCloses { get; } = new();

    /// <summary>The shop's zone; UTC for <see cref="NeverCloses"/>.</summary>
    public TimeZoneInfo Zone => clock?.Zone ?? TimeZoneInfo.Utc;

    /// <summary>Seconds of opening from <paramref name="from"/> to <paramref name="to"/>; negative if it is the earlier.</summary>
    public long WorkingBetween(long from, long to) => (FirstMark(to) >> 1) - (FirstMark(from) >> 1);

    /// <inheritdoc cref="WorkingBetween(long, long)"/>
    public TimeSpan WorkingBetween(DateTimeOffset from, DateTimeOffset to) =>
        TimeSpan.FromSeconds(WorkingBetween(from.ToUnixTimeSeconds(), to.ToUnixTimeSeconds()));

    /// <summary>
    /// Forward: the earliest instant at which <paramref name="work"/> seconds of opening have passed since
    /// <paramref name="instant"/>. Backward (negative): the latest instant from which they pass until <paramref name="instant"/>.
    /// Nothing to add gives the instant itself, even in closed hours.
    /// </summary>
    public long AddWorking(long instant, long work) => work switch
    {
        0 => instant,
        > 0 => InstantOf((FirstMark(instant) & ~1L) + 2 * work),
        _ => InstantOf((LastMark(instant) | 1) + 2 * work),
    };

    /// <inheritdoc cref="AddWorking(long, long)"/>
    public DateTimeOffset AddWorking(DateTimeOffset instant, TimeSpan work) =>
        Local(AddWorking(instant.ToUnixTimeSeconds(), (long)work.TotalSeconds));

    /// <summary>Whether the shop is open: from the opening on, no longer at the closing.</summary>
    public bool IsOpen(long instant) => NextOpen(instant) == instant;

    /// <inheritdoc cref="IsOpen(long)"/>
    public bool IsOpen(DateTimeOffset instant) => IsOpen(instant.ToUnixTimeSeconds());

    /// <summary>The first instant, not before this one, from which work goes on: the instant itself while the shop is open.</summary>
    public long NextOpen(long instant) => InstantOf(FirstMark(instant) | 1);

    /// <inheritdoc cref="NextOpen(long)"/>
    public DateTimeOffset NextOpen(DateTimeOffset instant) => Local(NextOpen(instant.ToUnixTimeSeconds()));

    /// <summary>The last instant, not after this one, up to which work went on: the instant itself while the shop is open.</summary>
    public long PreviousClose(long instant) => InstantOf(LastMark(instant) & ~1L);

    /// <inheritdoc cref="PreviousClose(long)"/>
    public DateTimeOffset PreviousClose(DateTimeOffset instant) => Local(PreviousClose(instant.ToUnixTimeSeconds()));

    /// <summary>The instant in the shop's zone, to be read by a person.</summary>
    public DateTimeOffset Local(long instant) => TimeZoneInfo.ConvertTime(DateTimeOffset.FromUnixTimeSeconds(instant), Zone);

    private static OpenSpan Checked(OpenSpan span) => span.IsValid
        ? span
        : throw new ArgumentException($"An opening from {span.From} to {span.To} is out of range: it begins within its day and lasts at most 24 hours.");
}

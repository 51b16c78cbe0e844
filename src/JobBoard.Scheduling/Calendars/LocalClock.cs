namespace JobBoard.Scheduling;

/// <summary>
/// Turns a local date and time of day into an instant (Unix seconds). A time inside a skipped hour moves forward to the first
/// instant after the skip; of an ambiguous hour an opening takes the earlier instant, a closing the later.
/// </summary>
internal sealed class LocalClock(TimeZoneInfo zone)
{
    public TimeZoneInfo Zone { get; } = zone;

    public long Opening(DateOnly date, TimeSpan time) => Instant(date, time, earlier: true);

    public long Closing(DateOnly date, TimeSpan time) => Instant(date, time, earlier: false);

    /// <summary>
    /// Per date the offset from UTC if it is the same all around that date, so that no clock changes can touch its hours; nothing
    /// else. Two changes that undo one another within three days are not known to have happened anywhere.
    /// </summary>
    public TimeSpan?[] SteadyOffsets(DateOnly from, DateOnly to)
    {
        var steady = new TimeSpan?[to.DayNumber - from.DayNumber + 1];
        var offsets = new TimeSpan[steady.Length + 4];
        for (var day = 0; day < offsets.Length; day++)
            offsets[day] = Zone.GetUtcOffset(new DateTimeOffset(from.AddDays(day - 1), TimeOnly.MinValue, TimeSpan.Zero));
        for (var day = 0; day < steady.Length; day++)
            steady[day] = offsets[day] == offsets[day + 4] ? offsets[day] : null;
        return steady;
    }

    /// <summary>The instant of a local time whose offset is known.</summary>
    public static long At(DateOnly date, TimeSpan time, TimeSpan offset) =>
        new DateTimeOffset(date, TimeOnly.MinValue, TimeSpan.Zero).ToUnixTimeSeconds() + (long)(time - offset).TotalSeconds;

    public DateOnly DateOf(long instant)
    {
        var utc = DateTimeOffset.FromUnixTimeSeconds(instant);
        return DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(utc, Zone).DateTime);
    }

    private long Instant(DateOnly date, TimeSpan time, bool earlier)
    {
        var local = date.ToDateTime(TimeOnly.MinValue) + time;
        if (Zone.IsInvalidTime(local))
            return EndOfSkip(local);
        if (!Zone.IsAmbiguousTime(local))
            return Unix(local, Zone.GetUtcOffset(local));
        var offsets = Zone.GetAmbiguousTimeOffsets(local);
        return Unix(local, earlier ? offsets.Max() : offsets.Min());
    }

    /// <summary>The first instant whose local time is not before <paramref name="local"/>; local time only jumps forward here.</summary>
    private long EndOfSkip(DateTime local)
    {
        var low = Unix(local, Zone.GetUtcOffset(local.AddDays(1)));
        var high = Unix(local, Zone.GetUtcOffset(local.AddDays(-1)));
        while (low < high)
        {
            var middle = low + (high - low) / 2;
            if (LocalAt(middle) >= local)
                high = middle;
            else
                low = middle + 1;
        }

        return low;
    }

    private DateTime LocalAt(long instant) =>
        TimeZoneInfo.ConvertTime(DateTimeOffset.FromUnixTimeSeconds(instant), Zone).DateTime;

    private static long Unix(DateTime local, TimeSpan offset) => new DateTimeOffset(local, offset).ToUnixTimeSeconds();
}

using JobBoard.Domain.People;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>Shop hours, counted day by day. Histories keep clear of the days on which clocks change.</summary>
public sealed class Calendar(string zone, IReadOnlyList<OpenHours> hours, IReadOnlyCollection<DateOnly> closed)
{
    private readonly TimeZoneInfo _zone = TimeZoneInfo.FindSystemTimeZoneById(zone);

    /// <summary>The instant at which so many open minutes have passed since <paramref name="from"/>.</summary>
    public DateTimeOffset After(DateTimeOffset from, int minutes)
    {
        if (minutes <= 0) return from;
        var left = TimeSpan.FromMinutes(minutes);
        foreach (var (opens, closes) in Stretches(from, from.AddDays(60)))
        {
            if (closes - opens >= left) return opens + left;
            left -= closes - opens;
        }
        return DateTimeOffset.MaxValue;
    }

    /// <summary>Open time between two instants.</summary>
    public TimeSpan Between(DateTimeOffset from, DateTimeOffset to) =>
        Stretches(from, to).Aggregate(TimeSpan.Zero, (sum, s) => sum + (s.Closes - s.Opens));

    private IEnumerable<(DateTimeOffset Opens, DateTimeOffset Closes)> Stretches(DateTimeOffset from, DateTimeOffset to)
    {
        var day = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(from, _zone).DateTime);
        var last = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(to, _zone).DateTime);
        for (; day <= last; day = day.AddDays(1))
        {
            if (closed.Contains(day)) continue;
            foreach (var open in hours.Where(h => h.Day == day.DayOfWeek).OrderBy(h => h.From))
            {
                var (opens, closes) = (Instant(day, open.From), Instant(day, open.To));
                if (opens < from) opens = from;
                if (closes > to) closes = to;
                if (opens < closes) yield return (opens, closes);
            }
        }
    }

    private DateTimeOffset Instant(DateOnly day, TimeOnly time)
    {
        var local = day.ToDateTime(time, DateTimeKind.Unspecified);
        return new DateTimeOffset(local, _zone.GetUtcOffset(local)).ToUniversalTime();
    }
}

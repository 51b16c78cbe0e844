using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.People;

namespace JobBoard.Domain.Places;

/// <summary>
/// When the shop is open, in its local time with an IANA zone. An opening inside a skipped hour moves forward; of an ambiguous hour
/// an opening takes the earlier instant and a closing the later. A shop without hours counts as always open.
/// </summary>
public sealed class ShopHours
{
    private readonly TimeZoneInfo _zone;
    private readonly ILookup<DayOfWeek, OpenHours> _hours;
    private readonly ImmutableHashSet<DateOnly> _closed;
    private readonly bool _always;

    /// <exception cref="TimeZoneNotFoundException">The zone is unknown.</exception>
    public ShopHours(string zone, ImmutableArray<OpenHours> hours, ImmutableArray<DateOnly> closed)
    {
        _zone = TimeZoneInfo.FindSystemTimeZoneById(zone);
        _hours = hours.ToLookup(h => h.Day);
        _closed = [.. closed];
        _always = hours.IsEmpty;
    }

    /// <summary>The hours of a shop.</summary>
    public static ShopHours Of(ShopState shop) => new(shop.Zone, shop.Hours, shop.Closed);

    /// <summary>The shop's day at an instant.</summary>
    public DateOnly DayOf(DateTimeOffset at) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, _zone).Date);

    /// <summary>Open stretches that end after <paramref name="from"/>, in order, for at most two years.</summary>
    public IEnumerable<(DateTimeOffset From, DateTimeOffset To)> OpenFrom(DateTimeOffset from)
    {
        var day = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(from, _zone).Date).AddDays(-1);
        for (var i = 0; i < 732; i++, day = day.AddDays(1))
        {
            if (_closed.Contains(day)) continue;
            foreach (var hours in _hours[day.DayOfWeek].OrderBy(h => h.From))
            {
                var (opens, closes) = (Instant(day.ToDateTime(hours.From), opening: true), Instant(day.ToDateTime(hours.To), opening: false));
                if (closes > from && closes > opens) yield return (opens, closes);
            }
        }
    }

    /// <summary>Shop minutes between two instants, rounded down; 0 when not in order.</summary>
    public int WorkingMinutes(DateTimeOffset from, DateTimeOffset to)
    {
        if (to <= from) return 0;
        if (_always) return (int)(to - from).TotalMinutes;
        var total = TimeSpan.Zero;
        foreach (var (opens, closes) in OpenFrom(from))
        {
            if (opens >= to) break;
            total += (closes < to ? closes : to) - (opens > from ? opens : from);
        }

        return (int)total.TotalMinutes;
    }

    /// <summary>The instant at which so many shop minutes have run from <paramref name="from"/>.</summary>
    public DateTimeOffset AddWorking(DateTimeOffset from, int minutes)
    {
        if (_always) return from.AddMinutes(minutes);
        var left = TimeSpan.FromMinutes(minutes);
        if (left <= TimeSpan.Zero) return from;
        foreach (var (opens, closes) in OpenFrom(from))
        {
            var start = opens > from ? opens : from;
            if (closes - start >= left) return start + left;
            left -= closes - start;
        }

        return DateTimeOffset.MaxValue;
    }

    /// <summary>The next instant after <paramref name="from"/> at which the shop opens or closes, or nothing.</summary>
    public DateTimeOffset? NextEdge(DateTimeOffset from)
    {
        if (_always) return null;
        foreach (var (opens, closes) in OpenFrom(from)) return opens > from ? opens : closes;
        return null;
    }

    private DateTimeOffset Instant(DateTime local, bool opening)
    {
        if (_zone.IsInvalidTime(local))
        {
            while (_zone.IsInvalidTime(local)) local = local.AddMinutes(1);
        }

        if (!_zone.IsAmbiguousTime(local)) return new DateTimeOffset(local, _zone.GetUtcOffset(local)).ToUniversalTime();
        var offsets = _zone.GetAmbiguousTimeOffsets(local);
        return new DateTimeOffset(local, opening ? offsets.Max() : offsets.Min()).ToUniversalTime();
    }
}

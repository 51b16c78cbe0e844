using JobBoard.Domain.Places;

namespace JobBoard.Web.Pages.Cars.WhenReady;

/// <summary>Instants as marks of working time: twice the shop minutes since the first opening, plus one from an opening on. Nights, weekends and breaks have no length.</summary>
public sealed class WorkTime
{
    private readonly List<(DateTimeOffset From, DateTimeOffset To, long Minutes)> _open = [];
    private readonly DateTimeOffset _origin;

    /// <summary>From the day of an instant on, to at least another.</summary>
    public WorkTime(ShopHours hours, DateTimeOffset from, DateTimeOffset to)
    {
        _origin = from;
        var minutes = 0L;
        foreach (var (opens, closes) in hours.OpenFrom(from))
        {
            _open.Add((opens, closes, minutes));
            minutes += (long)(closes - opens).TotalMinutes;
            if (opens > to) break;
        }
    }

    /// <summary>Openings, in order.</summary>
    public IEnumerable<DateTimeOffset> Openings => _open.Select(o => o.From);

    /// <summary>The mark of an instant.</summary>
    public long Of(DateTimeOffset at)
    {
        if (_open.Count == 0) return 2 * (long)(at - _origin).TotalMinutes;
        var found = _open.FindLastIndex(o => o.From <= at);
        if (found < 0) return 0;
        var (from, to, minutes) = _open[found];
        return at > to ? 2 * (minutes + (long)(to - from).TotalMinutes) : (2 * (minutes + (long)(at - from).TotalMinutes)) + (at == from ? 1 : 0);
    }
}

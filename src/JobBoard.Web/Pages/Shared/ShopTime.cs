using System.Globalization;

namespace JobBoard.Web.Pages.Shared;

/// <summary>Instants and spans in the shop's words. Instants come with the shop's offset and are shown in it.</summary>
public static class ShopTime
{
    private static readonly CultureInfo Culture = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>14:07.</summary>
    public static string Clock(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);

    /// <summary>Mon 7 Dec.</summary>
    public static string Day(DateTimeOffset at) => at.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    /// <summary>Mon 7 Dec 14:07.</summary>
    public static string DayClock(DateTimeOffset at) => $"{Day(at)} {Clock(at)}";

    /// <summary>14:07 on the day of <paramref name="now"/>, else Mon 7 Dec 14:07.</summary>
    public static string Since(DateTimeOffset at, DateTimeOffset now) => at.Date == now.Date ? Clock(at) : DayClock(at);

    /// <summary>For the datetime attribute: ISO 8601 with offset, to the second.</summary>
    public static string Machine(DateTimeOffset at) => at.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture);

    /// <summary>15 min, 1 h, 1 h 10. Negative spans count as none.</summary>
    public static string Span(TimeSpan span)
    {
        var minutes = Math.Max(0, (int)Math.Round(span.TotalMinutes));
        var (hours, rest) = (minutes / 60, minutes % 60);
        return (hours, rest) switch
        {
            (0, _) => string.Create(Culture, $"{rest} min"),
            (_, 0) => string.Create(Culture, $"{hours} h"),
            _ => string.Create(Culture, $"{hours} h {rest:00}"),
        };
    }

    /// <summary>Two names and the last with "and": Inga, Sol and Mirek.</summary>
    public static string Names(IReadOnlyList<string> names) => names.Count switch
    {
        0 => string.Empty,
        1 => names[0],
        _ => $"{string.Join(", ", names.Take(names.Count - 1))} and {names[^1]}",
    };
}

using System.Globalization;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Places;
using JobBoard.Web.Posting;
using JobBoard.Web.Verbs;

namespace JobBoard.Web.Paper;

/// <summary>When the evening's sheets are due: at a time of day given, else when the shop closes for the day.</summary>
/// <param name="At">The shop's local time, or nothing.</param>
public sealed record PaperTimes(TimeOnly? At)
{
    /// <summary>For a shop without hours that was given no time.</summary>
    public static TimeOnly Usual { get; } = new(18, 0);

    private const int DaysBack = 21;

    /// <summary>Reads HH:MM.</summary>
    /// <exception cref="CommandLineException">It is none.</exception>
    public static PaperTimes Read(string? text) => text is null
        ? new((TimeOnly?)null)
        : TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var at)
            ? new(at)
            : throw new CommandLineException($"--paper-at {text}: write the time of day as HH:MM, such as 17:30.");

    /// <summary>The last evening whose sheets are due by now, or nothing in the last three weeks.</summary>
    public DateOnly? LastDue(ShopState shop, DateTimeOffset now)
    {
        var local = TimeZoneInfo.ConvertTime(now, ShopZone.Of(shop));
        if (At is { } at) return Day(local, at);
        if (shop.Hours.IsEmpty) return Day(local, Usual);
        var ends = ShopHours.Of(shop).OpenFrom(now.AddDays(-DaysBack)).TakeWhile(o => o.From <= now)
            .GroupBy(o => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(o.From, ShopZone.Of(shop)).Date))
            .Select(g => (Day: g.Key, Ends: DayEnd(shop, g.Key, g.Max(o => o.To)))).Where(d => d.Ends <= now).ToArray();
        return ends.Length == 0 ? null : ends[^1].Day;
    }

    /// <summary>In words, for the page that says where the sheets are.</summary>
    public string Words(ShopState shop) => At is { } at
        ? $"at {at.ToString("HH:mm", CultureInfo.InvariantCulture)}"
        : shop.Hours.IsEmpty ? $"at {Usual.ToString("HH:mm", CultureInfo.InvariantCulture)}" : "when the shop closes for the day";

    // An opening of the same day that is still to come is its later end.
    private static DateTimeOffset DayEnd(ShopState shop, DateOnly day, DateTimeOffset known) =>
        ShopHours.Of(shop).OpenFrom(known).TakeWhile(o => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(o.From, ShopZone.Of(shop)).Date) == day).Select(o => o.To).DefaultIfEmpty(known).Max();

    private static DateOnly Day(DateTimeOffset local, TimeOnly at)
    {
        var today = DateOnly.FromDateTime(local.Date);
        return TimeOnly.FromTimeSpan(local.TimeOfDay) >= at ? today : today.AddDays(-1);
    }
}

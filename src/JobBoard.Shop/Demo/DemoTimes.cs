using System.Globalization;
using System.Text.RegularExpressions;

namespace JobBoard.Shop.Demo;

/// <summary>
/// Times in seed files, read against the demo's now: <c>-3d 08:10</c> is ten past eight three days before its today,
/// <c>-45m</c> and <c>-2h</c> lie so long before now, and <c>2026-11-24T08:10</c> is itself. All are the shop's time.
/// </summary>
public sealed partial class DemoTimes(DateTimeOffset now, TimeZoneInfo zone)
{
    /// <summary>The demo's now.</summary>
    public DateTimeOffset Now => now;

    /// <summary>Reads one time.</summary>
    /// <exception cref="FormatException">It is none of the three.</exception>
    public DateTimeOffset Read(string text)
    {
        if (DateTime.TryParseExact(text, "yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var local)) return At(local);
        if (Day().Match(text) is { Success: true } day) return At(Today.AddDays(Number(day, 1)) + Clock(day.Groups[2].Value));
        if (Ago().Match(text) is { Success: true } ago) return now + (ago.Groups[2].Value == "h" ? TimeSpan.FromHours(Number(ago, 1)) : TimeSpan.FromMinutes(Number(ago, 1)));
        throw new FormatException($"'{text}' is not a time. Write it as \"-3d 08:10\", \"-45m\", \"-2h\" or \"2026-11-24T08:10\".");
    }

    private DateTime Today => TimeZoneInfo.ConvertTime(now, zone).Date;

    private DateTimeOffset At(DateTime local) => new DateTimeOffset(local, zone.GetUtcOffset(local)).ToUniversalTime();

    private static int Number(Match match, int group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    private static TimeSpan Clock(string text) => TimeSpan.ParseExact(text, "hh\\:mm", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^([+-]?\d{1,4})d (\d\d:\d\d)$")]
    private static partial Regex Day();

    [GeneratedRegex(@"^([+-]?\d{1,5})(m|h)$")]
    private static partial Regex Ago();
}

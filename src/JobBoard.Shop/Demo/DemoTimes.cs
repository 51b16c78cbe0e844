using System.Globalization;
using System.Text.RegularExpressions;

namespace JobBoard.Shop.Demo;

/// <summary>
/// Times in seed files, in the shop's zone, read against the demo's now: <c>-3d 08:10</c> is ten past eight three days before
/// its today, <c>-3wd 08:10</c> the same three working days (Monday to Friday) before, <c>-45m</c> and <c>-2h</c> lie so long
/// before now, and <c>2026-11-24T08:10</c> is itself.
/// </summary>
public sealed partial class DemoTimes(DateTimeOffset now, TimeZoneInfo zone)
{
    /// <summary>The demo's now.</summary>
    public DateTimeOffset Now => now;

    /// <summary>Reads one time.</summary>
    /// <exception cref="FormatException">It is none of these.</exception>
    public DateTimeOffset Read(string text)
    {
        if (DateTime.TryParseExact(text, "yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var local)) return At(local);
        if (Day().Match(text) is { Success: true } day) return At(DayAway(Number(day, 1), day.Groups[2].Value == "wd") + Clock(day.Groups[3].Value));
        if (Ago().Match(text) is { Success: true } ago) return now + (ago.Groups[2].Value == "h" ? TimeSpan.FromHours(Number(ago, 1)) : TimeSpan.FromMinutes(Number(ago, 1)));
        throw new FormatException($"'{text}' is not a time. Write it as \"-3d 08:10\", \"-3wd 08:10\", \"-45m\", \"-2h\" or \"2026-11-24T08:10\".");
    }

    /// <summary>Reads a day of the shop: <c>+3wd</c> is three working days after the demo's today.</summary>
    /// <exception cref="FormatException">It is none.</exception>
    public DateOnly ReadDay(string text) => Away().Match(text) is { Success: true } away
        ? DateOnly.FromDateTime(DayAway(Number(away, 1), away.Groups[2].Value == "wd"))
        : throw new FormatException($"'{text}' is not a day. Write it as \"+3d\" or \"-2wd\".");

    private DateTime DayAway(int days, bool working)
    {
        var day = TimeZoneInfo.ConvertTime(now, zone).Date;
        if (!working) return day.AddDays(days);
        for (var left = Math.Abs(days); left > 0;)
        {
            day = day.AddDays(Math.Sign(days));
            if (day.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday)) left--;
        }

        return day;
    }

    private DateTimeOffset At(DateTime local) => new DateTimeOffset(local, zone.GetUtcOffset(local)).ToUniversalTime();

    private static int Number(Match match, int group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    private static TimeSpan Clock(string text) => TimeSpan.ParseExact(text, "hh\\:mm", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^([+-]?\d{1,4})(d|wd) (\d\d:\d\d)$")]
    private static partial Regex Day();

    [GeneratedRegex(@"^([+-]?\d{1,4})(d|wd)$")]
    private static partial Regex Away();

    [GeneratedRegex(@"^([+-]?\d{1,5})(m|h)$")]
    private static partial Regex Ago();
}

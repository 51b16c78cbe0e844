using System.Globalization;
using System.Text.RegularExpressions;

namespace JobBoard.Shop.Plans;

/// <summary>Amounts of time as people write them: 90, 1.5 h, 1,5 h, 1 h 30, 1:30, 2 days.</summary>
public static partial class WorkAmount
{
    /// <summary>Whole minutes; nothing where it cannot be read or is not whole after rounding to the nearest minute.</summary>
    /// <param name="text">The amount.</param>
    /// <param name="unit">The unit of a bare number; nothing or empty for minutes.</param>
    /// <param name="dayMinutes">Shop minutes in a day.</param>
    public static int? Minutes(string text, string? unit, int dayMinutes)
    {
        if (Clock().Match(text) is { Success: true } clock) return (Whole(clock, 1) * 60) + Whole(clock, 2);
        if (HoursAndMinutes().Match(text) is { Success: true } both) return (Whole(both, 1) * 60) + Whole(both, 2);
        var match = Number().Match(text);
        if (!match.Success || !decimal.TryParse(match.Groups[1].ValueSpan.ToString().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)) return null;
        var factor = Factor(match.Groups[2].Value is { Length: > 0 } own ? own : unit ?? "", dayMinutes);
        return factor is null || number * factor.Value > 1_000_000 ? null : (int)Math.Round(number * factor.Value);
    }

    /// <summary>Whether a word is a unit this knows.</summary>
    public static bool IsUnit(string word) => Factor(word, 480) is not null;

    private static int Whole(Match match, int group) => int.Parse(match.Groups[group].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture);

    private static decimal? Factor(string unit, int dayMinutes) => unit.Trim().TrimEnd('.').ToLowerInvariant() switch
    {
        "" or "m" or "min" or "mins" or "minute" or "minutes" => 1,
        "h" or "hr" or "hrs" or "hour" or "hours" => 60,
        "d" or "day" or "days" => dayMinutes,
        _ => null,
    };

    [GeneratedRegex(@"^\s*(\d{1,4}):([0-5]\d)\s*(?:h|hours?)?\s*$")]
    private static partial Regex Clock();

    [GeneratedRegex(@"^\s*(\d{1,4})\s*h\s*(\d{1,2})\s*(?:min|m)?\s*$", RegexOptions.IgnoreCase)]
    private static partial Regex HoursAndMinutes();

    [GeneratedRegex(@"^\s*(\d{1,7}(?:[.,]\d{1,3})?)\s*([a-zA-Z.]*)\s*$")]
    private static partial Regex Number();
}

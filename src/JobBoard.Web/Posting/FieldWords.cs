using System.Globalization;
using System.Text.RegularExpressions;

namespace JobBoard.Web.Posting;

/// <summary>Fields in words a person reads.</summary>
public static partial class FieldWords
{
    private static readonly Dictionary<string, string> Known = new(StringComparer.Ordinal)
    {
        ["why"] = "The reason",
        ["how"] = "How it was left or done",
        ["text"] = "The reading",
        ["evidence"] = "The evidence",
        ["name"] = "The name",
        ["words"] = "What it is about",
        ["crew"] = "Who is on it",
        ["seenBy"] = "Who else saw it",
        ["expected"] = "When it is expected",
        ["date"] = "The date",
        ["to"] = "The new condition",
        ["estimate"] = "The estimate",
        ["how[]"] = "How it was left",
        ["position"] = "The position",
        ["person"] = "The person",
        ["plan"] = "The plan",
        ["pin"] = "The PIN",
        ["hours"] = "Hours",
        ["x"] = "The distance from the left wall",
        ["y"] = "The distance from the upper wall",
        ["width"] = "The width",
        ["depth"] = "The depth",
        ["ratedKg"] = "The rated load",
        ["inspectedUntil"] = "The day the inspection runs out",
        ["calibratedUntil"] = "The day the calibration runs out",
        ["uncertaintyPercent"] = "The uncertainty in percent",
        ["worksUnder"] = "Whom an apprentice works beside",
    };

    /// <summary>The field's name in words: the last part of it, spelled out.</summary>
    public static string Of(string field)
    {
        var last = Parts().Matches(field).Select(m => m.Value).LastOrDefault(p => !char.IsDigit(p[0])) ?? field;
        if (Row().Match(field) is { Success: true } row) return $"{Of(row.Groups[1].Value)}, line {int.Parse(row.Groups[2].Value, CultureInfo.InvariantCulture) + 1}: {Humps().Replace(last, m => " " + m.Value.ToLowerInvariant())}";
        if (Known.TryGetValue(last, out var words)) return words;
        var spaced = Humps().Replace(last, m => " " + m.Value.ToLowerInvariant());
        return spaced.Length == 0 ? "This" : char.ToUpperInvariant(spaced[0]) + spaced[1..];
    }

    [GeneratedRegex(@"^(hours|qualifications|item\.dangers)\[(\d+)\]\.")]
    private static partial Regex Row();

    [GeneratedRegex(@"[^.\[\]]+")]
    private static partial Regex Parts();

    [GeneratedRegex("[A-Z]")]
    private static partial Regex Humps();
}

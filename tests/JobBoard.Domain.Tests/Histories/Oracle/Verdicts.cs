using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>
/// The decision rule of ISO 14253-1 with the expanded uncertainty as guard band: inside the limits by at least U it
/// conforms, outside by more than U it does not, between them neither is proven. Equality conforms.
/// </summary>
public static class Verdicts
{
    /// <summary>What one unit is in the first of its kind: the few units a history types, each exact.</summary>
    private static readonly Dictionary<string, (string Of, decimal Factor)> Units = new()
    {
        ["kPa"] = ("kPa", 1),
        ["bar"] = ("kPa", 100),
        ["N·m"] = ("N·m", 1),
        ["V"] = ("V", 1),
        ["mV"] = ("V", 0.001m),
        ["°C"] = ("°C", 1),
        ["mm"] = ("mm", 1),
        ["in"] = ("mm", 25.4m),
    };

    public static bool Convertible(string from, string to) => Units.TryGetValue(from, out var a) && Units.TryGetValue(to, out var b) && a.Of == b.Of;

    public static decimal In(decimal value, string from, string to) => value * Units[from].Factor / Units[to].Factor;

    public static decimal GuardBand(Instrument? with, decimal value, string unit)
    {
        if (with is null) return 0;
        var plain = Convertible(with.Unit, unit) ? In(with.Uncertainty, with.Unit, unit) : 0;
        return Math.Max(plain, Math.Abs(value) * with.UncertaintyPercent / 100);
    }

    public static Verdict Of(ReadingNeed limits, decimal value, Instrument? with, DateTimeOffset at)
    {
        var u = GuardBand(with, value, limits.Unit);
        if (value < limits.Min - u || value > limits.Max + u) return Verdict.Out;
        if (limits.Calibrated && (with is null || with.CalibratedUntil is not { } until || until <= at)) return Verdict.TooCloseToCall;
        if (value < limits.Min + u || value > limits.Max - u) return Verdict.TooCloseToCall;
        return Verdict.InLimits;
    }
}

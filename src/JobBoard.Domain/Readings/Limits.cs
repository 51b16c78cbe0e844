using System.Globalization;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Engineering.Measures;

namespace JobBoard.Domain.Readings;

/// <summary>A verdict and why.</summary>
/// <param name="Verdict">What is proven.</param>
/// <param name="Because">A sentence for people.</param>
public sealed record Judged(Verdict Verdict, string Because);

/// <summary>A reading judged against its limits, or what has to be put right before it can be.</summary>
/// <param name="Verdict">What is proven; <see cref="Readings.Verdict.TooCloseToCall"/> while there is a problem.</param>
/// <param name="Because">A sentence for people.</param>
/// <param name="InLimitUnit">The reading in the limit's unit.</param>
/// <param name="Uncertainty">Guard band U (k = 2) in the limit's unit, 0 or more.</param>
/// <param name="Problem">Field and fix where a unit does not fit; otherwise nothing.</param>
public sealed record ReadingJudged(Verdict Verdict, string Because, decimal InLimitUnit, decimal Uncertainty, string? Problem = null)
{
    /// <summary>Whether it could be judged.</summary>
    public bool Ok => Problem is null;
}

/// <summary>
/// Verdicts by the decision rule of ISO 14253-1 with the expanded uncertainty U (k = 2) as guard band: a limit is kept or
/// broken only where it is so by at least (kept) or by more than (broken) U.
/// </summary>
public static class Limits
{
    /// <summary>Beyond what any limit or instrument can be, and small enough that sums never overflow.</summary>
    private const decimal Beyond = 1_000_000_000_000_000_000m;

    /// <summary>
    /// In limits when min + U ≤ value ≤ max − U; out when value &lt; min − U or value &gt; max + U; else too close to call.
    /// Without limits everything is in limits.
    /// </summary>
    /// <param name="value">In the limit's unit.</param>
    /// <param name="min">Least permitted, or none.</param>
    /// <param name="max">Greatest permitted, or none.</param>
    /// <param name="u">Guard band, its size counts.</param>
    public static Judged Judge(decimal value, decimal? min, decimal? max, decimal u) => Judge(value, min, max, u, "");

    /// <summary>Judges a reading as the plan asks for it.</summary>
    /// <param name="need">Limits, their unit, and whether they ask for an instrument in calibration.</param>
    /// <param name="number">What was read.</param>
    /// <param name="instrument">What it was read with, or nothing.</param>
    /// <param name="at">When it was read; a calibration due at that very instant has run out.</param>
    public static ReadingJudged Judge(ReadingNeed need, NumberOfRecord number, Instrument? instrument, DateTimeOffset at)
    {
        var value = number.In(need.Unit, need.Name);
        if (value.Value is not { } read)
            return Not(value.Problem!);
        var band = instrument is null ? new Converted(0m, null) : GuardBand(number, instrument, need);
        if (band.Value is not { } u)
            return Not(band.Problem!);

        var judged = Judge(read, need.Min, need.Max, u, " " + need.Unit);
        var missing = need.Calibrated ? CalibrationMissing(instrument, at) : null;
        return missing is null || judged.Verdict == Verdict.Out
            ? new ReadingJudged(judged.Verdict, judged.Because, read, u)
            : new ReadingJudged(Verdict.TooCloseToCall, $"{missing} {judged.Because}", read, u);
    }

    private static ReadingJudged Not(string problem) => new(Verdict.TooCloseToCall, problem, 0m, 0m, problem);

    /// <summary>The greater of the two uncertainties; the share is of the reading as the instrument shows it.</summary>
    private static Converted GuardBand(NumberOfRecord number, Instrument instrument, ReadingNeed need)
    {
        var shown = number.In(instrument.Unit, instrument.Name);
        if (shown.Value is not { } value)
            return shown;
        var share = Math.Abs(value) * Clamp(instrument.UncertaintyPercent) / 100m;
        var greater = Math.Max(Clamp(instrument.Uncertainty), share);
        return Units.ConvertDifference(Math.Min(greater, Beyond), instrument.Unit, need.Unit, instrument.Name);
    }

    private static string? CalibrationMissing(Instrument? instrument, DateTimeOffset at) => instrument switch
    {
        null => "The limit asks for an instrument in calibration and none was named.",
        { CalibratedUntil: null } => $"The limit asks for an instrument in calibration and {instrument.Name} has none.",
        { CalibratedUntil: { } until } when until <= at =>
            $"The limit asks for an instrument in calibration and that of {instrument.Name} ran out on {until.UtcDateTime:yyyy-MM-dd}.",
        _ => null,
    };

    private static Judged Judge(decimal value, decimal? min, decimal? max, decimal u, string unit)
    {
        var band = Clamp(u);
        var (low, high) = (min is { } l ? Bound(l) : (decimal?)null, max is { } h ? Bound(h) : (decimal?)null);
        var read = Bound(value);
        if (read < low - band)
            return new Judged(Verdict.Out, $"{Say(read)}{unit} is below {Say(low)}{unit} by more than the uncertainty {Say(band)}{unit}.");
        if (read > high + band)
            return new Judged(Verdict.Out, $"{Say(read)}{unit} is above {Say(high)}{unit} by more than the uncertainty {Say(band)}{unit}.");
        if (read < low + band)
            return new Judged(Verdict.TooCloseToCall, $"{Say(read)}{unit} is nearer to the least of {Say(low)}{unit} than the uncertainty {Say(band)}{unit}: neither kept nor broken is proven.");
        return read > high - band
            ? new Judged(Verdict.TooCloseToCall, $"{Say(read)}{unit} is nearer to the greatest of {Say(high)}{unit} than the uncertainty {Say(band)}{unit}: neither kept nor broken is proven.")
            : new Judged(Verdict.InLimits, InWords(read, low, high, band, unit));
    }

    private static string InWords(decimal read, decimal? low, decimal? high, decimal band, string unit) => (low, high) switch
    {
        (null, null) => $"{Say(read)}{unit}; no limit is set.",
        ({ } l, null) => $"{Say(read)}{unit} is at least {Say(l)}{unit}, with the uncertainty {Say(band)}{unit} to spare.",
        (null, { } h) => $"{Say(read)}{unit} is at most {Say(h)}{unit}, with the uncertainty {Say(band)}{unit} to spare.",
        ({ } l, { } h) => $"{Say(read)}{unit} is from {Say(l)} to {Say(h)}{unit}, with the uncertainty {Say(band)}{unit} to spare.",
    };

    private static decimal Clamp(decimal size) => Math.Min(Math.Abs(size), Beyond);

    private static decimal Bound(decimal value) => Math.Clamp(value, -Beyond, Beyond);

    private static string Say(decimal? value) => value?.ToString("0.#########", CultureInfo.InvariantCulture) ?? "";
}

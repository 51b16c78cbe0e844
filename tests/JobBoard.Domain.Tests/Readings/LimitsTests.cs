using System.Globalization;
using CsCheck;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Engineering.Measures;

namespace JobBoard.Domain.Tests.Readings;

public class LimitsTests
{
    private static readonly DateTimeOffset Noon = new(2026, 5, 4, 12, 0, 0, TimeSpan.Zero);

    private static readonly Instrument Wrench = new()
    {
        Id = "wrench-3",
        Name = "wrench 3",
        Unit = "N·m",
        Uncertainty = 1m,
        CalibratedUntil = Noon.AddDays(1),
    };

    /// <summary>Edges of the decision rule of ISO 14253-1: equality conforms, non-conformity has to be proven too.</summary>
    [Theory]
    [InlineData("45", "44", "46", "0.5", Verdict.InLimits)]
    [InlineData("44.5", "44", "46", "0.5", Verdict.InLimits)]
    [InlineData("44.499", "44", "46", "0.5", Verdict.TooCloseToCall)]
    [InlineData("44", "44", "46", "0.5", Verdict.TooCloseToCall)]
    [InlineData("43.5", "44", "46", "0.5", Verdict.TooCloseToCall)]
    [InlineData("43.499", "44", "46", "0.5", Verdict.Out)]
    [InlineData("45.5", "44", "46", "0.5", Verdict.InLimits)]
    [InlineData("45.501", "44", "46", "0.5", Verdict.TooCloseToCall)]
    [InlineData("46.5", "44", "46", "0.5", Verdict.TooCloseToCall)]
    [InlineData("46.501", "44", "46", "0.5", Verdict.Out)]
    [InlineData("44", "44", "46", "0", Verdict.InLimits)]
    [InlineData("43.999", "44", "46", "0", Verdict.Out)]
    [InlineData("46", "44", "46", "0", Verdict.InLimits)]
    [InlineData("45", "44", "46", "1.5", Verdict.TooCloseToCall)] // the instrument is wider than the limits
    [InlineData("1000", "44", "", "0.5", Verdict.InLimits)]
    [InlineData("44.2", "44", "", "0.5", Verdict.TooCloseToCall)]
    [InlineData("-1000", "", "46", "0.5", Verdict.InLimits)]
    [InlineData("47", "", "46", "0.5", Verdict.Out)]
    [InlineData("7", "", "", "0.5", Verdict.InLimits)]
    [InlineData("45", "44", "46", "-1.5", Verdict.TooCloseToCall)] // the size counts
    public void Verdict_follows_the_decision_rule(string value, string min, string max, string u, Verdict expected)
    {
        var judged = Limits.Judge(Number(value)!.Value, Number(min), Number(max), Number(u)!.Value);

        Assert.Equal(expected, judged.Verdict);
        Assert.NotEmpty(judged.Because);
    }

    [Fact]
    public void Verdict_never_overflows_at_the_ends_of_decimal()
    {
        Assert.Equal(Verdict.Out, Limits.Judge(decimal.MinValue, 0m, decimal.MaxValue, 1m).Verdict);
        Assert.Equal(Verdict.TooCloseToCall, Limits.Judge(1m, decimal.MinValue, decimal.MaxValue, decimal.MaxValue).Verdict);
    }

    [Fact]
    public void More_uncertainty_never_proves_more() =>
        Gen.Select(Gen.Int[-200, 200], Gen.Int[-50, 0], Gen.Int[0, 50], Gen.Int[0, 80], Gen.Int[0, 80]).Sample((value, min, max, u, more) =>
        {
            var narrow = Limits.Judge(value, min, max, u).Verdict;
            var wide = Limits.Judge(value, min, max, u + more).Verdict;
            Assert.True(wide == narrow || wide == Verdict.TooCloseToCall);
        });

    [Theory]
    [InlineData("45", "N·m", "1")] // absolute
    [InlineData("45", "Nm", "1")]
    [InlineData("33.19", "lb·ft", "1")]
    public void Guard_band_is_in_the_limits_unit(string text, string unit, string u) =>
        Assert.Equal(Number(u), Judge(Torque(), text, unit, Wrench).Uncertainty);

    [Fact]
    public void Guard_band_is_the_greater_of_absolute_and_share()
    {
        var clicker = Wrench with { UncertaintyPercent = 4m };

        Assert.Equal(1.8m, Judge(Torque(), "45", "N·m", clicker).Uncertainty);
        Assert.Equal(1m, Judge(Torque(), "20", "N·m", clicker).Uncertainty);
        Assert.Equal(1.8m, Judge(Torque(), "-45", "N·m", clicker).Uncertainty);
    }

    [Fact]
    public void Guard_band_of_a_temperature_has_no_zero_point()
    {
        var need = new ReadingNeed { Id = "t", Name = "coolant", Unit = "°C", Max = 40m };
        var probe = new Instrument { Id = "p", Name = "probe", Unit = "°F", Uncertainty = 3.6m };

        var judged = Judge(need, "100.4", "°F", probe);

        Assert.Equal(38m, judged.InLimitUnit);
        Assert.Equal(2m, judged.Uncertainty);
        Assert.Equal(Verdict.InLimits, judged.Verdict);
    }

    [Theory]
    [InlineData("45", Verdict.TooCloseToCall)]
    [InlineData("47", Verdict.TooCloseToCall)]
    [InlineData("52", Verdict.Out)] // clearly out stays out
    public void Not_in_limits_when_calibration_has_run_out(string text, Verdict expected)
    {
        var run = Wrench with { CalibratedUntil = Noon };

        var judged = Judge(Torque() with { Calibrated = true }, text, "N·m", run);

        Assert.Equal(expected, judged.Verdict);
        Assert.Equal(expected != Verdict.Out, judged.Because.Contains("ran out on 2026-05-04"));
    }

    [Theory]
    [InlineData("45", Verdict.TooCloseToCall)]
    [InlineData("52", Verdict.Out)]
    public void Not_in_limits_when_calibration_asked_and_no_instrument(string text, Verdict expected) =>
        Assert.Equal(expected, Judge(Torque() with { Calibrated = true }, text, "N·m", null).Verdict);

    [Fact]
    public void Not_in_limits_when_instrument_was_never_calibrated() =>
        Assert.Equal(Verdict.TooCloseToCall, Judge(Torque() with { Calibrated = true }, "45", "N·m", Wrench with { CalibratedUntil = null }).Verdict);

    [Fact]
    public void In_limits_when_calibrated_until_later() =>
        Assert.Equal(Verdict.InLimits, Judge(Torque() with { Calibrated = true }, "45", "N·m", Wrench).Verdict);

    [Fact]
    public void Calibration_overlooked_when_limit_does_not_ask() =>
        Assert.Equal(Verdict.InLimits, Judge(Torque(), "45", "N·m", Wrench with { CalibratedUntil = Noon.AddYears(-1) }).Verdict);

    [Theory]
    [InlineData("bar", "torque")]
    [InlineData("furlong", "torque")]
    public void Problem_names_the_field_when_unit_does_not_fit(string unit, string field)
    {
        var judged = Limits.Judge(Torque(), new NumberOfRecord("45", 45m, unit), null, Noon);

        Assert.False(judged.Ok);
        Assert.StartsWith(field + ": ", judged.Problem);
        Assert.Equal(Verdict.TooCloseToCall, judged.Verdict);
    }

    [Fact]
    public void Problem_names_the_instrument_when_it_measures_something_else() =>
        Assert.StartsWith("wrench 3: ", Judge(Torque(), "45", "N·m", Wrench with { Unit = "bar" }).Problem);

    private static ReadingNeed Torque() => new() { Id = "torque", Name = "torque", Unit = "N·m", Min = 44m, Max = 48m };

    private static ReadingJudged Judge(ReadingNeed need, string text, string unit, Instrument? instrument) =>
        Limits.Judge(need, NumberOfRecord.Read(text, unit, need.Name).Number!, instrument, Noon);

    private static decimal? Number(string text) => text.Length == 0 ? null : decimal.Parse(text, CultureInfo.InvariantCulture);
}

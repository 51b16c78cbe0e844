using JobBoard.Domain.Plans;
using JobBoard.Engineering.Measures;

namespace JobBoard.Domain.Tests.Plans;

/// <summary>Limits of the template whose figures are asked for by number, and what a wall and a wrench ask of its texts.</summary>
public class TemplateLimitsTests
{
    private const string Practice = "common practice, no source";
    private static readonly PlanIndex Index = PlanIndex.Of(Seed.Plan);

    [Theory]
    [InlineData("fire-watch/watched", "60", null)]
    [InlineData("fuel-filter-fit/bond", null, "1")]
    [InlineData("leak-test/held", "10", null)]
    [InlineData("leak-test/fall", null, "35")]
    [InlineData("leak-test-2/fall", null, "35")]
    [InlineData("wet-test/held", "15", null)]
    [InlineData("intake-fit/straight-run", "152", null)]
    [InlineData("crank-prime/crank-time", null, "10")]
    [InlineData("crank-prime/rest-time", "60", null)]
    [InlineData("first-start/oil-seconds", null, "5")]
    [InlineData("hot-idle/charging", "13.8", "14.8")]
    public void Limit_of_common_practice_says_so(string reading, string? min, string? max)
    {
        Limits(reading, min, max);
        Assert.StartsWith(Practice, Reading(reading).Source, StringComparison.Ordinal);
    }

    /// <summary>
    /// Compression and leak-down: maker workshop texts. Leg angles: sling practice. Rest and load-test volts: published
    /// battery tables. CO: NIOSH criteria document 1972. Drops: ABYC practice as quoted; US Army TM 10-3930-671-24.
    /// </summary>
    [Theory]
    [InlineData("compression/compression-spread", "75", null)]
    [InlineData("compression/leak-down", null, "25")]
    [InlineData("battery-isolate/battery-rest", "12.4", null)]
    [InlineData("lift-plan/leg-angle-planned", "45", null)]
    [InlineData("raise-100/leg-angle", "30", null)]
    [InlineData("live-checks/drop-feed", null, "0.36")]
    [InlineData("live-checks/drop-earth", null, "0.2")]
    [InlineData("crank-prime/battery-crank", "9.6", null)]
    [InlineData("first-start/co", null, "35")]
    public void Limit_from_a_source_names_it(string reading, string? min, string? max)
    {
        Limits(reading, min, max);
        Assert.NotEqual("", Reading(reading).Source);
        Assert.False(Reading(reading).Source.StartsWith(Practice, StringComparison.Ordinal), reading);
    }

    [Fact]
    public void Leg_angle_below_thirty_holds_when_too_close() => Assert.True(Reading("raise-100/leg-angle").HoldsWhenTooClose);

    [Fact]
    public void Oil_pressure_is_seen_by_two() => Assert.True(Reading("crank-prime/oil-pressure").SeenByTwo);

    [Fact]
    public void Every_reading_says_tool_place_and_known_unit() => Assert.All(Readings(), row =>
    {
        Assert.All(new[] { row.Need.Tool, row.Need.Where, row.Need.TakenWhen, row.Need.Source }, text => Assert.NotEqual("", text));
        Assert.True(row.Need.Min is not null || row.Need.Max is not null, row.Need.Id);
        Assert.Null(Units.Convert(1m, row.Need.Unit, row.Need.Unit).Problem);
    });

    [Fact]
    public void Every_name_fits_the_wall() =>
        Assert.All(Seed.Plan.Tasks.Select(t => t.Name).Concat(Seed.Plan.Holds.Select(h => h.Name)), name => Assert.InRange(name.Length, 1, 24));

    [Fact]
    public void Every_task_has_steps_and_dangerous_ones_a_caution() => Assert.All(Seed.Plan.Tasks, task =>
    {
        Assert.InRange(task.Steps.Length, 1, 7);
        if (task.Hazards.Length > 0)
            Assert.Contains("Local codes and licensed practice come first.", task.Cautions);
    });

    [Fact]
    public void No_text_calls_anything_safe() => Assert.All(
        Seed.Plan.Tasks.SelectMany(t => t.Steps.Concat(t.Cautions)).Concat(Seed.Hazards.Select(h => h.Caution)).Concat(Seed.KeepApart.Select(r => r.Reason)),
        text => Assert.DoesNotMatch("(?i)\\bsafe(ly)?\\b", text));

    private static void Limits(string name, string? min, string? max)
    {
        Assert.Equal(Number(min), Reading(name).Min);
        Assert.Equal(Number(max), Reading(name).Max);
    }

    private static decimal? Number(string? text) =>
        text is null ? null : decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static ReadingNeed Reading(string name) =>
        Assert.Single(Readings(), r => r.Task.Id + "/" + r.Need.Id == name).Need;

    private static IEnumerable<(PlanTask Task, ReadingNeed Need)> Readings() =>
        Index.Plan.Tasks.SelectMany(t => t.Readings.Select(r => (t, r)));
}

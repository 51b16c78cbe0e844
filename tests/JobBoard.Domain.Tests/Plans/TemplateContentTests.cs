using JobBoard.Domain.Hazards;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Plans;

/// <summary>
/// The mid-engine template holds everything the shop asks of it: the demands stand in <see cref="TemplateDemands"/>, the
/// map names ids for each, and the template has to bear the map out. Nothing may be missing on either side.
/// </summary>
public class TemplateContentTests
{
    private static readonly TemplateMap Map = Seed.Map;
    private static readonly PlanIndex Index = PlanIndex.Of(Seed.Plan);

    [Fact]
    public void Map_names_all_twenty_stages_in_their_order()
    {
        Assert.Equal(Seed.Plan.Id, Map.Plan);
        Assert.Equal(20, Map.Stages.Count);
        Assert.Equal(Enumerable.Range(1, 20).Select(n => Map.Stages["S" + n]), Seed.Plan.Stages.Select(s => s.Id));
        Assert.All(Seed.Plan.Stages, s => Assert.Contains(Seed.Plan.Tasks, t => t.Stage == s.Id));
    }

    [Fact]
    public void Map_covers_every_demand_when_compared()
    {
        Equal(TemplateDemands.Tasks, Map.Tasks.Select(r => (r.Stage, r.Demand)));
        Equal(TemplateDemands.Changes, Map.Changes.Select(r => (r.Stage, $"{r.Item} {r.From} > {r.To}")));
        Equal(TemplateDemands.Hazards, Map.Hazards.Select(r => (r.Stage, r.Hazard)));
        Equal(TemplateDemands.Holds, Map.Holds.Select(r => (r.Stage, r.Demand)));
        Equal(TemplateDemands.SecondChecks, Map.SecondChecks.Select(r => (r.Stage, r.Demand)));
        Equal(TemplateDemands.Readings, Map.Readings.Select(r => (r.Stage, r.Demand)));
        Equal(TemplateDemands.Links, Map.Links.Select(l => ("L", $"{l.Key} {l.Value.Length}")));
        Assert.Equal(Enumerable.Range(1, 30).Select(n => "L" + n).Order(), Map.Links.Keys.Order());
        Assert.Equal(TemplateDemands.Sides.Split(' ').Order(), Map.KeepApartSides.Keys.Order());
    }

    [Fact]
    public void Every_demanded_task_is_in_its_stage() => Assert.All(Map.Tasks, row =>
    {
        Assert.NotEmpty(row.Tasks);
        Assert.All(row.Tasks, id => InStage(row.Stage, id));
    });

    [Fact]
    public void Every_demanded_change_is_made_by_its_task() => Assert.All(Map.Changes, row =>
    {
        InStage(row.Stage, row.Task);
        var steps = Task(row.Task).Changes.Where(c => c.Item == row.Item).SelectMany(c => c.Path.Zip(c.Path.Skip(1)));
        Assert.Contains((row.From, row.To), steps);
    });

    [Fact]
    public void Every_item_ends_as_for_the_road() => Assert.All(Seed.Plan.Items, item =>
    {
        var at = item.AtTakeIn;
        foreach (var (task, change) in Index.Changers(item.Id))
        {
            Assert.True(at == change.From, $"{item.Id} is {at} before {task.Id}");
            at = change.To;
        }

        Assert.Equal(item.AsForTheRoad, at);
    });

    [Fact]
    public void Every_demanded_hazard_has_its_source() => Assert.All(Map.Hazards, row =>
    {
        Assert.NotEmpty(row.TasksOrItems);
        Assert.All(row.TasksOrItems, source => Carries(row.Hazard, source));
    });

    [Fact]
    public void Every_keep_apart_side_has_its_source()
    {
        var named = Seed.KeepApart.SelectMany(r => new[] { r.A, r.B }).Select(HazardOf).Distinct();
        Assert.Equal(named.Order(), Map.KeepApartSides.Keys.Order().Where(h => named.Contains(h)));
        Assert.All(Map.KeepApartSides, side =>
        {
            Assert.NotEmpty(side.Value);
            Assert.All(side.Value, source => Carries(side.Key, source));
        });
    }

    [Theory]
    [InlineData("suspended-load", "under-the-car", Scope.Sweep)]
    [InlineData("turning-engine", "under-the-car", Scope.Car)]
    [InlineData("turning-engine", "hands-in-belts", Scope.Car)]
    [InlineData("hot-work", "line-open", Scope.Distance)]
    [InlineData("hot-work", "fuel-under-pressure", Scope.Shop)]
    [InlineData("hot-work", "battery-on-charge", Scope.Distance)]
    [InlineData("live-electrics", "line-open", Scope.Bay)]
    [InlineData("running-exhaust", "no-extraction", Scope.Shop)]
    [InlineData("car-on-stands", "pulling-or-levering", Scope.Car)]
    [InlineData("hot-coolant", "cap-off", Scope.Car)]
    [InlineData("fuel-under-pressure", "under-the-car", Scope.Car)]
    public void Shop_keeps_apart_by_default(string a, string b, Scope scope)
    {
        var rule = Assert.Single(Seed.KeepApart, r => HazardOf(r.A) == a && HazardOf(r.B) == b);

        Assert.Equal(scope, rule.Scope);
        Assert.Equal(scope == Scope.Distance ? 11m : null, rule.Metres);
        Assert.NotEqual("", rule.Reason);
        if (scope == Scope.Distance)
            Assert.Contains("common practice, no source", rule.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_demanded_hold_is_in_its_stage()
    {
        Assert.All(Map.Holds, row => Assert.Equal(Map.Stages[row.Stage], Index.Hold(row.Hold)?.Stage));
        Assert.Equal("hold-key-check", Assert.Single(Seed.Plan.Holds, h => h.KeyCheck).Id);
        Assert.Equal("hold-handover", Assert.Single(Seed.Plan.Holds, h => h.Handover).Id);
        Assert.Equal(Seed.Plan.Tasks.Length + Seed.Plan.Holds.Length - 1, Index.AllBefore("hold-handover").Count());
    }

    [Fact]
    public void Every_demanded_second_check_is_asked() => Assert.All(Map.SecondChecks, row =>
    {
        InStage(row.Stage, row.Task);
        Assert.True(Task(row.Task).SecondCheck, row.Task);
    });

    [Fact]
    public void Every_demanded_reading_has_a_limit_and_source() => Assert.All(Map.Readings, row =>
    {
        Assert.NotEmpty(row.Readings);
        Assert.All(row.Readings, name =>
        {
            InStage(row.Stage, name.Split('/')[0]);
            var reading = Reading(name);
            Assert.True(reading.Min is not null || reading.Max is not null, name);
            Assert.NotEqual("", reading.Source);
        });
    });

    [Theory]
    [MemberData(nameof(LinkNames))]
    public void Every_pair_of_the_link_is_in_the_closure(string link)
    {
        Assert.NotEmpty(Map.Links[link]);
        Assert.All(Map.Links[link], pair =>
        {
            Assert.True(Index.IsAfter(pair.Task, pair.After), $"{pair.Task} after {pair.After}");
            if (pair.Clock is { } clock)
                Assert.Contains(Index.LinksInto(pair.Task), l => l.After == pair.After && l.Lag > 0 && l.Clock == clock);
        });
    }

    [Fact]
    public void Lift_planning_lies_beside_the_strip() => Assert.All(Map.Beside, row => Assert.All(row.Strip, strip =>
        Assert.False(Index.IsAfter(row.Task, strip) || Index.IsAfter(strip, row.Task), $"{row.Task} and {strip}")));

    [Fact]
    public void Every_demanded_duty_is_in_the_crew() => Assert.All(Map.Duties, row =>
    {
        InStage(row.Stage, row.Task);
        Assert.Subset(Task(row.Task).Crew.Select(c => c.Duty).ToHashSet(), row.Duties.ToHashSet());
    });

    public static TheoryData<string> LinkNames() => [.. Enumerable.Range(1, 30).Select(n => "L" + n)];

    private static void Equal(string demands, IEnumerable<(string Stage, string Demand)> mapped) =>
        Assert.Equal(TemplateDemands.Rows(demands), mapped.Order());

    private static PlanTask Task(string id) => Index.Task(id) ?? throw new InvalidDataException("no task " + id);

    private static void InStage(string stage, string task) => Assert.Equal(Map.Stages[stage], Task(task).Stage);

    private static ReadingNeed Reading(string name) =>
        Assert.Single(Task(name.Split('/')[0]).Readings, r => r.Id == name.Split('/')[1]);

    private static string HazardOf(Side side) => side.Hazard
        ?? Seed.Items.Single(i => "shop/" + i.Id == side.Item).Dangers.Single(d => d.Condition == side.Condition).Hazard;

    private static void Carries(string hazard, string source)
    {
        Assert.Contains(Seed.Hazards, h => h.Id == hazard);
        var parts = source.Split(':');
        var found = parts.Length == 1
            ? Task(source).Hazards.Any(h => h.Hazard == hazard)
            : Dangers(parts[0]).Any(d => d.Condition == parts[1] && d.Hazard == hazard);
        Assert.True(found, $"{source} does not carry {hazard}");
    }

    private static IEnumerable<ConditionHazard> Dangers(string item) =>
        item.StartsWith("shop/", StringComparison.Ordinal)
            ? Seed.Items.Single(i => "shop/" + i.Id == item).Dangers
            : Index.Item(item)?.Dangers ?? throw new InvalidDataException("no item " + item);
}

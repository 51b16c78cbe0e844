using System.Collections.Immutable;
using System.Globalization;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Plans.Faults;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Shop.Demo;

namespace JobBoard.Shop.Tests.Demo;

/// <summary>The demo shop holds everything it is to show, at any hour of any day.</summary>
public class DemoShopTests(DemoShopTests.Loaded loaded) : IClassFixture<DemoShopTests.Loaded>
{
    private static readonly string[] Cars = ["dunlin-estate", "heron-coupe", "plover-saloon", "siskin-pick-up"];

    private ShopState Shop => loaded.Shop;

    private DateTimeOffset Now => loaded.Now;

    [Fact]
    public void People_places_and_things_are_there()
    {
        Assert.Equal("Tarn Lane Conversions", Shop.Name);
        Assert.True(Shop.Places.Count >= 8);
        Assert.Equal(5, Shop.Places.Values.Count(p => p.Kind == "bay"));
        Assert.Contains(Shop.Places.Values, p => p.Kind == "fuel corner");
        Assert.True(Shop.People.Count >= 7);
        Assert.Single(Shop.People.Values, p => p.Position == Position.Apprentice && Shop.People.ContainsKey(p.WorksUnder!));
        Assert.Single(Shop.People.Values, p => p.IsQualified("fuel", Now));
        Assert.True(Shop.People.Values.Select(p => string.Join(",", p.Qualifications.Select(q => q.For))).Distinct().Count() >= 7);
        Assert.Contains(Shop.Gear.Values, g => g is { Kind: "hoist", RatedKg: >= 500, Sweep: not null, OutOfUse: null } && g.InspectedUntil > Now);
        Assert.Contains(Shop.Instruments.Values, i => i.CalibratedUntil < Now);
        Assert.True(Shop.Instruments.Values.Count(i => i.CalibratedUntil > Now && (i.Uncertainty > 0 || i.UncertaintyPercent > 0)) >= 10);
        Assert.NotEmpty(Shop.KeepApart);
    }

    [Fact]
    public void Most_are_in_and_one_is_away()
    {
        var staff = Shop.People.Values.Where(p => !p.Outside).ToArray();

        Assert.Equal(["petra"], staff.Where(p => !p.IsIn).Select(p => p.Id));
        Assert.Contains(Shop.People["petra"].Absences, a => a.From < Now && Now < a.To);
    }

    [Fact]
    public void Map_is_drawn_without_overlaps_in_the_walls_shape()
    {
        var areas = Shop.Places.Values.Select(p => p.Area).ToArray();
        var (width, depth) = (areas.Max(a => a.X + a.Width), areas.Max(a => a.Y + a.Depth));

        Assert.InRange(width / depth, 1.5m, 1.75m);
        Assert.DoesNotContain(areas, a => areas.Any(b => b != a && a.Overlaps(b)));
        var lifted = Shop.Gear["gantry"].Sweep!;
        Assert.Equal(["bay-1", "bay-2"], Shop.Places.Values.Where(p => p.Area.Overlaps(lifted)).Select(p => p.Id));
    }

    [Fact]
    public void Four_cars_stand_at_different_points()
    {
        Assert.Equal(Cars, Shop.Cars.Keys);
        Assert.Equal(4, Shop.Cars.Values.Select(c => c.Place).Distinct().Count());
        Assert.All(Shop.Cars.Values, c => Assert.NotNull(c.DateGiven));
        Assert.Equal(["lower-in"], InHand("heron-coupe"));
        Assert.Equal(["leak-test"], InHand("dunlin-estate"));
        Assert.Equal(["wet-test"], InHand("plover-saloon"));
        Assert.Equal("battery-charge", Assert.Single(InHand("siskin-pick-up")));
        Assert.All(Harness(), t => Assert.True(t.Id == "battery-charge" || t.Status == WorkStatus.NotStarted));
        Assert.Equal("hanging", Shop.Cars["heron-coupe"].Items["engine"].Condition);
    }

    [Fact]
    public void Dangers_stand_where_work_is_dangerous()
    {
        var standing = Dangers.Standing(Shop);

        Assert.Contains(standing, d => d is { Hazard: "suspended-load", Car: "heron-coupe" });
        Assert.Contains(standing, d => d is { Hazard: "fuel-under-pressure", Car: "dunlin-estate" });
        Assert.Empty(Apart.Among(Shop));
    }

    [Fact]
    public void One_stop_is_raised_and_not_everybody_has_heard()
    {
        var stop = Assert.Single(Shop.Stops.Values);

        Assert.Equal("dunlin-estate", stop.Car);
        Assert.Null(stop.Safe);
        Assert.Contains(stop.Told.Values, heard => heard is null);
        Assert.Contains(stop.Told.Values, heard => heard is not null);
    }

    [Fact]
    public void Something_can_start_for_three_and_many_wait()
    {
        var can = Shop.People.Keys.Where(p => !Evaluation.CanStartFor(Shop, p, Now).IsEmpty).ToArray();
        var waiting = Shop.Cars.Values.SelectMany(c => Evaluation.Of(Shop, c, Now)).ToArray();

        Assert.True(can.Length >= 3, string.Join(" ", can));
        Assert.True(waiting.Count(w => !w.CanStart) >= 100);
        Assert.All(Cars, car => Assert.Contains(waiting, w => w.Car.Id == car && !w.CanStart));
        Assert.True(waiting.Count(w => w.Car.Id == "siskin-pick-up" && w.CanStart) >= 3);
    }

    [Fact]
    public void Parts_snags_notes_and_readings_have_their_troubles()
    {
        var parts = Shop.Cars.Values.SelectMany(c => c.Parts.Values).ToArray();
        Assert.Contains(parts, p => p.Status == PartStatus.Ordered && p.Expected > Now);
        Assert.Contains(parts, p => p.Status == PartStatus.Ordered && p.Expected < Now);
        Assert.Single(parts, p => p.Status == PartStatus.Wrong);
        Assert.Equal(2, Shop.Cars.Values.Sum(c => c.Snags.Values.Count(s => s.DoneAt is null)));
        Assert.True(Shop.Cars.Values.Sum(c => c.Notes.Count) >= 4);
        Assert.Contains(Shop.Cars.Values.SelectMany(c => c.Notes), n => n.ForCustomer);
        var again = Shop.Cars.Values.SelectMany(c => c.Readings.Values).Where(r => r[0].Verdict == Verdict.Out && r[^1].Verdict == Verdict.InLimits);
        Assert.True(again.Count() >= 4);
    }

    [Fact]
    public void Plans_have_no_faults_in_this_shop()
    {
        Assert.All(Shop.Cars.Values, c => Assert.Empty(PlanFaults.Find(c.Plan, ShopFacts.Of(Shop, Now))));
    }

    [Fact]
    public void Everybody_who_works_here_has_a_pin()
    {
        var pins = Seeds.Demo.Pins;

        Assert.Equal(Shop.People.Values.Where(p => !p.Outside).Select(p => p.Id), pins.Keys);
        Assert.Equal(pins.Count, pins.Values.Distinct().Count());
    }

    [Theory]
    [InlineData("2026-03-07T02:10+01:00")]
    [InlineData("2026-03-30T08:20+02:00")]
    [InlineData("2026-12-31T18:30+01:00")]
    public async Task Same_scene_stands_at_any_hour(string now)
    {
        var shop = new ShopInMemory();

        await Seeds.Demo.Load(shop.Door, Loaded.At(now));

        Assert.Equal(Describe(Shop), Describe(shop.State));
    }

    /// <summary>What is in hand by whom, how far each car is, who is in: what the scene is made of.</summary>
    private static ImmutableArray<string> Describe(ShopState shop) =>
    [
        .. shop.People.Values.Where(p => p.IsIn).Select(p => p.Id + " in"),
        .. shop.Stops.Values.Select(s => $"{s.Why} {string.Join(" ", s.Told.Select(t => t.Key + (t.Value is null)))}"),
        .. from car in shop.Cars.Values
           from task in car.Tasks.Values
           where task.Status != WorkStatus.NotStarted
           select $"{car.Id}/{task.Id} {task.Status} {string.Join(" ", task.Crew.Select(m => m.Person))}",
    ];

    private string[] InHand(string car) => [.. Shop.Cars[car].Tasks.Values.Where(t => t.Status == WorkStatus.InHand).Select(t => t.Id)];

    private IEnumerable<TaskState> Harness() =>
        Shop.Cars["siskin-pick-up"].Plan.Tasks.Where(t => t.Stage == "s12-harness").Select(t => Shop.Cars["siskin-pick-up"].Tasks[t.Id]);

    /// <summary>The demo, loaded once for all, on a Wednesday morning.</summary>
    public sealed class Loaded : IAsyncLifetime
    {
        public DateTimeOffset Now { get; } = At("2026-03-04T10:30+01:00");

        public ShopState Shop { get; private set; } = ShopState.Empty;

        public static DateTimeOffset At(string text) => DateTimeOffset.Parse(text, CultureInfo.InvariantCulture);

        public async ValueTask InitializeAsync()
        {
            var shop = new ShopInMemory();
            await Seeds.Demo.Load(shop.Door, Now);
            Shop = shop.State;
        }

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}

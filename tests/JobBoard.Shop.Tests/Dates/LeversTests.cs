using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Dates;
using JobBoard.Shop.Tests.Running;

namespace JobBoard.Shop.Tests.Dates;

/// <summary>What would shorten a car. Worked out by hand: open 08:00 to 17:00 from Monday 08:00; a (2 h) then c (1 h), b (30 min) beside a.</summary>
public class LeversTests
{
    private readonly DateBook _book = new();

    [Fact]
    public async Task The_most_is_won_on_the_step_with_the_most_to_win()
    {
        await using var shop = await Shop();

        var levers = Of(shop);

        Assert.Equal([("a", 60), ("c", 30)], levers.Select(l => (l.About, (int)l.Gain.TotalMinutes)));
        Assert.Equal((TimeSpan.FromHours(2), TimeSpan.FromHours(1), Monday(10)), (levers[0].Now, levers[0].Then, levers[0].Earliest));
    }

    [Fact]
    public async Task No_more_is_won_than_the_next_longest_way_leaves()
    {
        await using var shop = await Shop(beside: 100);

        Assert.Equal(20, Of(shop).Single(l => l.About == "a").Gain.TotalMinutes);
    }

    [Fact]
    public async Task Work_done_already_is_not_won_again()
    {
        await using var shop = await Shop();
        await shop.Does("inga", LiveShop.Begin("a", "inga"));
        shop.Clock.Advance(TimeSpan.FromMinutes(40));

        var lever = Of(shop).Single(l => l.About == "a");

        Assert.Equal((80.0, 20.0, 50.0), (lever.Now.TotalMinutes, lever.Then.TotalMinutes, lever.Gain.TotalMinutes));
    }

    [Fact]
    public async Task Work_past_its_low_estimate_is_taken_at_half()
    {
        await using var shop = await Shop();
        await shop.Does("inga", LiveShop.Begin("a", "inga"));
        shop.Clock.Advance(TimeSpan.FromMinutes(80));

        Assert.Equal(20, Of(shop).Single(l => l.About == "a").Then.TotalMinutes);
    }

    [Fact]
    public async Task A_part_is_worth_what_it_holds_up()
    {
        await using var shop = await Shop(part: true);
        await shop.Does("ada", new OrderPart("loom", Monday(14)) { Car = "heron" });

        var levers = Of(shop);

        Assert.Equal((LeverKind.Part, "loom", 240.0), (levers[0].Kind, levers[0].About, levers[0].Gain.TotalMinutes));
        Assert.DoesNotContain(levers, l => l.About == "a");
    }

    [Fact]
    public async Task A_hold_costs_what_a_night_without_release_costs()
    {
        await using var shop = await Shop(hold: true);
        Assert.DoesNotContain(Of(shop), l => l.Kind == LeverKind.Hold);
        await shop.Does("inga", LiveShop.Begin("a", "inga"));
        shop.Clock.Advance(TimeSpan.FromHours(2));
        await shop.Does("inga", new SignOffTask { Car = "heron", Task = "a" });

        var lever = Of(shop).Single(l => l.Kind == LeverKind.Hold);

        Assert.Equal(("look", TimeSpan.FromHours(6.5)), (lever.About, lever.Gain));
    }

    [Fact]
    public async Task Nothing_is_said_where_the_date_is_not_known()
    {
        await using var shop = await Shop(part: true);
        await shop.Does("ada", new OrderPart("loom", Monday(9)) { Car = "heron" });
        shop.Clock.Advance(TimeSpan.FromHours(2));

        Assert.Empty(Of(shop));
    }

    private static DateTimeOffset Monday(int hour) => LiveShop.Monday.AddHours(hour - 8);

    private ImmutableArray<Lever> Of(LiveShop shop) => Levers.Of(_book, shop.State, shop.State.Cars["heron"], shop.Runner.Now);

    private static async Task<LiveShop> Shop(bool part = false, bool hold = false, int beside = 30)
    {
        var shop = await LiveShop.Start();
        await shop.Does("ada", new SetShop("Tarn", "Etc/UTC", [.. Enumerable.Range(1, 5).Select(d => new OpenHours((DayOfWeek)d, new(8, 0), new(17, 0)))], []));
        Link[] links = hold ? [new("look", "a"), new("c", "look"), new("c", "b")] : [new("c", "a"), new("c", "b")];
        return await shop.WithCar(LiveShop.Plan(Task("a", 60, 120), Task("b", beside, beside), Task("c", 30, 60) with { Parts = part ? ["loom"] : [] }) with
        {
            Links = [.. links],
            Parts = part ? [new Part("loom", "Loom", 3)] : [],
            Holds = hold ? [new HoldPoint { Id = "look", Name = "Look", Stage = "s" }] : [],
        });
    }

    private static PlanTask Task(string id, int low, int usual) => LiveShop.Task(id) with { Estimate = new(low, usual, 2 * usual) };
}

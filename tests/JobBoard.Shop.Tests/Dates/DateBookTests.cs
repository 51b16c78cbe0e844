using JobBoard.Domain.Commands;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Dates;
using JobBoard.Shop.Tests.Running;

namespace JobBoard.Shop.Tests.Dates;

/// <summary>What a board says of its dates. Worked out by hand: two tasks of an hour in a row, open 08:00 to 17:00, from Monday 08:00.</summary>
public class DateBookTests
{
    private readonly DateBook _book = new();

    [Fact]
    public async Task A_new_car_takes_its_usual_estimates()
    {
        await using var shop = await Shop();

        var dates = Dates(shop);

        Assert.Equal(Monday(10), dates.Earliest);
        Assert.Equal(["a", "b"], dates.SetsTheDate.Select(s => s.Node));
        Assert.Equal((Monday(9), TimeSpan.Zero), (dates.Nodes["b"].EarlyStart, dates.Nodes["b"].Slack));
        Assert.False(dates.IsDone);
    }

    [Fact]
    public async Task Work_in_hand_counts_what_is_left()
    {
        await using var shop = await Shop();
        await shop.Does("inga", LiveShop.Begin("a", "inga"));
        shop.Clock.Advance(TimeSpan.FromMinutes(20));

        Assert.Equal(Monday(10), Dates(shop).Earliest);
        shop.Clock.Advance(TimeSpan.FromMinutes(70));
        Assert.Equal(Monday(11), Dates(shop).Earliest);
    }

    [Fact]
    public async Task Signed_off_work_lies_where_it_was()
    {
        await using var shop = await Shop();
        await shop.Does("inga", LiveShop.Begin("a", "inga"));
        shop.Clock.Advance(TimeSpan.FromMinutes(20));
        await shop.Does("inga", new SignOffTask { Car = "heron", Task = "a" });
        shop.Clock.Advance(TimeSpan.FromMinutes(10));

        var dates = Dates(shop);

        Assert.Equal((Monday(8), Monday(8).AddMinutes(20)), (dates.Nodes["a"].EarlyStart, dates.Nodes["a"].EarlyFinish));
        Assert.Equal(Monday(9).AddMinutes(30), dates.Earliest);
    }

    [Fact]
    public async Task A_part_that_is_expected_holds_its_task()
    {
        await using var shop = await Shop(part: true);
        await shop.Does("ada", new OrderPart("loom", Monday(13)) { Car = "heron" });

        Assert.Equal(Monday(14), Dates(shop).Earliest);
    }

    [Fact]
    public async Task An_overdue_part_is_unknown_and_named()
    {
        await using var shop = await Shop(part: true);
        await shop.Does("ada", new OrderPart("loom", Monday(9)) { Car = "heron" });
        shop.Clock.Advance(TimeSpan.FromHours(2));

        var dates = Dates(shop);

        Assert.Null(dates.Earliest);
        Assert.Equal(["loom"], dates.RestsOn.AsEnumerable());
        Assert.Equal("loom", dates.Nodes["b"].RestsOn);
        Assert.NotNull(dates.Nodes["a"].EarlyFinish);
    }

    [Fact]
    public async Task A_date_given_too_early_is_missed_by_what_sets_it()
    {
        await using var shop = await Shop();
        await shop.Does("ada", new GiveDate(Monday(9), "hoped") { Car = "heron" });

        var dates = Dates(shop);

        Assert.True(dates.Nodes["b"].MissesDateGiven);
        Assert.Equal(TimeSpan.FromHours(-1), dates.Nodes["b"].Slack);
    }

    [Fact]
    public async Task A_released_hold_lies_where_it_was()
    {
        await using var shop = await Shop(hold: true);

        Assert.Equal(["a", "look", "b"], Dates(shop).SetsTheDate.Select(s => s.Node));
        Assert.Equal(Monday(9), Dates(shop).Nodes["look"].EarlyFinish);
    }

    [Fact]
    public async Task The_same_minute_and_board_are_worked_out_once()
    {
        await using var shop = await Shop();

        Assert.Same(Dates(shop), Dates(shop));
        shop.Clock.Advance(TimeSpan.FromMinutes(1));
        Assert.NotSame(_book.Of(shop.State, shop.State.Cars["heron"], LiveShop.Monday), Dates(shop));
    }

    private static async Task<LiveShop> Shop(bool part = false, bool hold = false)
    {
        var shop = await LiveShop.Start();
        await shop.Does("ada", new SetShop("Tarn", "Etc/UTC", [.. Enumerable.Range(1, 5).Select(d => new OpenHours((DayOfWeek)d, new(8, 0), new(17, 0)))], []));
        Link[] links = hold ? [new("look", "a"), new("b", "look")] : [new("b", "a")];
        return await shop.WithCar(LiveShop.Plan(LiveShop.Task("a"), LiveShop.Task("b") with { Parts = part ? ["loom"] : [] }) with
        {
            Links = [.. links],
            Parts = part ? [new Part("loom", "Loom", 3)] : [],
            Holds = hold ? [new HoldPoint { Id = "look", Name = "Look", Stage = "s", ReleasedBy = Position.Technician }] : [],
        });
    }

    private static DateTimeOffset Monday(int hour) => LiveShop.Monday.AddHours(hour - 8);

    private CarDates Dates(LiveShop shop) => _book.Of(shop.State, shop.State.Cars["heron"], shop.Runner.Now);
}

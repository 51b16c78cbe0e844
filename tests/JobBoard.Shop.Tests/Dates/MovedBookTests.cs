using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Dates;
using JobBoard.Shop.Tests.Running;

namespace JobBoard.Shop.Tests.Dates;

/// <summary>What moved a car's date since this morning. Two tasks of an hour in a row, high estimate two hours, open 08:00 to 17:00; the morning is Tuesday's.</summary>
public class MovedBookTests
{
    [Fact]
    public async Task Nothing_moves_while_the_shop_is_closed()
    {
        await using var shop = await Tuesday();
        shop.Clock.Advance(TimeSpan.FromHours(1));

        var moves = Of(shop, Book(shop));

        Assert.Equal((Tuesday(10), Tuesday(10), TimeSpan.Zero), (moves.Before, moves.After, moves.Net));
        Assert.Empty(moves.Moves);
    }

    [Fact]
    public async Task Time_moves_it_while_nobody_is_on_what_sets_it()
    {
        await using var shop = await Tuesday();
        shop.Clock.Advance(TimeSpan.FromHours(9.5));

        var move = Assert.Single(Of(shop, Book(shop)).Moves);

        Assert.Equal((null, "a", false, TimeSpan.FromMinutes(90)), (move.Fact, move.Node, move.WasInHand, move.By));
    }

    [Fact]
    public async Task Each_move_goes_to_its_own_cause_and_they_add_up()
    {
        await using var shop = await Tuesday();
        var book = Book(shop);
        shop.Clock.Advance(TimeSpan.FromHours(8.5));
        await shop.Does("inga", LiveShop.Begin("a", "inga"));
        shop.Clock.Advance(TimeSpan.FromMinutes(30));
        Assert.Equal(TimeSpan.FromMinutes(30), Of(shop, book).Net);
        await shop.Does("inga", new SignOffTask { Car = "heron", Task = "a" });
        await shop.Does("ada", new ReviseEstimate(new(60, 100, 120), "looked at it") { Car = "heron", Task = "b" });

        var moves = Of(shop, book);

        Assert.Equal([(null, 30.0), (typeof(TaskSignedOff), -30.0), (typeof(EstimateRevised), 40.0)], moves.Moves.Select(m => (m.Fact?.GetType(), m.By!.Value.TotalMinutes)));
        Assert.Equal(moves.Net, moves.Moves.Aggregate(TimeSpan.Zero, (sum, m) => sum + m.By!.Value));
        Assert.Equal(["", "inga", "ada"], moves.Moves.Select(m => m.Actor));
    }

    [Fact]
    public async Task A_book_opened_late_tells_the_same()
    {
        await using var shop = await Tuesday();
        var early = Book(shop);
        shop.Clock.Advance(TimeSpan.FromHours(9));
        await shop.Does("inga", LiveShop.Begin("a", "inga"));
        _ = Of(shop, early);
        shop.Clock.Advance(TimeSpan.FromHours(1.5));
        await shop.Does("inga", new SignOffTask { Car = "heron", Task = "a" });

        Assert.Equal(Of(shop, Book(shop)).Moves.Select(m => (m.At, m.By, m.Node)), Of(shop, early).Moves.Select(m => (m.At, m.By, m.Node)));
    }

    [Fact]
    public async Task A_new_day_begins_anew()
    {
        await using var shop = await Tuesday();
        var book = Book(shop);
        shop.Clock.Advance(TimeSpan.FromHours(10));
        Assert.Equal(TimeSpan.FromHours(2), Of(shop, book).Net);
        shop.Clock.Advance(TimeSpan.FromHours(15));

        var moves = Of(shop, book);

        Assert.Equal((Tuesday(24), TimeSpan.Zero), (moves.Since, moves.Net));
        Assert.Empty(moves.Moves);
    }

    [Fact]
    public async Task A_part_that_becomes_overdue_is_named()
    {
        await using var shop = await Tuesday(part: true);
        await shop.Does("ada", new OrderPart("loom", Tuesday(12)) { Car = "heron" });
        var book = Book(shop);
        shop.Clock.Advance(TimeSpan.FromHours(13));

        var moves = Of(shop, book);

        Assert.Null(moves.After);
        Assert.Null(moves.Net);
        Assert.Equal(["loom"], moves.Moves[^1].RestsOn.AsEnumerable());
    }

    [Fact]
    public async Task A_car_of_today_is_counted_from_its_take_in()
    {
        await using var shop = await Tuesday();
        shop.Clock.Advance(TimeSpan.FromHours(9));
        await shop.Does("ada", new TakeInCar("Plover", LiveShop.Plan(LiveShop.Task("x")), null) { Car = "plover" });
        shop.Clock.Advance(TimeSpan.FromHours(1));

        var moves = Book(shop).Of(shop.State, shop.State.Cars["plover"], shop.Runner.Now);

        Assert.Equal((Tuesday(9), TimeSpan.FromHours(1)), (moves.Since, moves.Net));
    }

    private static MovedBook Book(LiveShop shop) => new(shop.Runner, new DateBook());

    private static CarMoves Of(LiveShop shop, MovedBook book) => book.Of(shop.State, shop.State.Cars["heron"], shop.Runner.Now);

    private static DateTimeOffset Tuesday(double hour) => LiveShop.Monday.AddHours(16 + hour);

    /// <summary>Midnight before Tuesday.</summary>
    private static async Task<LiveShop> Tuesday(bool part = false)
    {
        var shop = await LiveShop.Start();
        await shop.Does("ada", new SetShop("Tarn", "Etc/UTC", [.. Enumerable.Range(1, 5).Select(d => new OpenHours((DayOfWeek)d, new(8, 0), new(17, 0)))], []));
        await shop.WithCar(LiveShop.Plan(LiveShop.Task("a"), LiveShop.Task("b") with { Parts = part ? ["loom"] : [] }) with { Links = [new("b", "a")], Parts = part ? [new Part("loom", "Loom", 0)] : [] });
        shop.Clock.Advance(TimeSpan.FromHours(16));
        return shop;
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Demo;
using JobBoard.Shop.Running;
using JobBoard.Web.Hosting;
using JobBoard.Web.SignIn;

namespace JobBoard.EndToEnd.Servers;

/// <summary>The demo's shop with two cars, made by a scripted crew through the same commands as people, before the server starts.</summary>
/// <param name="Pins">PINs of the people.</param>
/// <param name="Wall">The token of a wall link.</param>
/// <param name="State">The shop when the server starts.</param>
internal sealed record StoryShop(ImmutableSortedDictionary<string, string> Pins, string Wall, ShopState State)
{
    /// <summary>The car of the story: the new engine tried in and out again, and no more done than that rests on.</summary>
    public const string Heron = "heron-coupe";

    /// <summary>The car beside it, within the sweep of the same gantry: its engine is in, its driveshafts are next.</summary>
    public const string Plover = "plover-saloon";

    private static readonly ImmutableArray<string> Done = ["s01-take-in", "s02-strip", "s03-old-out", "s04-trial"];

    // Who is in when the story begins, beside those who say so themselves.
    private static readonly ImmutableArray<string> InAlready = ["marit", "oskar", "jarle", "bela", "petra"];

    /// <summary>Makes the shop in an empty folder; its past lies before now.</summary>
    public static async Task<StoryShop> Make(string folder)
    {
        await using var shop = RunningShop.Open(folder, TimeProvider.System);
        var now = shop.Clock.GetUtcNow();
        var begins = now.AddDays(-45);
        var door = DemoShop.DoorOf(shop.Runner, shop.Clock);
        await Seeds.Demo.SetUp(door, begins, now);
        await Send(shop, "oskar", new TakeInCar("Heron coupe", Seeds.MidEngine, "bay-1") { Car = Heron });
        await Send(shop, "oskar", new TakeInCar("Plover saloon", Seeds.MidEngine, "bay-2") { Car = Plover });
        await Carry(door, begins, now);
        await Ready(shop, now);
        foreach (var (person, pin) in Seeds.Demo.Pins) new PinBook(shop.Database, TimeProvider.System).Set(person, pin);
        return new(Seeds.Demo.Pins, new WallLinks(shop.Database, TimeProvider.System).Make("the story's wall"), shop.Runner.State);
    }

    private static async Task Carry(CrewDoor door, DateTimeOffset begins, DateTimeOffset now)
    {
        var orders = new CrewOrders { Seed = 11, Cars = [new(Heron) { Reach = Done }, new(Plover) { Reach = ["mount-torque"] }] };
        var report = await new ScriptedCrew(door, orders, begins).CarryOn();
        Assert.Empty(report.Open);
        Assert.True(report.Until < now.AddHours(-14), $"The past is not over by {report.Until:u}.");
    }

    /// <summary>Every part of the car is on the shelf and right; the night is over.</summary>
    private static async Task Ready(RunningShop shop, DateTimeOffset now)
    {
        foreach (var part in shop.Runner.State.Cars[Heron].Parts.Values.Where(p => p.Status != PartStatus.CheckedRight).ToArray())
        {
            if (part.Status is not PartStatus.Ordered) await Send(shop, "oskar", new OrderPart(part.Id, shop.Runner.Now) { Car = Heron });
            await Send(shop, "inga", new ArrivePart(part.Id, "shelf H") { Car = Heron });
            await Send(shop, "inga", new CheckPart(part.Id, true, null) { Car = Heron });
        }

        foreach (var person in shop.Runner.State.People.Values.Where(p => p.IsIn)) await Send(shop, person.Id, new GoOut(person.Id));
        shop.Clock.Set(now);
        foreach (var person in InAlready) await Send(shop, person, new ComeIn(person));
    }

    private static async Task Send(RunningShop shop, string actor, Command command)
    {
        var outcome = await shop.Runner.Send(new(Guid.CreateVersion7(), actor, shop.Runner.Now, null, command));
        Assert.True(outcome is Outcome.Accepted, $"{actor}, {command.GetType().Name}: {outcome}");
    }
}

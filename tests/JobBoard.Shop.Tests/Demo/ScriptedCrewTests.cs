using JobBoard.Domain.Entries;
using JobBoard.Domain.Work;
using JobBoard.Shop.Demo;

namespace JobBoard.Shop.Tests.Demo;

/// <summary>The template is workable, and the crew that proves it can be told how far to go.</summary>
public class ScriptedCrewTests(ITestOutputHelper output)
{
    [Fact]
    public async Task Car_goes_from_take_in_to_handover()
    {
        var (shop, monday) = await Seeds.WithOneCar("heron");
        var crew = new ScriptedCrew(shop.Door, new() { Cars = [new("heron")] }, monday);

        var report = await crew.CarryOn();

        output.WriteLine($"{report.Commands} commands, {shop.Entries.Count} entries, {monday:d} to {report.Until:d}");
        output.WriteLine(string.Join(", ", report.Kinds.Select(k => $"{k.Key} {k.Value}")));
        Assert.Empty(report.Open);
        var car = shop.State.Cars["heron"];
        Assert.All(car.Tasks.Values, t => Assert.True(t is { Status: WorkStatus.SignedOff, Lapsed: false }, t.Id));
        Assert.All(car.Holds.Values, h => Assert.True(h is { Released: { LapsedBy: null or { TakenAgainBy: not null } } }, h.Id));
        Assert.All(car.Plan.Items, i => Assert.Equal(i.AsForTheRoad, car.Items[i.Id].Condition));
        Assert.Empty(car.Standing);
        Assert.DoesNotContain(shop.Entries, e => e.Fact is StopRaised);
    }

    [Fact]
    public async Task Nothing_beyond_the_named_hold_is_begun()
    {
        var (shop, monday) = await Seeds.WithOneCar("heron");
        var crew = new ScriptedCrew(shop.Door, new() { Cars = [new("heron") { Reach = ["s03-old-out"], Short = ["hold-old-let-go"] }] }, monday);

        var report = await crew.CarryOn();

        Assert.Empty(report.Open);
        var car = shop.State.Cars["heron"];
        Assert.Equal(WorkStatus.SignedOff, car.Tasks["old-raise"].Status);
        Assert.Null(car.Holds["hold-old-let-go"].Released);
        Assert.Equal(WorkStatus.NotStarted, car.Tasks["old-let-go"].Status);
        Assert.Equal("hanging", car.Items["old-engine"].Condition);
    }

    [Fact]
    public async Task Same_seed_gives_the_same_commands()
    {
        var (one, other) = (await UntilWednesday(3), await UntilWednesday(3));

        Assert.Equal(one.Accepted.Select(c => (c.At, c.Envelope.Actor, c.Envelope.Command.GetType())), other.Accepted.Select(c => (c.At, c.Envelope.Actor, c.Envelope.Command.GetType())));
        Assert.NotEqual(one.Accepted.Select(c => c.At), (await UntilWednesday(4)).Accepted.Select(c => c.At));
    }

    [Fact]
    public async Task Work_is_left_for_the_night_in_hand_by_nobody()
    {
        var shop = await UntilWednesday(1, "2026-03-04T02:00Z");

        Assert.All(shop.State.People.Values, p => Assert.False(p.IsIn, p.Id));
        Assert.All(shop.State.Cars["heron"].Tasks.Values.Where(t => t.Status == WorkStatus.InHand), t => Assert.Equal("battery-charge", t.Id));
        Assert.Contains(shop.State.Cars["heron"].Tasks.Values, t => t.Status == WorkStatus.PartDone);
    }

    private static async Task<ShopInMemory> UntilWednesday(int seed, string until = "2026-03-04T10:00Z")
    {
        var (shop, monday) = await Seeds.WithOneCar("heron");
        await new ScriptedCrew(shop.Door, new() { Cars = [new("heron")], Seed = seed }, monday)
            .CarryOn(DateTimeOffset.Parse(until, System.Globalization.CultureInfo.InvariantCulture));
        return shop;
    }
}

using JobBoard.Domain.Entries;
using JobBoard.Domain.Work;
using JobBoard.Shop.Demo;

namespace JobBoard.Shop.Tests.Demo;

public class ScriptedCrewTests(ITestOutputHelper output)
{
    [Fact]
    public async Task Car_goes_from_take_in_to_handover_by_commands()
    {
        var (shop, monday) = await Seeds.WithOneCar("heron");
        var crew = new ScriptedCrew(shop.Door, new() { Cars = [new("heron")] }, monday);
        var cpu = Environment.CpuUsage.TotalTime;

        var report = await crew.CarryOn();

        output.WriteLine($"{report.Commands} commands, {shop.Entries.Count} entries, {monday:d} to {report.Until:d}, {(Environment.CpuUsage.TotalTime - cpu).TotalMilliseconds:0} ms of processor");
        output.WriteLine(string.Join(", ", report.Kinds.Select(k => $"{k.Key} {k.Value}")));
        foreach (var open in report.Open) output.WriteLine(open);
        Assert.Empty(report.Open);
        var car = shop.State.Cars["heron"];
        Assert.All(car.Tasks.Values, t => Assert.Equal(WorkStatus.SignedOff, t.Status));
        Assert.All(car.Holds.Values, h => Assert.NotNull(h.Released));
        Assert.All(car.Plan.Items, i => Assert.Equal(i.AsForTheRoad, car.Items[i.Id].Condition));
        Assert.DoesNotContain(shop.Entries, e => e.Fact is StopRaised);
    }
}

public class DemoShopTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData("2026-03-04T10:30")]
    public async Task Demo_is_loaded_whatever_the_hour(string now)
    {
        var shop = new ShopInMemory();
        var cpu = Environment.CpuUsage.TotalTime;

        var report = await Seeds.Demo.Load(shop.Door, DateTimeOffset.Parse(now + "+01:00", System.Globalization.CultureInfo.InvariantCulture));

        output.WriteLine($"{report.Commands} commands, {shop.Entries.Count} entries, {(Environment.CpuUsage.TotalTime - cpu).TotalMilliseconds:0} ms of processor");
        output.WriteLine(string.Join(", ", report.Kinds.Select(k => $"{k.Key} {k.Value}")));
        foreach (var car in shop.State.Cars.Values)
            output.WriteLine($"{car.Name}: from {car.TakenInAt:ddd d HH:mm} last {shop.Entries.Where(e => e.Stream == car.Id).Max(e => e.OccurredAt):ddd d HH:mm}");
    }
}

using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Running;
using JobBoard.Web.Hosting;
using JobBoard.Web.SignIn;

namespace JobBoard.EndToEnd.WhenReady;

/// <summary>A shop with one car whose plan has 500 tasks: a line of about a hundred, and ribs that join it and one another.</summary>
internal static class LargeShop
{
    public const int Tasks = 500;

    public const string Pin = "4711";

    private static readonly string[] Names = ["Bracket", "Fuel line", "Cooling hose", "Loom branch", "Shaft angle", "Earth strap", "Mount bolts", "Leak test"];

    /// <summary>Makes it in an empty folder.</summary>
    public static async Task Make(string folder)
    {
        await using var shop = RunningShop.Open(folder, TimeProvider.System);
        await Send(shop, "ada", new SetPerson("ada", "Ada", Position.Owner));
        await Send(shop, "ada", new SetPlace(new() { Id = "bay-1", Name = "Bay 1", Kind = "bay", Area = new(0, 0, 4, 6) }));
        await Send(shop, "ada", new TakeInCar("Heron coupe", Plan, "bay-1") { Car = "heron" });
        await Send(shop, "ada", new ComeIn("ada"));
        new PinBook(shop.Database, TimeProvider.System).Set("ada", Pin);
    }

    private static Plan Plan => new()
    {
        Id = "large",
        Name = "Large",
        Stages = [.. Enumerable.Range(0, 20).Select(s => new Stage($"s{s}", $"Stage {s}"))],
        Tasks = [.. Enumerable.Range(0, Tasks).Select(i => new PlanTask { Id = $"t{i}", Name = $"{Names[i % 8]} {i}", Stage = $"s{i / 25}", Estimate = Minutes(20 + (i * 37 % 90)) })],
        Links = [.. Enumerable.Range(1, Tasks - 1).SelectMany(Links).Distinct()],
    };

    private static Estimate Minutes(int usual) => new(usual / 2, usual, usual * 2);

    private static IEnumerable<Link> Links(int i)
    {
        yield return new($"t{i}", $"t{Math.Max(0, i - 5 - (i * 7 % 4))}");
        if (i % 3 == 0) yield return new($"t{i}", $"t{Math.Max(0, i - 1 - (i * 11 % 23))}");
    }

    private static async Task Send(RunningShop shop, string actor, Command command)
    {
        var outcome = await shop.Runner.Send(new(Guid.CreateVersion7(), actor, shop.Runner.Now, null, command));
        Assert.True(outcome is Outcome.Accepted, $"{actor}, {command.GetType().Name}: {outcome}");
    }
}

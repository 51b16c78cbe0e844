using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Running;
using JobBoard.Web.Hosting;
using JobBoard.Web.SignIn;

namespace JobBoard.EndToEnd.Servers;

/// <summary>A shop of three people and one car with two tasks, for what needs no more.</summary>
internal static class SmallShop
{
    /// <summary>Everybody's PIN.</summary>
    public const string Pin = "4711";

    /// <summary>Makes it in an empty folder.</summary>
    public static async Task Make(string folder)
    {
        await using var shop = RunningShop.Open(folder, TimeProvider.System);
        await Send(shop, "ada", new SetPerson("ada", "Ada", Position.Owner));
        await Send(shop, "ada", new SetPerson("fritz", "Fritz", Position.Foreman));
        await Send(shop, "ada", new SetPerson("inga", "Inga", Position.Technician));
        await Send(shop, "ada", new SetPlace(new() { Id = "bay-1", Name = "Bay 1", Kind = "bay", Area = new(0, 0, 4, 6) }));
        await Send(shop, "fritz", new TakeInCar("Heron coupe", TwoTasks, "bay-1") { Car = "heron" });
        foreach (var person in new[] { "ada", "fritz", "inga" })
        {
            await Send(shop, person, new ComeIn(person));
            new PinBook(shop.Database, TimeProvider.System).Set(person, Pin);
        }
    }

    private static Plan TwoTasks => new()
    {
        Id = "two",
        Name = "Two tasks",
        Stages = [new("s", "Fuel")],
        Tasks = [new() { Id = "line", Name = "Fuel line", Stage = "s", Estimate = new(30, 60, 90) }, new() { Id = "test", Name = "Leak test", Stage = "s", Estimate = new(30, 60, 90) }],
        Links = [new("test", "line")],
    };

    private static async Task Send(RunningShop shop, string actor, Command command)
    {
        var outcome = await shop.Runner.Send(new(Guid.CreateVersion7(), actor, shop.Runner.Now, null, command));
        Assert.True(outcome is Outcome.Accepted, $"{actor}, {command.GetType().Name}: {outcome}");
    }
}

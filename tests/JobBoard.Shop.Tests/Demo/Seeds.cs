using System.Text.Json;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Demo;

namespace JobBoard.Shop.Tests.Demo;

/// <summary>The seed files of the repository, and a shop of them in memory.</summary>
internal static class Seeds
{
    public static string Folder { get; } = Find();

    private static readonly Lazy<Plan> MidEngine = new(() =>
        JsonSerializer.Deserialize<Plan>(File.ReadAllText(Path.Combine(Folder, "plans", "mid-engine-v8.json")), PlanJson.Options)!);

    public static Plan? Plan(string id) => id == "mid-engine-v8" ? MidEngine.Value : null;

    public static DemoShop Demo => new(Folder, Plan);

    /// <summary>The demo's people and things with one car taken in, at eight on a Monday.</summary>
    public static async Task<(ShopInMemory Shop, DateTimeOffset Monday)> WithOneCar(string car)
    {
        var monday = new DateTimeOffset(2026, 3, 2, 7, 0, 0, TimeSpan.Zero);
        var shop = new ShopInMemory();
        await Demo.SetUp(shop.Door, monday, monday);
        Assert.Empty(shop.Send(new(Guid.NewGuid(), "oskar", monday, null, new Domain.Commands.TakeInCar("A car", MidEngine.Value, "bay-1") { Car = car })));
        return (shop, monday);
    }

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (Directory.Exists(Path.Combine(folder.FullName, "seed-data", "plans"))) return Path.Combine(folder.FullName, "seed-data");
        }

        throw new DirectoryNotFoundException("seed-data is not above the tests.");
    }
}

using JobBoard.Shop.Demo;
using JobBoard.Shop.Running;
using JobBoard.Web.Hosting;
using JobBoard.Web.SignIn;
using JobBoard.Web.Verbs;
using Microsoft.AspNetCore.Builder;

namespace JobBoard.EndToEnd.Servers;

/// <summary>The server in this process, so that the shop's clock can be moved over nights and cures. Sign-ins keep the system's time.</summary>
internal sealed class OwnServer : IAsyncDisposable
{
    private readonly ShopFolder _folder = new();
    private readonly RunningShop _shop;
    private WebApplication _app = default!;

    private OwnServer() => _shop = RunningShop.Open(_folder.Path, TimeProvider.System);

    /// <summary>Where it listens.</summary>
    public Uri Url { get; } = new($"http://127.0.0.1:{Ports.Free()}/");

    /// <summary>The shop as it runs.</summary>
    public ShopRunner Runner => _shop.Runner;

    /// <summary>The token of a wall link.</summary>
    public string Wall { get; private set; } = "";

    /// <summary>Serves the demo's shop without a car, on a Monday at eight.</summary>
    public static async Task<OwnServer> Start()
    {
        var server = new OwnServer();
        var eight = Monday(server._shop);
        await Seeds.Demo.SetUp(DemoShop.DoorOf(server._shop.Runner, server._shop.Clock), eight.AddHours(-1), eight);
        server._shop.Clock.Set(eight);
        foreach (var (person, pin) in Seeds.Demo.Pins) new PinBook(server._shop.Database, TimeProvider.System).Set(person, pin);
        server.Wall = new WallLinks(server._shop.Database, TimeProvider.System).Make("the story's wall");
        server._app = BoardHost.Build(server._shop, new ListenAddress("127.0.0.1", server.Url.Port));
        await server._app.StartAsync();
        return server;
    }

    /// <summary>Moves the shop's time on to an instant; at night to eight in the morning of the next working day.</summary>
    public void GoOnAt(DateTimeOffset at)
    {
        var local = at.UtcDateTime;
        if (local.Hour is < 8 or > 13) local = local.Date.AddDays(local.Hour > 13 ? 1 : 0).AddHours(8);
        while (local.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday) local = local.AddDays(1);
        _shop.Clock.Set(new(local, TimeSpan.Zero));
    }

    private static DateTimeOffset Monday(RunningShop shop)
    {
        var today = shop.Clock.GetUtcNow().UtcDateTime.Date;
        return new(today.AddDays(-(((int)today.DayOfWeek + 6) % 7)).AddHours(8), TimeSpan.Zero);
    }

    public async ValueTask DisposeAsync()
    {
        if (_app is not null) await _app.DisposeAsync();
        await _shop.DisposeAsync();
        _folder.Dispose();
    }
}

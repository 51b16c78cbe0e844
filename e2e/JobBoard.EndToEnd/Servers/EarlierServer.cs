using JobBoard.Web.Hosting;
using JobBoard.Web.Verbs;
using Microsoft.AspNetCore.Builder;

namespace JobBoard.EndToEnd.Servers;

/// <summary>The server of a quarter of an hour ago, on the same folder and port: who signs in on it gave their PIN then.</summary>
internal sealed class EarlierServer : IAsyncDisposable
{
    private readonly RunningShop _shop;
    private readonly WebApplication _app;

    private EarlierServer(RunningShop shop, WebApplication app) => (_shop, _app) = (shop, app);

    /// <summary>Starts it.</summary>
    public static async Task<EarlierServer> Start(string folder, int port)
    {
        var shop = RunningShop.Open(folder, new ShiftedTime(TimeSpan.FromMinutes(-15)));
        var app = BoardHost.Build(shop, new ListenAddress("127.0.0.1", port));
        await app.StartAsync();
        return new(shop, app);
    }

    public async ValueTask DisposeAsync()
    {
        await _app.DisposeAsync();
        await _shop.DisposeAsync();
    }
}

using JobBoard.EndToEnd.Servers;

namespace JobBoard.EndToEnd.Pages;

/// <summary>The demo, started once for the tests that only look at it.</summary>
public sealed class DemoShop : IAsyncDisposable
{
    private readonly Lazy<Task<Server>> _server = new(() => EndToEnd.Servers.Server.Demo());

    /// <summary>The server.</summary>
    internal Task<Server> Server => _server.Value;

    /// <summary>Ends it.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_server.IsValueCreated && _server.Value.IsCompletedSuccessfully) await (await _server.Value).DisposeAsync();
    }
}

/// <summary>Tests that look at the demo.</summary>
[CollectionDefinition(Name)]
public sealed class DemoShopTests : ICollectionFixture<DemoShop>
{
    /// <summary>Its name.</summary>
    public const string Name = "demo";
}

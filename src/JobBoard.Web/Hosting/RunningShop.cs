using JobBoard.Domain.Rules;
using JobBoard.Shop.Running;
using JobBoard.Storage;
using JobBoard.Storage.History;

namespace JobBoard.Web.Hosting;

/// <summary>The shop this server runs, opened with the full rules and all history.</summary>
public sealed class RunningShop : IAsyncDisposable
{
    private readonly OpenShop _open;

    private RunningShop(OpenShop open, TimeProvider system) => (_open, SystemClock) = (open, system);

    /// <summary>Takes commands and shows the committed state.</summary>
    public ShopRunner Runner => _open.Runner;

    /// <summary>The shop's time.</summary>
    public ShopClock Clock => _open.Clock;

    /// <summary>The system's time: sign-in, heartbeats, timers.</summary>
    public TimeProvider SystemClock { get; }

    /// <summary>PINs, tokens and devices are kept here too.</summary>
    public ShopDatabase Database => _open.Database;

    /// <summary>The data folder.</summary>
    public string Folder => _open.Folder.Path;

    /// <summary>Opens the shop in a folder.</summary>
    public static RunningShop Open(string folder, TimeProvider system) =>
        new(OpenShop.Open(folder, RuleBook.Full, system, Evaluation.NextChangeAt, Histories.All), system);

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => _open.DisposeAsync();
}

using System.Globalization;
using JobBoard.Shop.Demo;
using JobBoard.Web.Hosting;

namespace JobBoard.Web.Verbs;

/// <summary><c>--demo-pace N</c>: the demo played on beside the server.</summary>
internal sealed class DemoPace : IAsyncDisposable
{
    private static readonly TimeSpan ComesAgain = TimeSpan.FromSeconds(5);

    private readonly CancellationTokenSource _stopping = new();
    private readonly Task _playing;

    private DemoPace(Func<CancellationToken, Task> play) => _playing = Task.Run(() => play(_stopping.Token));

    /// <summary>The pace asked for, or nothing.</summary>
    /// <exception cref="CommandLineException">It is no whole number from 1 to <see cref="PacedCrew.Fastest"/>, or there is no demo.</exception>
    public static int? Read(string? text, bool demo)
    {
        if (text is null) return null;
        if (!demo) throw new CommandLineException("--demo-pace is for the demo alone: give --demo too, or leave it out.");
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var pace) && pace is >= 1 and <= PacedCrew.Fastest
            ? pace
            : throw new CommandLineException(string.Create(CultureInfo.InvariantCulture, $"--demo-pace {text}: give a whole number from 1 to {PacedCrew.Fastest}, how many times as fast the demo's time runs, such as 60."));
    }

    /// <summary>Begins to play.</summary>
    public static DemoPace Play(WebApplication app, RunningShop shop, DemoShop demo, int pace)
    {
        var crew = new PacedCrew(shop.Runner, shop.Clock, shop.SystemClock);
        return new(stopping => Play(crew, demo, pace, app.Services.GetRequiredService<ILogger<DemoPace>>(), stopping));
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _stopping.CancelAsync().ConfigureAwait(false);
        await _playing.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _stopping.Dispose();
    }

    // What people do meanwhile may be nothing the crew was written for: then it looks at everything anew.
    private static async Task Play(PacedCrew crew, DemoShop demo, int pace, ILogger log, CancellationToken stopping)
    {
        while (!stopping.IsCancellationRequested)
        {
            try
            {
                await crew.Play(demo.CarryOn(), pace, stopping).ConfigureAwait(false);
                return;
            }
            catch (Exception e) when (e is not OperationCanceledException)
            {
                log.LogWarning(e, "The demo's crew could not go on, and looks again.");
                await Task.Delay(ComesAgain, stopping).ConfigureAwait(false);
            }
        }
    }
}

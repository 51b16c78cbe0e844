using System.Collections.Concurrent;
using System.Threading.Channels;
using JobBoard.Shop.Running;
using JobBoard.Storage;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.SignalR;

namespace JobBoard.Web.Live;

/// <summary>
/// Pushes what changed. On the bare signal it takes one picture, renders each watched fragment once per audience and sends
/// those that look different, at most three times a second; signals in between are one. A heartbeat follows, so that every
/// screen knows how far it has been told, whether it shows any of it or not. It never holds up the writer.
/// </summary>
public sealed class LivePublisher(ShopRunner runner, Fragments fragments, IHubContext<LiveHub> hub, Doorkeeper door, CustomerLinks customers, TimeProvider clock, ShopClock shopClock, ILogger<LivePublisher> log) : BackgroundService
{
    /// <summary>Time between two pushes.</summary>
    public static readonly TimeSpan Spacing = TimeSpan.FromMilliseconds(334);

    /// <summary>Time between two heartbeats.</summary>
    public static readonly TimeSpan BeatEvery = TimeSpan.FromSeconds(2);

    private readonly Channel<bool> _signals = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private readonly ConcurrentDictionary<string, Watch> _watches = new(StringComparer.Ordinal);
    private long _pushedSeq;

    /// <summary>Which build this is: a page of another one loads itself again.</summary>
    public static string Build { get; } = typeof(LivePublisher).Assembly.ManifestModule.ModuleVersionId.ToString("N");

    /// <summary>What a heartbeat says now.</summary>
    public Beat Beat => new(runner.JournalId, Build, Interlocked.Read(ref _pushedSeq), runner.Now.ToUnixTimeMilliseconds(), shopClock.Pace);

    /// <summary>Begins to watch a fragment for one more connection, and gives it as it is now.</summary>
    internal async Task<FragmentPush> Join(FragmentId id, string connection)
    {
        var watch = Enter(id);
        var (now, changed) = await watch.Render(fragments, fragments.Picture()).ConfigureAwait(false);
        if (changed) _ = Logged(hub.Clients.GroupExcept(now.Id, connection).SendAsync("fragment", now));
        return now;
    }

    /// <summary>One connection less.</summary>
    internal void Leave(FragmentId id)
    {
        if (_watches.TryGetValue(id.ToString(), out var watch)) watch.Leave();
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        runner.HeadMoved += Signal;
        customers.Withdrawn += Signal;
        var beats = BeatOn(stoppingToken);
        try
        {
            Interlocked.Exchange(ref _pushedSeq, runner.State.Seq);
            while (await _signals.Reader.WaitToReadAsync(stoppingToken).ConfigureAwait(false))
            {
                _signals.Reader.TryRead(out _);
                await Push().ConfigureAwait(false);
                await Task.Delay(Spacing, clock, stoppingToken).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // The server ends.
        }
        finally
        {
            runner.HeadMoved -= Signal;
            customers.Withdrawn -= Signal;
            await beats.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private Watch Enter(FragmentId id)
    {
        while (true)
        {
            var watch = _watches.GetOrAdd(id.ToString(), _ => new Watch(id));
            if (watch.TryEnter()) return watch;
            _watches.TryRemove(KeyValuePair.Create(id.ToString(), watch));
        }
    }

    private void Signal() => _signals.Writer.TryWrite(true);

    private async Task Push()
    {
        var picture = fragments.Picture();
        List<Task> sends = [];
        foreach (var (key, watch) in _watches.OrderBy(w => w.Value.Took))
        {
            if (watch.CloseIfEmpty()) _watches.TryRemove(KeyValuePair.Create(key, watch));
            else if (await Changed(watch, picture).ConfigureAwait(false) is { } now) sends.Add(Send(now));
        }

        // Not awaited: a viewer that does not read is cut off after two seconds and holds up nobody.
        _ = Logged(BeatAfter(sends, picture.Head.Seq));
    }

    private async Task BeatAfter(List<Task> sends, long seq)
    {
        await Task.WhenAll(sends).ConfigureAwait(false);
        long before;
        do
        {
            before = Interlocked.Read(ref _pushedSeq);
            if (before >= seq) return;
        }
        while (Interlocked.CompareExchange(ref _pushedSeq, seq, before) != before);

        await hub.Clients.All.SendAsync("beat", Beat).ConfigureAwait(false);
    }

    private async Task<FragmentPush?> Changed(Watch watch, Picture picture)
    {
        try
        {
            var (now, changed) = await watch.Render(fragments, picture).ConfigureAwait(false);
            return changed ? now : null;
        }
        catch (Exception error) when (error is not OperationCanceledException)
        {
            // One fragment that cannot be rendered must not darken the others.
            log.LogError(error, "Fragment {Fragment} could not be rendered at entry {Seq}.", watch.Id, picture.Head.Seq);
            return null;
        }
    }

    private Task Send(FragmentPush push) => Logged(hub.Clients.Group(push.Id).SendAsync("fragment", push));

    private async Task BeatOn(CancellationToken stopping)
    {
        using var every = new PeriodicTimer(BeatEvery);
        while (await every.WaitForNextTickAsync(stopping).ConfigureAwait(false))
        {
            _ = Logged(hub.Clients.All.SendAsync("beat", Beat, stopping));
            LookAtDoor();
        }
    }

    private void LookAtDoor()
    {
        try
        {
            door.Look();
        }
        catch (StorageException error)
        {
            log.LogError(error, "Sign-ins could not be looked at.");
        }
    }

    private async Task Logged(Task sending)
    {
        try
        {
            await sending.ConfigureAwait(false);
        }
        catch (Exception error) when (error is OperationCanceledException or IOException or InvalidOperationException)
        {
            log.LogDebug(error, "A push did not reach a viewer.");
        }
    }
}

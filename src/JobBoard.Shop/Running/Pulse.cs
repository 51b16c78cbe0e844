using JobBoard.Domain.Boards;

namespace JobBoard.Shop.Running;

/// <summary>
/// Wakes the shop when time alone changes its picture: a lag runs out, a qualification expires, the shop opens.
/// One timer, re-set at every entry, that raises the same bare signal as an entry does.
/// </summary>
public sealed class Pulse : IDisposable
{
    /// <summary>Woken at least this often: work in hand grows older on the screens.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromSeconds(30);

    private static readonly TimeSpan Shortest = TimeSpan.FromMilliseconds(200);

    private readonly ShopRunner _runner;
    private readonly Func<ShopState, DateTimeOffset, DateTimeOffset?> _nextChange;
    private readonly ITimer _timer;

    /// <summary>Starts at once.</summary>
    /// <param name="runner">The shop.</param>
    /// <param name="nextChange">When time alone next changes the picture, or nothing.</param>
    /// <param name="systemClock">Runs the timer.</param>
    public Pulse(ShopRunner runner, Func<ShopState, DateTimeOffset, DateTimeOffset?> nextChange, TimeProvider systemClock)
    {
        (_runner, _nextChange) = (runner, nextChange);
        _timer = systemClock.CreateTimer(_ => Wake(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        _runner.HeadMoved += Reset;
        Reset();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _runner.HeadMoved -= Reset;
        _timer.Dispose();
    }

    // The signal itself sets the timer again.
    private void Wake() => _runner.Signal();

    private void Reset()
    {
        var now = _runner.Now;
        var wait = (_nextChange(_runner.State, now) ?? DateTimeOffset.MaxValue) - now;
        _timer.Change(wait < Shortest ? Shortest : wait > Longest ? Longest : wait, Timeout.InfiniteTimeSpan);
    }
}

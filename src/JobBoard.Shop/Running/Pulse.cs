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

    /// <summary>After an entry the next change is looked for this much later, on the timer's thread and not on the writer's.</summary>
    public static readonly TimeSpan Settle = TimeSpan.FromMilliseconds(20);

    private static readonly TimeSpan Shortest = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan LongestAtAPace = TimeSpan.FromSeconds(1);

    private readonly ShopRunner _runner;
    private readonly Func<ShopState, DateTimeOffset, DateTimeOffset?> _nextChange;
    private readonly Func<int> _pace;
    private readonly ITimer _timer;
    private readonly Lock _setting = new();
    private DateTimeOffset _pictured;
    private bool _asked;

    /// <summary>Starts at once.</summary>
    /// <param name="runner">The shop.</param>
    /// <param name="nextChange">When time alone next changes the picture, or nothing.</param>
    /// <param name="systemClock">Runs the timer.</param>
    /// <param name="pace">How many times as fast the shop's time runs; 1 when left out.</param>
    public Pulse(ShopRunner runner, Func<ShopState, DateTimeOffset, DateTimeOffset?> nextChange, TimeProvider systemClock, Func<int>? pace = null)
    {
        (_runner, _nextChange, _pace) = (runner, nextChange, pace ?? (() => 1));
        _timer = systemClock.CreateTimer(_ => Wake(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        _runner.HeadMoved += Ask;
        Ask();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _runner.HeadMoved -= Ask;
        _timer.Dispose();
    }

    private void Ask()
    {
        lock (_setting)
        {
            (_pictured, _asked) = (_runner.Now, true);
            _timer.Change(Settle, Timeout.InfiniteTimeSpan);
        }
    }

    private void Wake()
    {
        DateTimeOffset pictured;
        lock (_setting)
        {
            if (_asked) (pictured, _asked) = (_pictured, false);
            else pictured = default;
        }

        if (pictured == default) _runner.Signal();
        else Set(pictured);
    }

    // Counted from the last picture, so that what fell due meanwhile is not lost.
    private void Set(DateTimeOffset pictured)
    {
        var pace = _pace();
        var wait = ((_nextChange(_runner.State, pictured) ?? DateTimeOffset.MaxValue) - _runner.Now) / pace;
        var longest = pace == 1 ? Longest : LongestAtAPace;
        lock (_setting)
        {
            if (!_asked) _timer.Change(wait < Shortest ? Shortest : wait > longest ? longest : wait, Timeout.InfiniteTimeSpan);
        }
    }
}

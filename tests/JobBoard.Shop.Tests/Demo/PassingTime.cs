using Microsoft.Extensions.Time.Testing;

namespace JobBoard.Shop.Tests.Demo;

/// <summary>System time in which a wait is over at once: it goes on by what is waited for. It can be held where something has come about.</summary>
internal sealed class PassingTime(DateTimeOffset now) : FakeTimeProvider(now)
{
    private readonly Lock _gate = new();
    private TaskCompletionSource _goes = Gone();
    private TaskCompletionSource _reached = Gone();
    private Func<bool>? _until;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = base.CreateTimer(callback, state, dueTime, period);
        if (dueTime > TimeSpan.Zero) _ = Task.Run(() => Pass(dueTime));
        return timer;
    }

    /// <summary>Goes on until something has come about, and stands there until it is told to go on.</summary>
    public Task Until(Func<bool> holds)
    {
        lock (_gate)
        {
            (_until, _reached) = (holds, new(TaskCreationOptions.RunContinuationsAsynchronously));
            _goes.TrySetResult();
            return _reached.Task.WaitAsync(TimeSpan.FromMinutes(3));
        }
    }

    /// <summary>Goes on for so long.</summary>
    public Task For(TimeSpan span)
    {
        var from = GetUtcNow();
        return Until(() => GetUtcNow() - from >= span);
    }

    /// <summary>Goes on for good.</summary>
    public void GoOn()
    {
        lock (_gate)
        {
            _until = null;
            _goes.TrySetResult();
        }
    }

    private async Task Pass(TimeSpan span)
    {
        Task goes;
        lock (_gate)
        {
            if (_until?.Invoke() == true)
            {
                (_until, _goes) = (null, new(TaskCreationOptions.RunContinuationsAsynchronously));
                _reached.TrySetResult();
            }

            goes = _goes.Task;
        }

        await goes;
        Advance(span);
    }

    private static TaskCompletionSource Gone()
    {
        var gone = new TaskCompletionSource();
        gone.SetResult();
        return gone;
    }
}

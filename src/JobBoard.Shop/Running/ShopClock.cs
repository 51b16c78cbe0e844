namespace JobBoard.Shop.Running;

/// <summary>
/// The shop's time: the system's, moved by a fixed amount. A real shop's is not moved; the demo shop's stands on the day it
/// was written for, is moved on by hand while its past is loaded, and may run at a pace.
/// </summary>
public sealed class ShopClock(TimeProvider system) : TimeProvider
{
    private volatile Course _course = Course.As(system.GetUtcNow());
    private long _heldTicks;

    /// <inheritdoc/>
    public override TimeZoneInfo LocalTimeZone => system.LocalTimeZone;

    /// <inheritdoc/>
    public override long TimestampFrequency => system.TimestampFrequency;

    /// <summary>Sets the shop's time to an instant; it runs on from there.</summary>
    public void Set(DateTimeOffset now) => Steer(now, Pace);

    /// <summary>How many times as fast as the system's it runs, 1 or more.</summary>
    public int Pace => _course.Pace;

    /// <summary>Runs on from the present instant at a pace.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is less than 1.</exception>
    public void RunAt(int pace)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pace, 1);
        Steer(GetUtcNow(), pace);
    }

    /// <summary>Sets the shop's time to an instant and holds it there until it is set or held again.</summary>
    public void Hold(DateTimeOffset now) => Interlocked.Exchange(ref _heldTicks, now.UtcTicks);

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => Interlocked.Read(ref _heldTicks) is > 0 and var held
        ? new DateTimeOffset(held, TimeSpan.Zero)
        : _course.At(system.GetUtcNow());

    /// <inheritdoc/>
    public override long GetTimestamp() => system.GetTimestamp();

    /// <inheritdoc/>
    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        system.CreateTimer(callback, state, dueTime, period);

    private void Steer(DateTimeOffset now, int pace)
    {
        _course = new(now, system.GetUtcNow(), pace);
        Interlocked.Exchange(ref _heldTicks, 0);
    }

    /// <summary>Where the shop's time was at an instant of the system's, and how fast it goes from there.</summary>
    private sealed record Course(DateTimeOffset From, DateTimeOffset Since, int Pace)
    {
        public static Course As(DateTimeOffset system) => new(system, system, 1);

        public DateTimeOffset At(DateTimeOffset system) => From + ((system - Since) * Pace);
    }
}

namespace JobBoard.Shop.Running;

/// <summary>
/// The shop's time: the system's, moved by a fixed amount. A real shop's is not moved; the demo shop's stands on the day it
/// was written for, and is moved on by hand while its past is loaded.
/// </summary>
public sealed class ShopClock(TimeProvider system) : TimeProvider
{
    private long _movedTicks;
    private long _heldTicks;

    /// <inheritdoc/>
    public override TimeZoneInfo LocalTimeZone => system.LocalTimeZone;

    /// <inheritdoc/>
    public override long TimestampFrequency => system.TimestampFrequency;

    /// <summary>Sets the shop's time to an instant; it runs on from there.</summary>
    public void Set(DateTimeOffset now)
    {
        Interlocked.Exchange(ref _movedTicks, (now - system.GetUtcNow()).Ticks);
        Interlocked.Exchange(ref _heldTicks, 0);
    }

    /// <summary>Sets the shop's time to an instant and holds it there until it is set or held again.</summary>
    public void Hold(DateTimeOffset now) => Interlocked.Exchange(ref _heldTicks, now.UtcTicks);

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => Interlocked.Read(ref _heldTicks) is > 0 and var held
        ? new DateTimeOffset(held, TimeSpan.Zero)
        : system.GetUtcNow() + TimeSpan.FromTicks(Interlocked.Read(ref _movedTicks));

    /// <inheritdoc/>
    public override long GetTimestamp() => system.GetTimestamp();

    /// <inheritdoc/>
    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        system.CreateTimer(callback, state, dueTime, period);
}

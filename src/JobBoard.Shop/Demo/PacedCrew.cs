using JobBoard.Shop.Running;

namespace JobBoard.Shop.Demo;

/// <summary>
/// Plays the demo on while people look and work in it: the shop's clock runs at a pace, and a scripted crew sends commands when
/// it is their time. Where nothing is to be done for a while the clock goes on to where there is; while the crew waits for other
/// people it does so over closed hours alone. When the crew is done the clock runs as the system's.
/// </summary>
/// <param name="runner">The shop.</param>
/// <param name="clock">Its clock.</param>
/// <param name="system">The system's time: how long people look on.</param>
public sealed class PacedCrew(ShopRunner runner, ShopClock clock, TimeProvider system)
{
    /// <summary>The fastest pace.</summary>
    public const int Fastest = 3600;

    /// <summary>So long nothing happens, in the system's time, before the shop's clock goes on.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    private static readonly TimeSpan Step = TimeSpan.FromMilliseconds(100);

    // A delay of less is none.
    private static readonly TimeSpan Shortest = TimeSpan.FromMilliseconds(1);

    /// <summary>Carries the cars on until the first is where it is to be.</summary>
    /// <param name="orders">What to do, among others.</param>
    /// <param name="pace">How many times as fast the shop's time runs, 1 to <see cref="Fastest"/>.</param>
    /// <param name="stopping">Ends it where it is.</param>
    /// <returns>What the crew did.</returns>
    public async Task<CrewReport> Play(CrewOrders orders, int pace, CancellationToken stopping)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(pace, Fastest);
        clock.RunAt(pace);
        try
        {
            var door = new CrewDoor(() => runner.State, e => DemoShop.Send(runner, e), _ => { }) { Wait = (to, why) => Wait(to, why, stopping) };
            return await new ScriptedCrew(door, orders with { AmongOthers = true }, runner.Now).CarryOn().ConfigureAwait(false);
        }
        finally
        {
            clock.RunAt(1);
        }
    }

    private async Task<DateTimeOffset> Wait(DateTimeOffset to, CrewWait why, CancellationToken stopping)
    {
        var (seq, begun) = (runner.State.Seq, system.GetTimestamp());
        while (true)
        {
            stopping.ThrowIfCancellationRequested();
            var now = runner.Now;
            if (now >= to || (why != CrewWait.Pause && runner.State.Seq != seq)) return now;
            var left = (to - now) / clock.Pace;
            if (why == CrewWait.NothingToDo && left > Step && system.GetElapsedTime(begun) >= Patience) GoOnTo(to);
            else await Task.Delay(left > Step ? Step : left < Shortest ? Shortest : left, system, stopping).ConfigureAwait(false);
        }
    }

    private void GoOnTo(DateTimeOffset to)
    {
        clock.Set(to);
        runner.Signal();
    }
}

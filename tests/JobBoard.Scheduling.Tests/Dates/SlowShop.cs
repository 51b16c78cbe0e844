namespace JobBoard.Scheduling.Tests;

/// <summary>
/// A shop's hours as one yes or no per half minute from a Monday in UTC: the slow, plain counterpart of the calendar. Asks the
/// zone for the wall clock of every half minute instead of turning openings into instants.
/// </summary>
internal sealed class SlowShop
{
    public const int Step = 30;

    private readonly bool[] open;
    private readonly int[] before;
    private readonly List<int> worked = [];

    public SlowShop(DateTimeOffset from, int days, TimeZoneInfo zone, Func<DateTime, bool> isOpen)
    {
        Start = from.ToUnixTimeSeconds();
        open = new bool[days * 86400 / Step];
        before = new int[open.Length + 1];
        for (var i = 0; i < open.Length; i++)
        {
            open[i] = isOpen(TimeZoneInfo.ConvertTime(from.AddSeconds((long)i * Step), zone).DateTime);
            before[i + 1] = before[i] + (open[i] ? 1 : 0);
            if (open[i])
                worked.Add(i);
        }
    }

    public long Start { get; }

    public int Length => open.Length;

    public int Tick(long instant) => (int)((instant - Start) / Step);

    public long Instant(int tick) => Start + (long)tick * Step;

    public bool IsOpen(int tick) => open[tick];

    public int Worked(int from, int to) => before[to] - before[from];

    /// <summary>The first tick, not before this one, at which work goes on.</summary>
    public int NextOpen(int tick) => worked[before[tick]];

    /// <summary>The first tick, not before this one, that is in shop hours, closing included.</summary>
    public int InHours(int tick) => tick > 0 && open[tick - 1] ? tick : NextOpen(tick);

    /// <summary>The first tick at which this much work is behind, counted from the tick; back in time if negative.</summary>
    public int After(int tick, int work) => work == 0 ? tick : worked[before[tick] + work - 1] + 1;
}

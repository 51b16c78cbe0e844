using System.Diagnostics;

namespace JobBoard.Benchmarks;

/// <summary>Runs two things by turns, so that both meet the same machine, and keeps the medians.</summary>
internal static class Timing
{
    /// <param name="first">What is measured.</param>
    /// <param name="second">What it is measured against.</param>
    /// <param name="seconds">How long to measure, after a warm-up of as long; at least 15 runs of each.</param>
    public static (Spread First, Spread Second) ByTurns(Action first, Action second, double seconds)
    {
        Sample(first, second, seconds);
        var (one, other) = Sample(first, second, seconds);
        return (Spread.Of(one), Spread.Of(other));
    }

    private static (List<double> First, List<double> Second) Sample(Action first, Action second, double seconds)
    {
        var (one, other) = (new List<double>(), new List<double>());
        var all = Stopwatch.StartNew();
        while (all.Elapsed.TotalSeconds < seconds || one.Count < 15)
        {
            one.Add(Milliseconds(first));
            other.Add(Milliseconds(second));
        }

        return (one, other);
    }

    private static double Milliseconds(Action run)
    {
        var began = Stopwatch.GetTimestamp();
        run();
        return Stopwatch.GetElapsedTime(began).TotalMilliseconds;
    }
}

/// <summary>Median and quartiles of repeated runs, in milliseconds.</summary>
internal readonly record struct Spread(double Low, double Median, double High, int Runs)
{
    public static Spread Of(List<double> runs)
    {
        runs.Sort();
        return new Spread(runs[runs.Count / 4], runs[runs.Count / 2], runs[runs.Count * 3 / 4], runs.Count);
    }

    public override string ToString() => FormattableString.Invariant($"{Median:F4} ms (quartiles {Low:F4} to {High:F4}, {Runs} runs)");
}

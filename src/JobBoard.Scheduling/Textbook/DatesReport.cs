namespace JobBoard.Scheduling;

/// <summary>A network with its dates, ready to be printed.</summary>
internal sealed record DatesReport(PlainNetwork Network, TimeScale Scale, Dates Dates, IReadOnlyList<ChainStep> Chain)
{
    /// <summary>Sum of the variances along the chain that sets the date, in the printed unit squared.</summary>
    public decimal ChainVariance => Chain.Sum(step => Variance(step.Task) ?? 0);

    public static DatesReport? Make(PlainNetwork network, TimeScale scale, long? given, List<InputFault> faults)
    {
        var links = Links(network, scale, faults);
        var work = network.Tasks.Select(task => Whole(scale.Work(task.SixTimes, task.Unit), PlainNetworkFiles.TasksFile, task.Line, "duration", faults)).ToArray();
        if (faults.Count > 0)
            return null;
        if (!JobBoard.Scheduling.Network.TryBuild(work.Length, links, out var built, out var ring))
            faults.Add(Ring(network, ring));
        else if (Compute(built!, work, scale, given, faults) is { } dates)
            return new DatesReport(network, scale, dates, dates.Chain());
        return null;
    }

    /// <summary>Variance of the task in the printed unit squared; nothing without estimates.</summary>
    public decimal? Variance(int task)
    {
        var factor = Scale.Factor(Network.Tasks[task].Unit);
        return Network.Tasks[task].Variance * factor * factor;
    }

    /// <summary>The duration the dates rest on, in the printed unit.</summary>
    public decimal Expected(int task) => Network.Tasks[task].SixTimes / 6 * Scale.Factor(Network.Tasks[task].Unit);

    private static Dates? Compute(Network network, long[] work, TimeScale scale, long? given, List<InputFault> faults)
    {
        var times = new TaskTimes(network) { DateGiven = given };
        for (var task = 0; task < work.Length; task++)
            times.SetWork(task, work[task]);
        try
        {
            return CriticalPath.Compute(times, scale.Calendar, scale.Start);
        }
        catch (OverflowException e)
        {
            faults.Add(new InputFault(PlainNetworkFiles.TasksFile, 0, "", e.Message));
            return null;
        }
    }

    private static Link[] Links(PlainNetwork network, TimeScale scale, List<InputFault> faults) => [.. network.Links.Select(link => new Link(
        link.Task,
        link.After,
        link.Kind,
        Whole(scale.Lag(link.Lag, link.Unit, link.Clock), PlainNetworkFiles.LinksFile, link.Line, "lag", faults),
        link.Clock))];

    private static long Whole(decimal steps, string file, int line, string field, List<InputFault> faults)
    {
        if (Math.Abs(steps) <= JobBoard.Scheduling.Network.LongestTime)
            return (long)Math.Round(steps);
        faults.Add(new InputFault(file, line, field, "is too long for the decimals and units used together. Use fewer decimals or one unit."));
        return 0;
    }

    private static InputFault Ring(PlainNetwork network, IReadOnlyList<int> ring)
    {
        var lines = network.Links
            .Where(link => ring[(IndexOf(ring, link.After) + 1) % ring.Count] == link.Task && IndexOf(ring, link.After) >= 0)
            .Select(link => link.Line).ToArray();
        var names = string.Join(", then ", ring.Append(ring[0]).Select(task => network.Tasks[task].Name));
        return new InputFault(
            PlainNetworkFiles.LinksFile, lines[0], "", $"tasks wait on one another in a ring: {names} (lines {string.Join(", ", lines)}). Take out one of these links.");
    }

    private static int IndexOf(IReadOnlyList<int> ring, int task)
    {
        for (var at = 0; at < ring.Count; at++)
        {
            if (ring[at] == task)
                return at;
        }

        return -1;
    }
}

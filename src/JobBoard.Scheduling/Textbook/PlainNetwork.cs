namespace JobBoard.Scheduling;

/// <summary>Units of the files, in minutes of clock time.</summary>
internal enum TimeUnit
{
    Minutes = 1,
    Hours = 60,
    Days = 1440,
    Weeks = 10080,
}

/// <summary>A task as read: its duration, or the expected value of three estimates as six times itself, which is exact.</summary>
/// <param name="Line">Line of <c>tasks.csv</c>.</param>
/// <param name="Name">Its name.</param>
/// <param name="SixTimes">Six times the duration in <paramref name="Unit"/>: low + 4 usual + high where there are estimates.</param>
/// <param name="Unit">Unit of the duration.</param>
/// <param name="Spread">High less low; null without estimates. A sixth of it is the standard deviation.</param>
internal sealed record PlainTask(int Line, string Name, decimal SixTimes, TimeUnit Unit, decimal? Spread)
{
    /// <summary>Variance of the duration in its unit squared, by the usual rule ((high - low) / 6) squared.</summary>
    public decimal? Variance => Spread * Spread / 36;
}

/// <summary>A link as read.</summary>
internal sealed record PlainLink(int Line, int Task, int After, LinkKind Kind, decimal Lag, TimeUnit Unit, LagClock Clock);

/// <summary>What stands in <c>tasks.csv</c> and <c>links.csv</c>.</summary>
internal sealed record PlainNetwork(IReadOnlyList<PlainTask> Tasks, IReadOnlyList<PlainLink> Links)
{
    /// <summary>Whether any task has three estimates.</summary>
    public bool HasEstimates => Tasks.Any(t => t.Spread is not null);

    /// <summary>The one unit that all tasks use, if so.</summary>
    public TimeUnit? CommonUnit => Tasks.Select(t => t.Unit).Distinct().ToArray() is [var one] ? one : null;
}

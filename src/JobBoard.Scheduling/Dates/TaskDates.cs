namespace JobBoard.Scheduling;

/// <summary>
/// The dates of one task. Instants are Unix seconds, floats are seconds of shop hours; null is "not known" (see
/// <see cref="RestsOn"/>) or, for late dates and floats, "nothing bounds it".
/// </summary>
public readonly record struct TaskDates
{
    /// <summary>Actual start once started, else the earliest possible.</summary>
    public long? EarlyStart { get; init; }

    /// <summary>Actual finish once signed off, else the earliest possible.</summary>
    public long? EarlyFinish { get; init; }

    /// <summary>The latest start that moves neither the end nor a date given; the actual start once started.</summary>
    public long? LateStart { get; init; }

    /// <summary>The latest finish that moves neither the end nor a date given; the actual finish once signed off.</summary>
    public long? LateFinish { get; init; }

    /// <summary>Shop hours by which the task may slip without moving the end; negative if a date given cannot be kept; null once signed off.</summary>
    public long? TotalFloat { get; init; }

    /// <summary>Least slack over outgoing links at early dates, the end among them; null once signed off.</summary>
    public long? FreeFloat { get; init; }

    /// <summary>Whether the task has no slack: any slip moves the end or misses a date given.</summary>
    public bool SetsTheDate { get; init; }

    /// <summary>Whether a date given is missed by this task as things stand, be it only by closed hours.</summary>
    public bool MissesDateGiven { get; init; }

    /// <summary>The caller's number of what its dates rest on, where that is not known.</summary>
    public int? RestsOn { get; init; }
}

/// <summary>One step of the chain that sets the date.</summary>
/// <param name="Task">The task.</param>
/// <param name="Link">Number of the link through which it waits on the step before it; -1 for the first.</param>
public readonly record struct ChainStep(int Task, int Link);

namespace JobBoard.Scheduling;

/// <summary>Which end of a task waits on which end of the one it comes after (precedence diagramming).</summary>
public enum LinkKind
{
    /// <summary>The task may start once the other has finished.</summary>
    FinishStart,

    /// <summary>The task may start once the other has started.</summary>
    StartStart,

    /// <summary>The task may finish once the other has finished.</summary>
    FinishFinish,

    /// <summary>The task may finish once the other has started.</summary>
    StartFinish,
}

/// <summary>What a lag counts.</summary>
public enum LagClock
{
    /// <summary>Shop hours.</summary>
    Working,

    /// <summary>Clock hours: cure, cool-down, fire watch.</summary>
    Elapsed,
}

/// <summary>One precedence between two tasks, which are numbered from 0.</summary>
/// <param name="Task">The task that waits.</param>
/// <param name="After">The task it waits on.</param>
/// <param name="Kind">Which ends are linked.</param>
/// <param name="Lag">Seconds (or bare units) from one end to the other; negative is a lead.</param>
/// <param name="Clock">Whether the lag counts shop hours or clock hours.</param>
public readonly record struct Link(
    int Task,
    int After,
    LinkKind Kind = LinkKind.FinishStart,
    long Lag = 0,
    LagClock Clock = LagClock.Working);

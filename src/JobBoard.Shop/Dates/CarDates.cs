using System.Collections.Frozen;
using System.Collections.Immutable;

namespace JobBoard.Shop.Dates;

/// <summary>When a car can be ready at the earliest, people and places aside, and what decides that.</summary>
/// <param name="Earliest">The end of everything; nothing where it is not known.</param>
/// <param name="RestsOn">Ids of parts nobody can date, where the end is not known.</param>
/// <param name="SetsTheDate">The chain that sets the date, first to last; empty where the end is not known.</param>
/// <param name="Nodes">Every task and hold point.</param>
public sealed record CarDates(
    DateTimeOffset? Earliest, ImmutableArray<string> RestsOn, ImmutableArray<DateStep> SetsTheDate, FrozenDictionary<string, NodeDates> Nodes)
{
    /// <summary>Whether everything is signed off and released.</summary>
    public bool IsDone { get; init; }
}

/// <summary>A step of the chain that sets the date.</summary>
/// <param name="Node">A task or hold point.</param>
/// <param name="Lag">The lag through which it waits on the step before it; nothing for none.</param>
public sealed record DateStep(string Node, TimeSpan? Lag = null);

/// <summary>The dates of a task or hold point; nothing for what is not known or not bounded.</summary>
/// <param name="EarlyStart">Actual once started.</param>
/// <param name="EarlyFinish">Actual once signed off.</param>
/// <param name="LateStart">The latest that moves neither the end nor a date given.</param>
/// <param name="LateFinish">The latest that moves neither the end nor a date given.</param>
/// <param name="Slack">Total float in shop hours; negative where a date given cannot be kept.</param>
/// <param name="FreeSlack">Free float in shop hours.</param>
/// <param name="SetsTheDate">Whether any slip moves the end or misses a date given.</param>
/// <param name="MissesDateGiven">Whether a date given is missed by it as things stand.</param>
/// <param name="RestsOn">The part its dates rest on, where they are not known.</param>
public sealed record NodeDates(
    DateTimeOffset? EarlyStart,
    DateTimeOffset? EarlyFinish,
    DateTimeOffset? LateStart,
    DateTimeOffset? LateFinish,
    TimeSpan? Slack,
    TimeSpan? FreeSlack,
    bool SetsTheDate,
    bool MissesDateGiven,
    string? RestsOn);

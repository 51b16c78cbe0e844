using System.Collections.Immutable;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Work;

/// <summary>Where a task stands. Whether it can start is no state: it is worked out.</summary>
public enum WorkStatus
{
    NotStarted,
    InHand,
    PartDone,
    ForSecondCheck,
    SignedOff,
    Undone,
}

/// <summary>The present state of a task.</summary>
public sealed record TaskState
{
    public required string Id { get; init; }

    public WorkStatus Status { get; init; }

    /// <summary>Who is on it now, empty unless in hand.</summary>
    public ImmutableArray<CrewMember> Crew { get; init; } = [];

    /// <summary>Everybody who ever worked on it since it was last begun anew: they may not check or release it.</summary>
    public ImmutableSortedSet<string> WorkedBy { get; init; } = ImmutableSortedSet.Create<string>(StringComparer.Ordinal);

    /// <summary>The place it is in hand at, when not at the car.</summary>
    public string? Place { get; init; }

    /// <summary>Gear it has now, empty unless in hand.</summary>
    public ImmutableArray<string> Gear { get; init; } = [];

    /// <summary>First start of the present life.</summary>
    public DateTimeOffset? StartedAt { get; init; }

    /// <summary>Start of the present life where there was one before: what was measured earlier is of the earlier life.</summary>
    public DateTimeOffset? AgainSince { get; init; }

    /// <summary>Start of the present stretch of work, when in hand.</summary>
    public DateTimeOffset? InHandSince { get; init; }

    /// <summary>End of the work (lags run from here), when signed off or for second check.</summary>
    public DateTimeOffset? WorkEndedAt { get; init; }

    /// <summary>Shop minutes the full crew was on it in earlier stretches of the present life.</summary>
    public int MinutesDone { get; init; }

    /// <summary>The present stretch counts only while the crew is full: the instant it became so, or nothing.</summary>
    public DateTimeOffset? FullSince { get; init; }

    /// <summary>A revised estimate, or nothing.</summary>
    public Estimate? Revised { get; init; }

    /// <summary>How it was left, when part-done and it was asked or given.</summary>
    public HowLeft? Left { get; init; }

    /// <summary>Who signed it off, when, and what became of that word.</summary>
    public SignOff? SignedOff { get; init; }

    /// <summary>Who checked it a second time.</summary>
    public SignOff? Checked { get; init; }

    /// <summary>Whether it was done once and is open again (undone, or being done again): everything after it waits.</summary>
    public bool Reopened { get; init; }

    /// <summary>Why it has to be done again, when undone.</summary>
    public string? UndoneBecause { get; init; }

    /// <summary>Whether its word counts for what comes after: signed off, and not lapsed in a way that holds.</summary>
    public bool Counts => Status == WorkStatus.SignedOff && SignedOff is not { LapsedBy.Holds: true };

    /// <summary>Whether its sign-off has lapsed and waits to be taken again.</summary>
    public bool Lapsed => Status is WorkStatus.SignedOff or WorkStatus.ForSecondCheck && SignedOff is { LapsedBy.TakenAgainBy: null };
}

/// <summary>A person in a duty of a crew.</summary>
public sealed record CrewMember(string Person, string Duty = "lead");

/// <summary>How work was left, and who has acknowledged it since.</summary>
public sealed record HowLeft(string Words, string By, DateTimeOffset At, ImmutableSortedSet<string> AcknowledgedBy);

/// <summary>A person's word at a time; lapses when what it stands on is disturbed.</summary>
public sealed record SignOff(string By, DateTimeOffset At, Lapse? LapsedBy = null);

/// <summary>What made evidence lapse.</summary>
/// <param name="Aspect">The aspect disturbed, <c>item/aspect</c>.</param>
/// <param name="Task">The task that disturbed it, or nothing for an outside change.</param>
/// <param name="By">Who.</param>
/// <param name="At">When it happened.</param>
/// <param name="ByPlan">Whether the plan foresees it and takes it again.</param>
/// <param name="TakenAgainBy">The node that has taken it again since, or nothing.</param>
public sealed record Lapse(string Aspect, string? Task, string By, DateTimeOffset At, bool ByPlan, string? TakenAgainBy = null)
{
    /// <summary>Whether what comes after waits on it: not foreseen by the plan and not yet taken again.</summary>
    public bool Holds => !ByPlan && TakenAgainBy is null;
}

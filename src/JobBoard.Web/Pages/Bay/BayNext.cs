using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Bay;

/// <summary>A task that can start for this person.</summary>
public sealed record BayNext
{
    /// <summary>The task's id.</summary>
    public required string Id { get; init; }

    /// <summary>Mounts bolted.</summary>
    public required string Name { get; init; }

    /// <summary>The car's id.</summary>
    public required string CarId { get; init; }

    /// <summary>Heron coupe.</summary>
    public required string Car { get; init; }

    /// <summary>The place, or nothing.</summary>
    public string? Place { get; init; }

    /// <summary>Why this one: "sets the date, no slack".</summary>
    public required string Why { get; init; }

    /// <summary>The usual estimate.</summary>
    public TimeSpan Estimate { get; init; }

    /// <summary>Left part-done earlier: the button says Go on.</summary>
    public bool GoesOn { get; init; }

    /// <summary>Cautions shown in the start form, before the second tap.</summary>
    public ImmutableArray<BayCaution> Cautions { get; init; } = [];

    /// <summary>Duties to fill, each with the people who may; this person's own first. With one duty and one person nothing is asked.</summary>
    public required ImmutableArray<BayDuty> Duties { get; init; }

    /// <summary>The place to take when the task is not done at the car, or nothing.</summary>
    public string? TakePlace { get; init; }

    /// <summary>Who must be on it besides, such as the apprentice's named person; or nothing.</summary>
    public string? Together { get; init; }

    /// <summary>The task in hand that has to be signed off or left part-done first, or nothing.</summary>
    public BayLeaveFirst? LeaveFirst { get; init; }
}

/// <summary>A duty and who may take it. <paramref name="Chosen"/>: the person chosen beforehand, or nothing.</summary>
public sealed record BayDuty(string Duty, string Words, ImmutableArray<BayChoice> People, string? Chosen = null);

/// <summary>The task in hand that has to be signed off or left part-done first.</summary>
/// <param name="CarId">Its car.</param>
/// <param name="TaskId">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="CanSignOff">Whether it can be signed off now; if not, it can only be left part-done.</param>
/// <param name="AskHowLeft">What is asked when it is left part-done.</param>
public sealed record BayLeaveFirst(string CarId, string TaskId, string Name, bool CanSignOff, ImmutableArray<BayHowLeft> AskHowLeft);

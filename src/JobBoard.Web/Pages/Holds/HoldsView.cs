using System.Collections.Immutable;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Bay;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Holds;

/// <summary>Everything that holds work, as one person sees it at one instant: what needs them, then the rest.</summary>
public sealed record HoldsView
{
    /// <summary>When this was evaluated, to the minute, with the shop's offset.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Stops that are not released, the youngest first.</summary>
    public ImmutableArray<HoldsStop> Stops { get; init; } = [];

    /// <summary>Hold points that are not released, those with their work done first, then by when they are reached.</summary>
    public ImmutableArray<HoldsPoint> Points { get; init; } = [];

    /// <summary>Readings that hold what rests on them.</summary>
    public ImmutableArray<HoldsReading> Readings { get; init; } = [];

    /// <summary>Open questions "again or not?".</summary>
    public ImmutableArray<HoldsQuestion> Questions { get; init; } = [];

    /// <summary>Tasks for second check.</summary>
    public ImmutableArray<HoldsCheck> Checks { get; init; } = [];

    /// <summary>Dangers that stand until made safe or until a reading ends them.</summary>
    public ImmutableArray<HoldsDanger> Dangers { get; init; } = [];

    /// <summary>How many things need this person.</summary>
    public int NeedsYou => Stops.Count(s => s.NeedsMe) + Points.Count(p => p.MayRelease) + Readings.Count(r => r.MayRelease)
        + Questions.Count(q => q.MayAnswer) + Checks.Count(c => c.MayCheck);
}

/// <summary>A stop that is not released.</summary>
public sealed record HoldsStop
{
    /// <summary>The stop's id.</summary>
    public required string Id { get; init; }

    /// <summary>What it stops: task, car, place or the shop.</summary>
    public required string Scope { get; init; }

    /// <summary>Why.</summary>
    public required string Why { get; init; }

    /// <summary>Who raised it.</summary>
    public required string RaisedBy { get; init; }

    /// <summary>When.</summary>
    public required DateTimeOffset RaisedAt { get; init; }

    /// <summary>Names of those who have said heard.</summary>
    public ImmutableArray<string> Heard { get; init; } = [];

    /// <summary>Names of those who have not.</summary>
    public ImmutableArray<string> NotHeard { get; init; } = [];

    /// <summary>Whether this person is asked to say heard.</summary>
    public bool AsksMe { get; init; }

    /// <summary>Who made it safe and how, or nothing.</summary>
    public string? MadeSafe { get; init; }

    /// <summary>When it was made safe.</summary>
    public DateTimeOffset? MadeSafeAt { get; init; }

    /// <summary>What is asked when it is made safe, where this person is one who says so.</summary>
    public BayStop? MakeSafe { get; init; }

    /// <summary>Whether this person was told and the stop is not made safe.</summary>
    public bool IsMineToMakeSafe { get; init; }

    /// <summary>Whether it is made safe and this person may release it.</summary>
    public bool MayRelease { get; init; }

    /// <summary>Who releases it, in words, where this person does not.</summary>
    public string? ReleasedBy { get; init; }

    /// <summary>Tasks that may be let through, by car; empty where this person lets none through.</summary>
    public ImmutableArray<LetThroughView> LetThrough { get; init; } = [];

    /// <summary>Whether something here is for this person to do.</summary>
    public bool NeedsMe => AsksMe || IsMineToMakeSafe || MayRelease;
}

/// <summary>A hold point that is not released.</summary>
public sealed record HoldsPoint
{
    /// <summary>The hold point's id.</summary>
    public required string Id { get; init; }

    /// <summary>The car's id.</summary>
    public required string CarId { get; init; }

    /// <summary>The car.</summary>
    public required string Car { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>What its releaser has to have seen.</summary>
    public string Asks { get; init; } = "";

    /// <summary>Who releases it, in words.</summary>
    public required string ReleasedBy { get; init; }

    /// <summary>What made an earlier release lapse, or nothing.</summary>
    public string? Lapsed { get; init; }

    /// <summary>What its work still waits on, the first of it.</summary>
    public ImmutableArray<BayWait> WaitsOn { get; init; } = [];

    /// <summary>How much more it waits on than is named.</summary>
    public int More { get; init; }

    /// <summary>When it is reached at the earliest, or nothing.</summary>
    public DateTimeOffset? Earliest { get; init; }

    /// <summary>Whether this person may release it now.</summary>
    public bool MayRelease { get; init; }

    /// <summary>Tasks that may be let through, or nothing.</summary>
    public LetThroughView? LetThrough { get; init; }

    /// <summary>Unique on the page.</summary>
    public string Key => CarId + "-" + Id;

    /// <summary>Whether others of its car are reached first: it is folded away.</summary>
    public bool IsLater { get; init; }

    /// <summary>Whether all before it is done.</summary>
    public bool WorkIsDone => WaitsOn.IsEmpty;
}

/// <summary>A reading out, or too close where the limit says so.</summary>
public sealed record HoldsReading
{
    /// <summary>The reading's id.</summary>
    public required string Id { get; init; }

    /// <summary>The reading.</summary>
    public required string Name { get; init; }

    /// <summary>The task's id.</summary>
    public required string TaskId { get; init; }

    /// <summary>The task.</summary>
    public required string Task { get; init; }

    /// <summary>The car's id.</summary>
    public required string CarId { get; init; }

    /// <summary>The car.</summary>
    public required string Car { get; init; }

    /// <summary>The value as typed, with its unit, and the verdict: "31 kPa, out".</summary>
    public required string Value { get; init; }

    /// <summary>Its limit.</summary>
    public required string Limit { get; init; }

    /// <summary>Why that is the verdict.</summary>
    public required string Because { get; init; }

    /// <summary>Who took it.</summary>
    public required string By { get; init; }

    /// <summary>When.</summary>
    public required DateTimeOffset TakenAt { get; init; }

    /// <summary>Whether this person may release it.</summary>
    public bool MayRelease { get; init; }

    /// <summary>Tasks that may be let through, or nothing.</summary>
    public LetThroughView? LetThrough { get; init; }

    /// <summary>Unique on the page.</summary>
    public string Key => $"{CarId}-{TaskId}-{Id}";
}

/// <summary>"Again or not?" about a signed-off task after another was undone.</summary>
/// <param name="CarId">The car's id.</param>
/// <param name="Car">The car.</param>
/// <param name="TaskId">The task's id.</param>
/// <param name="Task">The task asked about.</param>
/// <param name="Undone">The task that was undone.</param>
/// <param name="Why">Why that was undone.</param>
/// <param name="MayAnswer">Whether this person answers.</param>
public sealed record HoldsQuestion(string CarId, string Car, string TaskId, string Task, string Undone, string? Why, bool MayAnswer)
{
    /// <summary>Unique on the page.</summary>
    public string Key => CarId + "-" + TaskId;
}

/// <summary>A task for second check.</summary>
/// <param name="CarId">The car's id.</param>
/// <param name="Car">The car.</param>
/// <param name="TaskId">The task's id.</param>
/// <param name="Task">The task.</param>
/// <param name="DoneBy">Who signed it off.</param>
/// <param name="DoneAt">When.</param>
/// <param name="Readings">What was measured: "fall in ten minutes 12 kPa, in limits".</param>
/// <param name="MayCheck">Whether this person may check it.</param>
/// <param name="Others">Who may, by name.</param>
public sealed record HoldsCheck(
    string CarId, string Car, string TaskId, string Task, string DoneBy, DateTimeOffset DoneAt, ImmutableArray<string> Readings, bool MayCheck, ImmutableArray<string> Others)
{
    /// <summary>Unique on the page.</summary>
    public string Key => CarId + "-" + TaskId;
}

/// <summary>A danger that stands until made safe or until a reading ends it.</summary>
/// <param name="CarId">The car's id.</param>
/// <param name="Car">The car.</param>
/// <param name="Id">The danger's id: <c>task/hazard</c>.</param>
/// <param name="Name">What it is.</param>
/// <param name="Sign">Its ISO 7010 sign.</param>
/// <param name="Task">The task that began it.</param>
/// <param name="By">Who began it.</param>
/// <param name="Since">When.</param>
/// <param name="EndsByReading">The reading that ends it, in words, or nothing where it is made safe by word.</param>
public sealed record HoldsDanger(
    string CarId, string Car, string Id, string Name, SafetySignKind Sign, string Task, string By, DateTimeOffset Since, string? EndsByReading)
{
    /// <summary>Unique on the page.</summary>
    public string Key => $"{CarId}-{Id.Replace('/', '-')}";
}

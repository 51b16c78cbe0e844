using System.Collections.Immutable;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Bay;

/// <summary>Everything one person's phone or tablet shows at one instant. Ids become parts of element ids and stay the same between pushes.</summary>
public sealed record BayView
{
    /// <summary>The fragment's stamp, as the live protocol writes it.</summary>
    public required string Stamp { get; init; }

    /// <summary>When this was evaluated, with the shop's offset.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The signed-in person.</summary>
    public required BayPerson Me { get; init; }

    /// <summary>The place the tablet stands at or the person works at, or nothing.</summary>
    public string? Place { get; init; }

    /// <summary>Stops that touch this person or stand where they work, the youngest first.</summary>
    public ImmutableArray<BayStop> Stops { get; init; } = [];

    /// <summary>What this person has in hand: one task, and any that are attended now and then.</summary>
    public ImmutableArray<BayTask> InHand { get; init; } = [];

    /// <summary>Tasks left part-done whose "how it was left" waits to be acknowledged by whoever goes on.</summary>
    public ImmutableArray<BayLeft> ToAcknowledge { get; init; } = [];

    /// <summary>What can start for this person next, the most wanted first.</summary>
    public ImmutableArray<BayNext> CanStart { get; init; } = [];

    /// <summary>Tasks of this person that cannot start, with everything each waits on.</summary>
    public ImmutableArray<BayWaiting> Waiting { get; init; } = [];

    /// <summary>Tasks for second check that this person may check, and those they may not, with why.</summary>
    public ImmutableArray<BaySecondCheck> SecondChecks { get; init; } = [];

    /// <summary>What this person did within the last minute and may take back.</summary>
    public ImmutableArray<BayTakeBack> TakeBack { get; init; } = [];

    /// <summary>What a stop can be raised on from here, the nearest first; never empty. At most one task, car and place among them.</summary>
    public ImmutableArray<BayStopScope> StopScopes { get; init; } = [];

    /// <summary>Every car a stop can be raised on.</summary>
    public ImmutableArray<BayChoice> StopCars { get; init; } = [];

    /// <summary>Every place a stop can be raised on.</summary>
    public ImmutableArray<BayChoice> StopPlaces { get; init; } = [];

    /// <summary>The answer to the last command where it was refused, or nothing.</summary>
    public BayRefusal? Refusal { get; init; }
}

/// <summary>The signed-in person.</summary>
/// <param name="Id">The person's id.</param>
/// <param name="Name">First name.</param>
/// <param name="IsIn">In the shop today; otherwise nothing can start and the screen offers to say in.</param>
/// <param name="WorksUnder">The named person an apprentice works under, or nothing for others.</param>
public sealed record BayPerson(string Id, string Name, bool IsIn, string? WorksUnder = null);

/// <summary>One thing to choose: the value sent and the words shown.</summary>
public sealed record BayChoice(string Value, string Words);

/// <summary>What a stop is raised on: the command's scope (task, car, place, shop) with its car, task or place, and the words on the button.</summary>
public sealed record BayStopScope(string Scope, string Words, string? Car = null, string? Task = null, string? Place = null);

/// <summary>A stop as the people it touches see it.</summary>
public sealed record BayStop
{
    /// <summary>The stop's id.</summary>
    public required string Id { get; init; }

    /// <summary>What it stops: task, car, place or the shop.</summary>
    public required string Scope { get; init; }

    /// <summary>Why, in the words of who raised it.</summary>
    public required string Why { get; init; }

    /// <summary>Who raised it.</summary>
    public required string RaisedBy { get; init; }

    /// <summary>When.</summary>
    public required DateTimeOffset RaisedAt { get; init; }

    /// <summary>Told to stop, or made safe.</summary>
    public required StopState State { get; init; }

    /// <summary>This person is among those it touches and has not said heard.</summary>
    public bool AsksMe { get; init; }

    /// <summary>Names of those who have not said heard.</summary>
    public ImmutableArray<string> NotHeard { get; init; } = [];

    /// <summary>How it was made safe and by whom, or nothing.</summary>
    public string? MadeSafe { get; init; }

    /// <summary>Who releases it: "the foreman releases".</summary>
    public string? Release { get; init; }

    /// <summary>The standing dangers to answer when making safe; null where this person is not asked to.</summary>
    public ImmutableArray<BayStandingDanger>? ToMakeSafe { get; init; }

    /// <summary>Items whose real condition is asked when making safe; fields are <c>items[CAR/ITEM]</c>.</summary>
    public ImmutableArray<BayHowLeft> ItemsToSay { get; init; } = [];
}

/// <summary>A danger that stands: answered as ended or still standing when making safe. <paramref name="Hazard"/> is the danger's key.</summary>
public sealed record BayStandingDanger(string Hazard, string Words, SafetySignKind Sign);

/// <summary>A caution shown before the work.</summary>
/// <param name="Sign">Its ISO 7010 sign.</param>
/// <param name="Title">The danger in a word or two.</param>
/// <param name="Words">What to do and not to do.</param>
public sealed record BayCaution(SafetySignKind Sign, string Title, string Words);

/// <summary>One thing that is waited on: what is missing, who can put it right and, where known, when.</summary>
public sealed record BayWait(string What, string? Who = null, DateTimeOffset? About = null);

/// <summary>A task left part-done, to be acknowledged by whoever goes on.</summary>
public sealed record BayLeft(
    string TaskId, string CarId, string Name, string Car, string LeftBy, DateTimeOffset LeftAt, ImmutableArray<string> How);

/// <summary>A task that cannot start, with everything it waits on.</summary>
public sealed record BayWaiting(string Id, string Name, string Car, ImmutableArray<BayWait> On);

/// <summary>A task for second check. <paramref name="NotMine"/>: why this person may not check it, or nothing.</summary>
public sealed record BaySecondCheck(
    string TaskId, string CarId, string Name, string Car, string DoneBy, DateTimeOffset DoneAt, string? NotMine = null);

/// <summary>Something done within the last minute that its doer may take back.</summary>
public sealed record BayTakeBack(string CommandId, string Words, DateTimeOffset Until);

/// <summary>A refused command and everything it waits on.</summary>
/// <param name="Id">The command's id.</param>
/// <param name="Title">Mounts bolted was not started.</param>
/// <param name="On">Everything it waits on.</param>
public sealed record BayRefusal(string Id, string Title, ImmutableArray<BayWait> On);

using System.Collections.Immutable;
using JobBoard.Domain.Plans;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Bay;
using JobBoard.Web.Pages.Cars.Car;

namespace JobBoard.Web.Pages.Cars.CarTask;

/// <summary>One task of a car with everything about it and every form it has for one person.</summary>
public sealed record CarTaskView
{
    /// <summary>When this was evaluated, to the minute.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The car's id.</summary>
    public required string CarId { get; init; }

    /// <summary>The task's id.</summary>
    public required string TaskId { get; init; }

    /// <summary>The task as it stands; nothing when it is not in the plan any more.</summary>
    public CarNode? Node { get; init; }

    /// <summary>Its stage.</summary>
    public string Stage { get; init; } = "";

    /// <summary>What can hurt.</summary>
    public ImmutableArray<CarTaskCaution> Cautions { get; init; } = [];

    /// <summary>How it is done, in order.</summary>
    public ImmutableArray<string> Steps { get; init; } = [];

    /// <summary>What it needs: "Crossmember: off (it is fitted)".</summary>
    public ImmutableArray<string> Needs { get; init; } = [];

    /// <summary>What it changes: "Crossmember: fitted to off".</summary>
    public ImmutableArray<string> Changes { get; init; } = [];

    /// <summary>Parts it takes, with how each stands.</summary>
    public ImmutableArray<string> Parts { get; init; } = [];

    /// <summary>What still stands against its sign-off.</summary>
    public ImmutableArray<BayWait> SignOffWaitsOn { get; init; } = [];

    /// <summary>Links by which it comes after others.</summary>
    public ImmutableArray<CarTaskLink> After { get; init; } = [];

    /// <summary>Links by which others come after it.</summary>
    public ImmutableArray<CarTaskLink> Before { get; init; } = [];

    /// <summary>What this person can send about it.</summary>
    public CarTaskForms Forms { get; init; } = new();
}

/// <summary>Something that can hurt.</summary>
public sealed record CarTaskCaution(SafetySignKind Sign, string Words);

/// <summary>A link in words, to the other node.</summary>
/// <param name="Link">The link.</param>
/// <param name="Other">The other node's name.</param>
/// <param name="OtherId">The other node's id; a task's page has it as its address.</param>
/// <param name="IsTask">Whether the other is a task.</param>
/// <param name="Words">The kind spelled out with its lag.</param>
public sealed record CarTaskLink(Link Link, string Other, string OtherId, bool IsTask, string Words)
{
    /// <summary>Unique on the page.</summary>
    public string Key => $"{Link.Task}-{Link.After}-{Link.Kind}".ToLowerInvariant();
}

/// <summary>The forms a task has for one person. What is nothing or empty is not offered.</summary>
public sealed record CarTaskForms
{
    /// <summary>Start, Go on or Do again; nothing where it cannot be asked.</summary>
    public string? StartVerb { get; init; }

    /// <summary>The duties to fill when it starts.</summary>
    public ImmutableArray<BayDuty> Duties { get; init; } = [];

    /// <summary>Places to choose from, for a task not done at the car.</summary>
    public ImmutableArray<BayChoice> Places { get; init; } = [];

    /// <summary>How it was left, to be acknowledged by this person; or nothing.</summary>
    public string? Acknowledge { get; init; }

    /// <summary>Who may join it now.</summary>
    public ImmutableArray<BayChoice> Joiners { get; init; } = [];

    /// <summary>Duties one can join in.</summary>
    public ImmutableArray<string> JoinDuties { get; init; } = [];

    /// <summary>Who may be taken off it now.</summary>
    public ImmutableArray<BayChoice> Leavers { get; init; } = [];

    /// <summary>Whether it can be left part-done, with the ways it can be left.</summary>
    public ImmutableArray<string>? HowLeft { get; init; }

    /// <summary>Items whose real condition is asked when it is left.</summary>
    public ImmutableArray<(string Item, string Words, ImmutableArray<string> Conditions)> ItemsLeft { get; init; } = [];

    /// <summary>Whether this person can sign it off.</summary>
    public bool SignOff { get; init; }

    /// <summary>Whether this person can give its second check.</summary>
    public bool SecondCheck { get; init; }

    /// <summary>Whether it can be marked undone.</summary>
    public bool Undone { get; init; }

    /// <summary>The estimate to revise, or nothing.</summary>
    public Estimate? Estimate { get; init; }

    /// <summary>Readings to log.</summary>
    public ImmutableArray<CarReadingForm> Readings { get; init; } = [];

    /// <summary>Whether this person changes the plan.</summary>
    public bool Plan { get; init; }

    /// <summary>Whether it can be taken out of the plan: nothing of it was begun.</summary>
    public bool TakeOut { get; init; }

    /// <summary>Nodes it can be put after, for whoever changes the plan.</summary>
    public ImmutableArray<BayChoice> Nodes { get; init; } = [];
}

/// <summary>The form of one reading.</summary>
/// <param name="Id">The reading's id.</param>
/// <param name="Name">What is measured.</param>
/// <param name="Limit">Its limit.</param>
/// <param name="About">Tool, where, when it is taken; in words.</param>
/// <param name="Units">Units it can be typed in, the limit's first.</param>
/// <param name="Instruments">What it can be taken with.</param>
/// <param name="SeenBy">Who may be the second to see it; empty where one is enough.</param>
public sealed record CarReadingForm(
    string Id, string Name, string Limit, string About, ImmutableArray<string> Units, ImmutableArray<BayChoice> Instruments, ImmutableArray<BayChoice> SeenBy);

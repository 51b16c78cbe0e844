using System.Collections.Immutable;

namespace JobBoard.Domain.Plans;

/// <summary>
/// The network of one conversion: its tasks and all that links them. A template is a plan without a car.
/// Read from and written to documented JSON (<see cref="PlanJson"/>, format <c>jobboard-plan/1</c>).
/// All ids are lower-case words joined by hyphens, unique within their list; tasks and hold points share one name space (nodes).
/// </summary>
public sealed record Plan
{
    /// <summary>Always <c>jobboard-plan/1</c>.</summary>
    public string Format { get; init; } = PlanJson.Format;

    /// <summary>Id of the template this came from, or of the plan itself.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>Where it applies, what it assumes.</summary>
    public string Note { get; init; } = "";

    /// <summary>Named groups of tasks, in the order people expect them.</summary>
    public ImmutableArray<Stage> Stages { get; init; } = [];

    /// <summary>Things on the car that are in one of a list of conditions.</summary>
    public ImmutableArray<Item> Items { get; init; } = [];

    /// <summary>What tasks need on the shelf.</summary>
    public ImmutableArray<Part> Parts { get; init; } = [];

    /// <summary>The work.</summary>
    public ImmutableArray<PlanTask> Tasks { get; init; } = [];

    /// <summary>Planned stops: nodes without length.</summary>
    public ImmutableArray<HoldPoint> Holds { get; init; } = [];

    /// <summary>What comes after what.</summary>
    public ImmutableArray<Link> Links { get; init; } = [];
}

/// <summary>A named group of tasks.</summary>
/// <param name="Id">Unique in the plan, for instance <c>s06-lift</c>.</param>
/// <param name="Name">Shown on screens.</param>
/// <param name="CustomerName">Words for the customer's page; the name when empty.</param>
public sealed record Stage(string Id, string Name, string CustomerName = "")
{
    /// <summary>The system of the key check that its tasks and holds belong to, unless they name their own; nothing for none.</summary>
    public KeySystem? System { get; init; }
}

/// <summary>What is asked about one by one before the key is turned, in the order it is called.</summary>
public enum KeySystem
{
    Fuel,
    Harness,
    Coolant,
    Oil,
    Air,
    Exhaust,
    Controls,
    PeopleAndPlace,
}

/// <summary>Something on the car that is in exactly one of its conditions at any time.</summary>
public sealed record Item
{
    /// <summary>Unique in the plan.</summary>
    public required string Id { get; init; }

    /// <summary>Shown on screens.</summary>
    public required string Name { get; init; }

    /// <summary>Where on the car: free words such as <c>front</c>, <c>rear, under</c>, <c>left</c>.</summary>
    public string Where { get; init; } = "";

    /// <summary>All conditions it can be in.</summary>
    public required ImmutableArray<string> Conditions { get; init; }

    /// <summary>The condition the car comes in with.</summary>
    public required string AtTakeIn { get; init; }

    /// <summary>The condition that is as for the road; anything else is still off or temporary.</summary>
    public required string AsForTheRoad { get; init; }

    /// <summary>What can be sworn to of it (tight, mated, torqued); evidence stands on (item, aspect) pairs.</summary>
    public ImmutableArray<string> Aspects { get; init; } = [];

    /// <summary>Dangers that stand while it is in a condition.</summary>
    public ImmutableArray<ConditionHazard> Dangers { get; init; } = [];
}

/// <summary>A danger that stands as long as its item is in a condition.</summary>
public sealed record ConditionHazard(string Condition, string Hazard);

/// <summary>Something a task needs on the shelf, checked right.</summary>
/// <param name="Id">Unique in the plan.</param>
/// <param name="Name">Shown on screens.</param>
/// <param name="LeadDays">Usual days from order to arrival (calendar days, 0 when in stock).</param>
public sealed record Part(string Id, string Name, int LeadDays = 0);

/// <summary>One aspect of one item, for instance (coolant circuit, tight).</summary>
public sealed record Aspect(string Item, string Name)
{
    /// <summary><c>item/aspect</c>.</summary>
    public string Key => Item + "/" + Name;
}

/// <summary>A precedence: <paramref name="Task"/> comes after <paramref name="After"/>. Both are nodes (tasks or hold points).</summary>
/// <param name="Task">The later node.</param>
/// <param name="After">The earlier node.</param>
/// <param name="Kind">Finish-start and start-start govern the start of <paramref name="Task"/>, the other two its sign-off.</param>
/// <param name="Lag">Minutes; negative is a lead (finish-start between tasks only).</param>
/// <param name="Clock">Whether the lag counts shop hours or clock hours.</param>
public sealed record Link(string Task, string After, LinkKind Kind = LinkKind.FinishStart, int Lag = 0, LagClock Clock = LagClock.Working);

/// <summary>The four link kinds of precedence diagramming.</summary>
public enum LinkKind
{
    /// <summary>The later one starts after the earlier one's work ends.</summary>
    FinishStart,

    /// <summary>The later one starts after the earlier one starts.</summary>
    StartStart,

    /// <summary>The later one is signed off after the earlier one's work ends.</summary>
    FinishFinish,

    /// <summary>The later one is signed off after the earlier one starts.</summary>
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

/// <summary>
/// A planned stop: nothing after it starts until it is released by somebody who may.
/// </summary>
public sealed record HoldPoint
{
    /// <summary>Unique among nodes.</summary>
    public required string Id { get; init; }

    /// <summary>Shown on screens.</summary>
    public required string Name { get; init; }

    /// <summary>The stage it stands in.</summary>
    public required string Stage { get; init; }

    /// <summary>The system of the key check it belongs to; that of its stage where none is named.</summary>
    public KeySystem? System { get; init; }

    /// <summary>What the releaser has to have seen.</summary>
    public string Asks { get; init; } = "";

    /// <summary>Where it waits for the customer's word: what is needed, in words for the customer's page. Nothing where it does not.</summary>
    public string? CustomerWords { get; init; }

    /// <summary>The least position that may release it; the owner may always, unless it is own work.</summary>
    public Position ReleasedBy { get; init; } = Position.Foreman;

    /// <summary>What the releaser must be qualified for, if anything.</summary>
    public string? Qualification { get; init; }

    /// <summary>What the release stands on; it lapses when one is disturbed.</summary>
    public ImmutableArray<Aspect> StandsOn { get; init; } = [];

    /// <summary>Nodes whose evidence, lapsed by plan, is taken again here.</summary>
    public ImmutableArray<string> TakesAgain { get; init; } = [];

    /// <summary>True for the key check before the first start.</summary>
    public bool KeyCheck { get; init; }

    /// <summary>True for the last one: released only when nothing is off, temporary, held, lapsed or missing.</summary>
    public bool Handover { get; init; }
}

/// <summary>What a person is in the shop, least first.</summary>
public enum Position
{
    /// <summary>Works beside a named person and signs nothing off.</summary>
    Apprentice,

    /// <summary>Does the work and signs it off.</summary>
    Technician,

    /// <summary>Releases holds and answers for the plan.</summary>
    Foreman,

    /// <summary>Everything, and the shop's own data.</summary>
    Owner,
}

using System.Collections.Immutable;

namespace JobBoard.Domain.Plans;

/// <summary>A piece of work with estimate, needs and evidence.</summary>
public sealed record PlanTask
{
    /// <summary>Unique among nodes.</summary>
    public required string Id { get; init; }

    /// <summary>Shown on screens; short enough for the wall.</summary>
    public required string Name { get; init; }

    /// <summary>The stage it belongs to.</summary>
    public required string Stage { get; init; }

    /// <summary>The system of the key check it belongs to; that of its stage where none is named.</summary>
    public KeySystem? System { get; init; }

    /// <summary>Where it is done: <c>car</c> (where the car stands) or a kind of place such as <c>bench</c> or <c>fuel corner</c>.</summary>
    public string Place { get; init; } = "car";

    /// <summary>Three durations of work with the stated crew.</summary>
    public required Estimate Estimate { get; init; }

    /// <summary>Who it takes; never empty.</summary>
    public ImmutableArray<CrewNeed> Crew { get; init; } = [new("lead")];

    /// <summary>Lifting and other gear it takes while in hand.</summary>
    public ImmutableArray<GearNeed> Gear { get; init; } = [];

    /// <summary>Conditions that must hold while it is done.</summary>
    public ImmutableArray<Need> Needs { get; init; } = [];

    /// <summary>Items it changes: what it leaves behind.</summary>
    public ImmutableArray<Change> Changes { get; init; } = [];

    /// <summary>Aspects it disturbs without changing the item's condition. A change disturbs all aspects of its item.</summary>
    public ImmutableArray<Aspect> Touches { get; init; } = [];

    /// <summary>Dangers that begin with its start.</summary>
    public ImmutableArray<TaskHazard> Hazards { get; init; } = [];

    /// <summary>What has to be measured before sign-off.</summary>
    public ImmutableArray<ReadingNeed> Readings { get; init; } = [];

    /// <summary>Parts that must be checked right before it starts.</summary>
    public ImmutableArray<string> Parts { get; init; } = [];

    /// <summary>How it is done, in order.</summary>
    public ImmutableArray<string> Steps { get; init; } = [];

    /// <summary>What can hurt; shown before the work.</summary>
    public ImmutableArray<string> Cautions { get; init; } = [];

    /// <summary>What the sign-off stands on; it lapses when one is disturbed.</summary>
    public ImmutableArray<Aspect> StandsOn { get; init; } = [];

    /// <summary>Nodes whose evidence, lapsed by plan, is taken again here.</summary>
    public ImmutableArray<string> TakesAgain { get; init; } = [];

    /// <summary>Whether another person has to check it after sign-off.</summary>
    public bool SecondCheck { get; init; }

    /// <summary>What the second checker must be qualified for, if anything.</summary>
    public string? SecondCheckQualification { get; init; }

    /// <summary>Ways it can be left part-done where a joint, line or load is disturbed; empty where it need not be asked.</summary>
    public ImmutableArray<string> HowLeft { get; init; } = [];

    /// <summary>True where it only wants a look now and then (charging, soaking, curing): does not tie its crew.</summary>
    public bool NowAndThen { get; init; }

    /// <summary>True where it must not be left overnight (a lift, a sealant joint).</summary>
    public bool RunsThrough { get; init; }
}

/// <summary>Three durations of work in minutes with the stated crew: 0 &lt; low ≤ usual ≤ high ≤ 60,000.</summary>
public sealed record Estimate(int Low, int Usual, int High);

/// <summary>A part in a crew.</summary>
/// <param name="Duty">lead, hoist, signals, guide, hand, ...</param>
/// <param name="Qualification">What that person must be qualified for, or nothing.</param>
/// <param name="Count">How many, 1 or more.</param>
public sealed record CrewNeed(string Duty, string? Qualification = null, int Count = 1);

/// <summary>Gear a task takes while in hand.</summary>
/// <param name="Kind">Kind of gear, for instance <c>hoist</c>.</param>
/// <param name="MinRatedKg">Least rated load in kg, or nothing.</param>
public sealed record GearNeed(string Kind, decimal? MinRatedKg = null);

/// <summary>A condition that must hold while the task is done. <paramref name="Item"/> may be a shop item as <c>shop/ID</c>.</summary>
public sealed record Need(string Item, ImmutableArray<string> Conditions)
{
    /// <summary>Any of these will do; never default.</summary>
    public ImmutableArray<string> Conditions { get; init; } = Conditions.IsDefault ? [] : Conditions;
}

/// <summary>A change of an item's condition, from start to sign-off, through conditions on the way.</summary>
public sealed record Change(string Item, string From, string To)
{
    /// <summary>Conditions passed on the way (an engine hangs between out and in).</summary>
    public ImmutableArray<string> Through { get; init; } = [];

    /// <summary>From, through and to, in order.</summary>
    public IEnumerable<string> Path => [From, .. Through, To];
}

/// <summary>A danger that begins with the start of the task. How it ends is said by its hazard kind.</summary>
/// <param name="Hazard">Id of one of the shop's hazards.</param>
/// <param name="EndsByReading">For hazards that end by a reading: the reading of this plan that ends it when in limits, as <c>task/reading</c>.</param>
public sealed record TaskHazard(string Hazard, string? EndsByReading = null);

/// <summary>Something to measure.</summary>
public sealed record ReadingNeed
{
    /// <summary>Unique in its task.</summary>
    public required string Id { get; init; }

    /// <summary>Shown on screens.</summary>
    public required string Name { get; init; }

    /// <summary>The unit of the limits: a symbol known to the Engineering room, for instance <c>N·m</c>, <c>kPa</c>, <c>Ω</c>.</summary>
    public required string Unit { get; init; }

    /// <summary>Least permitted value in <see cref="Unit"/>, or none.</summary>
    public decimal? Min { get; init; }

    /// <summary>Greatest permitted value in <see cref="Unit"/>, or none.</summary>
    public decimal? Max { get; init; }

    /// <summary>Where the limit comes from; <c>common practice, no source</c> where nowhere else.</summary>
    public string Source { get; init; } = "";

    /// <summary>The tool to fetch, in words.</summary>
    public string Tool { get; init; } = "";

    /// <summary>Where on the car.</summary>
    public string Where { get; init; } = "";

    /// <summary>The condition it is taken in, in words (cold, cranking, wheels down).</summary>
    public string TakenWhen { get; init; } = "";

    /// <summary>Whether the limit asks for an instrument in calibration.</summary>
    public bool Calibrated { get; init; }

    /// <summary>Whether a verdict too close to call holds as an out one does.</summary>
    public bool HoldsWhenTooClose { get; init; }

    /// <summary>Whether a second person has to have seen it.</summary>
    public bool SeenByTwo { get; init; }

    /// <summary>What it stands on; it lapses when one is disturbed.</summary>
    public ImmutableArray<Aspect> StandsOn { get; init; } = [];
}

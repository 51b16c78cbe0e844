using System.Collections.Immutable;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Boards;

/// <summary>The present state of one car's conversion.</summary>
public sealed record CarBoard
{
    /// <summary>Unique in the shop; also the name of its stream.</summary>
    public required string Id { get; init; }

    /// <summary>Shown on screens; no customer's name.</summary>
    public required string Name { get; init; }

    /// <summary>The network as it stands now, changes to the running plan included.</summary>
    public required Plan Plan { get; init; }

    /// <summary>Number of the entry that made the plan what it is.</summary>
    public long PlanAt { get; init; }

    /// <summary>How the running plan was changed, oldest first.</summary>
    public ImmutableList<PlanStep> PlanSteps { get; init; } = [];

    /// <summary>When it was taken in.</summary>
    public DateTimeOffset TakenInAt { get; init; }

    /// <summary>Where it stands, or nothing while unknown.</summary>
    public string? Place { get; init; }

    /// <summary>The date the foreman gave the customer, or none.</summary>
    public DateTimeOffset? DateGiven => DatesGiven.IsEmpty ? null : DatesGiven[^1].Date;

    /// <summary>Every date given, newest last.</summary>
    public ImmutableList<GivenDate> DatesGiven { get; init; } = [];

    /// <summary>One per task of the plan.</summary>
    public ImmutableSortedDictionary<string, TaskState> Tasks { get; init; } = ShopState.ById<TaskState>();

    /// <summary>One per hold point of the plan.</summary>
    public ImmutableSortedDictionary<string, HoldState> Holds { get; init; } = ShopState.ById<HoldState>();

    /// <summary>One per item of the plan.</summary>
    public ImmutableSortedDictionary<string, ItemState> Items { get; init; } = ShopState.ById<ItemState>();

    /// <summary>One per part of the plan.</summary>
    public ImmutableSortedDictionary<string, PartState> Parts { get; init; } = ShopState.ById<PartState>();

    /// <summary>All readings in the order they were recorded, keyed <c>task/reading</c>.</summary>
    public ImmutableSortedDictionary<string, ImmutableList<Reading>> Readings { get; init; } = ShopState.ById<ImmutableList<Reading>>();

    /// <summary>What was answered in the call before a key check, by <see cref="CallAnswer.Key"/>.</summary>
    public ImmutableSortedDictionary<string, CallAnswer> Call { get; init; } = ShopState.ById<CallAnswer>();

    /// <summary>The gear each hanging load hangs in, by item. It stays with the load, whoever signs off, until the load is out of it.</summary>
    public ImmutableSortedDictionary<string, ImmutableArray<string>> HangsIn { get; init; } = ShopState.ById<ImmutableArray<string>>();

    /// <summary>Dangers that stand until made safe or until a reading ends them.</summary>
    public ImmutableList<StandingHazard> Standing { get; init; } = [];

    /// <summary>The last disturbance of each aspect, keyed <c>item/aspect</c>, by each task or outside change that caused it.</summary>
    public ImmutableSortedDictionary<string, ImmutableList<Disturbance>> Disturbed { get; init; } = ShopState.ById<ImmutableList<Disturbance>>();

    /// <summary>Signed-off tasks about which "again or not?" is open, with the task whose undoing asked.</summary>
    public ImmutableSortedDictionary<string, string> Questions { get; init; } = ShopState.ById<string>();

    /// <summary>Named tasks let through named holds: <c>hold|task</c> to the reason.</summary>
    public ImmutableSortedDictionary<string, string> LetThrough { get; init; } = ShopState.ById<string>();

    /// <summary>Things to put right before handover.</summary>
    public ImmutableSortedDictionary<string, Snag> Snags { get; init; } = ShopState.ById<Snag>();

    /// <summary>Notes, newest last.</summary>
    public ImmutableList<Note> Notes { get; init; } = [];

    /// <summary>What the customer was asked, answered or not.</summary>
    public ImmutableSortedDictionary<string, CustomerAsk> Asks { get; init; } = ShopState.ById<CustomerAsk>();
}

/// <summary>Something to put right before handover that holds nothing else.</summary>
public sealed record Snag(string Id, string Words, string RaisedBy, DateTimeOffset RaisedAt, string? DoneBy = null, DateTimeOffset? DoneAt = null, string? HowDone = null);

/// <summary>A note on a car or one of its tasks.</summary>
/// <param name="Seq">The entry that wrote it: what it is called by.</param>
/// <param name="Words">The note.</param>
/// <param name="By">Who wrote it.</param>
/// <param name="At">When.</param>
/// <param name="Task">The task it is about, or nothing.</param>
/// <param name="ForCustomer">Its writer says that it may be shown to the customer.</param>
/// <param name="Chosen">The foreman chose it for the customer's page.</param>
public sealed record Note(long Seq, string Words, string By, DateTimeOffset At, string? Task, bool ForCustomer, bool Chosen);

/// <summary>One change of a running plan.</summary>
/// <param name="Seq">Its entry.</param>
/// <param name="By">Who.</param>
/// <param name="At">When.</param>
/// <param name="Why">Why.</param>
/// <param name="Words">What it changed, in sentences.</param>
public sealed record PlanStep(long Seq, string By, DateTimeOffset At, string Why, ImmutableArray<string> Words);

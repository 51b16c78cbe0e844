using System.Collections.Immutable;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Commands;

/// <summary>Takes a car in with a plan; refused whole when the plan has faults.</summary>
public sealed record TakeInCar(string Name, Plan Plan, string? Place) : CarCommand
{
    public override IEnumerable<string> Footprint => [Foot.Car(Car)];
}

/// <summary>Moves a car to a place, or to none.</summary>
public sealed record MoveCar(string? Place) : CarCommand
{
    public override IEnumerable<string> Footprint => [Foot.Car(Car)];
}

/// <summary>Starts a task, goes on with it, or does it again, with these people in these duties.</summary>
public sealed record StartTask(ImmutableArray<CrewMember> Crew) : TaskCommand
{
    /// <summary>The place to take when the task is not done at the car; the first free one when not said.</summary>
    public string? Place { get; init; }
}

/// <summary>Joins a task in hand.</summary>
public sealed record JoinTask(string Person, string Duty) : TaskCommand;

/// <summary>Leaves a task in hand, which goes on without one.</summary>
public sealed record LeaveTask(string Person) : TaskCommand;

/// <summary>Leaves a task part-done.</summary>
public sealed record LeavePartDone : TaskCommand
{
    /// <summary>How it was left; asked where the task says so.</summary>
    public string? How { get; init; }

    /// <summary>The condition each item it changes is really in; the one before the start when not said.</summary>
    public ImmutableSortedDictionary<string, string> Items { get; init; } = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);
}

/// <summary>Acknowledges how a task was left.</summary>
public sealed record AcknowledgeLeft : TaskCommand;

/// <summary>Signs a task off. With <see cref="Late"/> it is word that comes late from a dead spot: never refused for missing evidence.</summary>
public sealed record SignOffTask : TaskCommand
{
    /// <summary>Whether this is an observation that comes late.</summary>
    public bool Late { get; init; }
}

/// <summary>Checks a task a second time.</summary>
public sealed record SecondCheck(bool Passed, string Why) : TaskCommand;

/// <summary>Marks a signed-off task undone.</summary>
public sealed record MarkUndone(string Why) : TaskCommand;

/// <summary>Answers "again or not?" for a signed-off task after an undone one.</summary>
public sealed record AnswerAgain(bool Again, string Why) : TaskCommand;

/// <summary>Revises an estimate.</summary>
public sealed record ReviseEstimate(Estimate Estimate, string Why) : TaskCommand;

/// <summary>Logs a reading, or takes it again.</summary>
/// <param name="Reading">The reading of the task.</param>
/// <param name="Text">The number as typed.</param>
/// <param name="Unit">The unit typed.</param>
public sealed record LogReading(string Reading, string Text, string Unit) : TaskCommand
{
    public string? Instrument { get; init; }

    public string? SeenBy { get; init; }

    /// <summary>An observation is only added: what others did meanwhile does not change it.</summary>
    public override IEnumerable<string> Footprint => [];
}

/// <summary>Releases a reading that is out or too close, with a reason.</summary>
public sealed record ReleaseReading(string Reading, string Why) : TaskCommand;

/// <summary>Says that an item was changed, or one of its aspects disturbed, outside any task.</summary>
/// <param name="Item">The item.</param>
/// <param name="To">The condition it is in now, the present one where only an aspect was disturbed.</param>
/// <param name="Why">Why.</param>
public sealed record ChangeItem(string Item, string To, string Why) : CarCommand
{
    /// <summary>Aspects disturbed; all of the item when none is named.</summary>
    public ImmutableArray<string> Aspects { get; init; } = [];
}

/// <summary>Makes a danger safe that stands until made safe.</summary>
public sealed record MakeHazardSafe(string Hazard, string How) : CarCommand;

/// <summary>Releases a hold point.</summary>
public sealed record ReleaseHold(string Hold, string Why, string Evidence) : CarCommand
{
    public override IEnumerable<string> Footprint => [Foot.Node(Car, Hold)];
}

/// <summary>Answers in the call before a key check.</summary>
/// <param name="Hold">The key check.</param>
/// <param name="Person">Whose answer it is: the sender's, or what the foreman hears somebody call out.</param>
/// <param name="Go">Go, or no go.</param>
/// <param name="Why">The reason of a no.</param>
public sealed record AnswerCall(string Hold, string Person, bool Go, string? Why) : CarCommand
{
    public override IEnumerable<string> Footprint => [Foot.Node(Car, Hold) + "/call/" + Person];
}

/// <summary>Says that the engine did not start, or was stopped at once, and what that undoes.</summary>
/// <param name="Hold">The key check.</param>
/// <param name="Why">What happened.</param>
public sealed record FailStart(string Hold, string Why) : CarCommand
{
    /// <summary>Tasks before the key check that have to be done again.</summary>
    public ImmutableArray<string> Undo { get; init; } = [];

    /// <summary>How the start was left, where it is in hand and it is asked.</summary>
    public string? How { get; init; }

    /// <summary>The condition each item the start changes is really in, by item.</summary>
    public ImmutableSortedDictionary<string, string> Items { get; init; } = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    public override IEnumerable<string> Footprint => [Foot.Node(Car, Hold), .. Undo.Select(t => Foot.Task(Car, t))];
}

/// <summary>Lets one named task through one named hold: a hold point, a stop, or a reading as <c>task/reading</c>.</summary>
public sealed record LetThrough(string Hold, string Task, string Why) : CarCommand;

/// <summary>Changes the running plan: whole or not at all.</summary>
public sealed record ChangePlan(string Why) : CarCommand
{
    public ImmutableArray<PlanTask> Add { get; init; } = [];

    public ImmutableArray<string> TakeOut { get; init; } = [];

    public ImmutableArray<Link> AddLinks { get; init; } = [];

    public ImmutableArray<Link> TakeOutLinks { get; init; } = [];

    public override IEnumerable<string> Footprint =>
        [Foot.Plan(Car), .. TakeOut.Select(t => Foot.Task(Car, t)), .. AddLinks.Concat(TakeOutLinks).Select(l => Foot.Node(Car, l.Task))];
}

/// <summary>Puts a plan that was gone over in the place of the running one: whole or not at all.</summary>
/// <param name="Plan">The whole plan as it is to be.</param>
/// <param name="Of">The number of the entry that made the plan it was made from (<see cref="Boards.CarBoard.PlanAt"/>).</param>
/// <param name="Why">Why the plan changes.</param>
public sealed record RevisePlan(Plan Plan, long Of, string Why) : CarCommand;

/// <summary>Says that a part was ordered, or gives a new time for it.</summary>
public sealed record OrderPart(string Part, DateTimeOffset? Expected) : CarCommand;

/// <summary>Says that a part arrived.</summary>
public sealed record ArrivePart(string Part, string? Shelf) : CarCommand;

/// <summary>Says that an arrived part is right or wrong.</summary>
public sealed record CheckPart(string Part, bool Right, string? Why) : CarCommand;

/// <summary>Notes the date the foreman gave the customer.</summary>
/// <param name="Date">The date; nothing takes it back.</param>
/// <param name="Why">Why, for the shop.</param>
public sealed record GiveDate(DateTimeOffset? Date, string Why) : CarCommand
{
    /// <summary>Why it moved, in words for the customer, at most 240 characters; or nothing.</summary>
    public string? WordsForCustomer { get; init; }

    public override IEnumerable<string> Footprint => [Foot.Car(Car) + "/date"];
}

/// <summary>Notes something to put right before handover.</summary>
public sealed record RaiseSnag(string Snag, string Words) : CarCommand;

/// <summary>Says that a snag was put right.</summary>
public sealed record FinishSnag(string Snag, string How) : CarCommand;

/// <summary>Writes a note.</summary>
public sealed record WriteNote(string Words) : CarCommand
{
    public string? Task { get; init; }

    /// <summary>It may be shown to the customer; the foreman chooses.</summary>
    public bool ForCustomer { get; init; }
}

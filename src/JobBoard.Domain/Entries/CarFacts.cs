using System.Collections.Immutable;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Entries;

/// <summary>A car was taken in with its plan.</summary>
public sealed record CarTakenIn(string Name, Plan Plan, string? Place) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Car(Car)];
}

/// <summary>A car was moved; nothing for a place nobody knows.</summary>
public sealed record CarMoved(string? Place) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Car(Car)];
}

/// <summary>A fact about one task of a car.</summary>
public abstract record TaskFact : CarFact
{
    /// <summary>The task.</summary>
    public required string Task { get; init; }

    public override IEnumerable<string> Footprint => [Foot.Task(Car, Task)];
}

/// <summary>Work on a task was started or gone on with.</summary>
/// <param name="Crew">Who, in which duty.</param>
/// <param name="Place">The place taken when not at the car.</param>
/// <param name="Gear">Gear taken.</param>
/// <param name="Anew">Whether it begins a new life: first start, or again after undone or lapsed.</param>
/// <param name="Began">Dangers begun that stand until made safe or ended by a reading.</param>
/// <param name="Disturbs">Aspects disturbed, <c>item/aspect</c>.</param>
public sealed record TaskStarted(ImmutableArray<CrewMember> Crew, string? Place, ImmutableArray<string> Gear, bool Anew, ImmutableArray<StandingHazard> Began, ImmutableArray<string> Disturbs) : TaskFact;

/// <summary>A person joined the crew of a task in hand.</summary>
/// <param name="Member">Who, in which duty.</param>
/// <param name="Full">Whether the crew is now all the plan asks for.</param>
public sealed record CrewJoined(CrewMember Member, bool Full) : TaskFact;

/// <summary>A person left the crew of a task in hand, which goes on.</summary>
/// <param name="Person">Who.</param>
/// <param name="Full">Whether the crew is still all the plan asks for.</param>
/// <param name="MinutesDone">Shop minutes of full crew so far.</param>
public sealed record CrewLeft(string Person, bool Full, int MinutesDone) : TaskFact;

/// <summary>Work was left part-done.</summary>
/// <param name="How">How it was left, where asked or given.</param>
/// <param name="Items">The condition each item it changes is really in.</param>
/// <param name="MinutesDone">Shop minutes of full crew so far.</param>
/// <param name="HangsIn">Of those items, each that hangs now and the gear it hangs in.</param>
public sealed record TaskLeftPartDone(string? How, ImmutableSortedDictionary<string, string> Items, int MinutesDone, ImmutableSortedDictionary<string, ImmutableArray<string>> HangsIn) : TaskFact;

/// <summary>A person acknowledged how a task was left.</summary>
public sealed record LeftAcknowledged(string Person) : TaskFact;

/// <summary>A task was signed off.</summary>
/// <param name="Items">The condition each item it changes was left in.</param>
/// <param name="ForSecondCheck">Whether another person has to check it first.</param>
/// <param name="MinutesDone">Shop minutes of full crew.</param>
/// <param name="HangsIn">Of those items, each that hangs now and the gear it hangs in.</param>
public sealed record TaskSignedOff(ImmutableSortedDictionary<string, string> Items, bool ForSecondCheck, int MinutesDone, ImmutableSortedDictionary<string, ImmutableArray<string>> HangsIn) : TaskFact;

/// <summary>Word came late that a task was finished, but evidence is missing: kept as part-done.</summary>
public sealed record TaskSaidFinished(ImmutableArray<string> Missing, ImmutableSortedDictionary<string, string> Items, int MinutesDone, ImmutableSortedDictionary<string, ImmutableArray<string>> HangsIn) : TaskFact;

/// <summary>A second person checked a task.</summary>
public sealed record SecondChecked(bool Passed, string Why) : TaskFact;

/// <summary>A task has to be done again.</summary>
/// <param name="Why">Why.</param>
/// <param name="Questions">Later signed-off tasks about which "again or not?" is now open.</param>
public sealed record TaskUndone(string Why, ImmutableArray<string> Questions) : TaskFact;

/// <summary>The foreman answered "again or not?" for a signed-off task.</summary>
public sealed record AgainAnswered(bool Again, string Why) : TaskFact;

/// <summary>An estimate was revised.</summary>
public sealed record EstimateRevised(Estimate Estimate, string Why) : TaskFact;

/// <summary>What kind of evidence.</summary>
public enum EvidenceKind
{
    Reading,
    SignOff,
    Release,
}

/// <summary>Evidence lapsed because what it stands on was disturbed.</summary>
/// <param name="Kind">Which kind.</param>
/// <param name="Id">Node id, or <c>task/reading</c> for a reading.</param>
/// <param name="Lapse">What made it lapse.</param>
public sealed record EvidenceLapsed(EvidenceKind Kind, string Id, Lapse Lapse) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Node(Car, Id.Split('/')[0])];
}

/// <summary>Lapsed evidence of a node was taken again by another node.</summary>
public sealed record EvidenceTakenAgain(string Node, string By) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Node(Car, Node)];
}

/// <summary>A reading was logged with its verdict.</summary>
public sealed record ReadingLogged(string Reading, string Text, decimal Value, string Unit, decimal InLimitUnit, decimal Uncertainty, Verdict Verdict, string Because, string? Instrument, string? SeenBy, bool Late) : TaskFact
{
    /// <summary><c>task/reading</c>.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public string Key => Task + "/" + Reading;
}

/// <summary>A reading out or too close was released with a reason.</summary>
public sealed record ReadingReleased(string Reading, long ReadingSeq, string Why) : TaskFact;

/// <summary>A danger was made safe.</summary>
/// <param name="Hazard">The standing hazard, <c>task/hazard</c>.</param>
/// <param name="How">How.</param>
public sealed record HazardMadeSafe(string Hazard, string How) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Hazard(Car, Hazard)];
}

/// <summary>A danger ended by a reading.</summary>
public sealed record HazardEndedByReading(string Hazard, string Reading) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Hazard(Car, Hazard)];
}

/// <summary>An item was changed outside any task.</summary>
/// <param name="Item">The item.</param>
/// <param name="From">Condition before.</param>
/// <param name="To">Condition after; the same where only an aspect was disturbed.</param>
/// <param name="Why">Why.</param>
/// <param name="Disturbs">Aspects disturbed, <c>item/aspect</c>.</param>
/// <param name="HangsIn">The item and the gear it hangs in, where it hangs.</param>
public sealed record ItemChanged(string Item, string From, string To, string Why, ImmutableArray<string> Disturbs, ImmutableSortedDictionary<string, ImmutableArray<string>> HangsIn) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Item(Car, Item)];
}

/// <summary>The running plan was changed.</summary>
public sealed record PlanChanged(ImmutableArray<PlanTask> Added, ImmutableArray<string> TakenOut, ImmutableArray<Link> LinksAdded, ImmutableArray<Link> LinksTakenOut, string Why) : CarFact
{
    public override IEnumerable<string> Footprint =>
        [Foot.Plan(Car), .. Added.Select(t => Foot.Task(Car, t.Id)), .. TakenOut.Select(t => Foot.Task(Car, t)), .. LinksAdded.Concat(LinksTakenOut).Select(l => Foot.Node(Car, l.Task))];

    /// <summary>The plan after the change. Links of a task taken out go with it.</summary>
    public Plan ApplyTo(Plan plan) => plan with
    {
        Tasks = [.. plan.Tasks.Where(t => !TakenOut.Contains(t.Id)), .. Added],
        Links = [.. plan.Links.Where(l => !TakenOut.Contains(l.Task) && !TakenOut.Contains(l.After) && !LinksTakenOut.Contains(l)), .. LinksAdded],
    };
}

/// <summary>The running plan was gone over: the whole of it as it stands since, and what differs.</summary>
public sealed record PlanRevised(Plan Plan, PlanDifference Differs, string Why) : CarFact
{
    public override IEnumerable<string> Footprint =>
    [
        Foot.Plan(Car),
        .. Differs.NodesAdded.Concat(Differs.NodesAltered).Concat(Differs.NodesTakenOut).Concat(Differs.LinksAdded.Concat(Differs.LinksTakenOut).Select(l => l.Task)).Distinct().Select(n => Foot.Node(Car, n)),
        .. Differs.ItemsAdded.Concat(Differs.ItemsAltered).Concat(Differs.ItemsTakenOut).Select(i => Foot.Item(Car, i)),
        .. Differs.PartsAdded.Concat(Differs.PartsAltered).Concat(Differs.PartsTakenOut).Select(p => Foot.Part(Car, p)),
    ];
}

/// <summary>A part was ordered.</summary>
public sealed record PartOrdered(string Part, DateTimeOffset? Expected) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Part(Car, Part)];
}

/// <summary>A part arrived.</summary>
public sealed record PartArrived(string Part, string? Shelf) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Part(Car, Part)];
}

/// <summary>A part was looked at.</summary>
public sealed record PartChecked(string Part, bool Right, string? Why) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Part(Car, Part)];
}

/// <summary>A hold point was released.</summary>
public sealed record HoldReleased(string Hold, string Why, string Evidence) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Node(Car, Hold)];
}

/// <summary>Somebody answered in the call before a key check.</summary>
/// <param name="Hold">The key check.</param>
/// <param name="Person">Whose answer it is; the entry says who tapped it.</param>
/// <param name="Go">Go, or no go.</param>
/// <param name="Why">The reason of a no; empty for a go.</param>
public sealed record CallAnswered(string Hold, string Person, bool Go, string Why) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Node(Car, Hold) + "/call/" + Person];
}

/// <summary>The engine did not start, or was stopped at once: the key check has to be gone through again.</summary>
/// <param name="Hold">The key check.</param>
/// <param name="Why">What happened.</param>
/// <param name="Undo">Tasks before it that are undone by this.</param>
public sealed record StartFailed(string Hold, string Why, ImmutableArray<string> Undo) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Node(Car, Hold)];
}

/// <summary>One named task was let through one named hold.</summary>
/// <param name="Hold">A hold point, a stop or a reading (<c>task/reading</c>).</param>
/// <param name="Task">The task.</param>
/// <param name="Why">Why.</param>
public sealed record TaskLetThrough(string Hold, string Task, string Why) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Task(Car, Task)];
}

/// <summary>The foreman gave the customer a date, or took it back.</summary>
public sealed record DateWasGiven(DateTimeOffset? Date, string Why) : CarFact
{
    /// <summary>Why it moved, in words for the customer; nothing where none were given.</summary>
    public string? WordsForCustomer { get; init; }

    public override IEnumerable<string> Footprint => [Foot.Car(Car) + "/date"];
}

/// <summary>A snag was found.</summary>
public sealed record SnagRaised(string Snag, string Words) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Snag(Car, Snag)];
}

/// <summary>A snag was put right.</summary>
public sealed record SnagDone(string Snag, string How) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Snag(Car, Snag)];
}

/// <summary>A note was written.</summary>
/// <param name="Words">The note.</param>
/// <param name="Task">The task it is about, or nothing.</param>
/// <param name="ForCustomer">Its writer says that it may be shown to the customer.</param>
/// <param name="Chosen">It was chosen for the customer's page as it was written.</param>
public sealed record NoteWritten(string Words, string? Task, bool ForCustomer, bool Chosen) : CarFact
{
    public override IEnumerable<string> Footprint => [];
}

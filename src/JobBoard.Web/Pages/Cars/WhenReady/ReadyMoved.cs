using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Dates;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars.WhenReady;

/// <summary>Says what moved a car's date since this morning. What the same cause did at several times is added up.</summary>
public sealed class ReadyMoved(Picture picture, CarBoard car, CarMoves moves)
{
    private const int MostCauses = 3;

    // What is less is rounding: dates are worked out to the second, work to the minute.
    private static readonly TimeSpan Least = TimeSpan.FromMinutes(5);

    private readonly PlanIndex _index = PlanIndex.Of(car.Plan);

    /// <summary>In a line; nothing while neither end is known.</summary>
    public string? Line()
    {
        var since = moves.Since.AddMinutes(1) < car.TakenInAt || moves.Since == car.TakenInAt ? "when it was taken in" : "this morning";
        if (moves.Before is null && moves.After is null) return null;
        var causes = Causes();
        var why = string.Join(", ", causes.OrderByDescending(c => c.By?.Duration() ?? TimeSpan.MaxValue).Take(MostCauses).Select(c => causes.Count == 1 ? c.What : $"{c.What} ({Signed(c.By)})"));
        var head = moves.Net switch
        {
            null when moves.After is null => $"No longer known since {since}",
            null => $"Known again since {since}",
            { } net when net.Duration() < Least => $"As {since}",
            { Ticks: > 0 } net => $"{ShopTime.Span(net)} of shop hours later than {since}",
            { } net => $"{ShopTime.Span(-net)} of shop hours sooner than {since}",
        };
        return why.Length == 0 ? head + "." : $"{head}: {why}.";
    }

    /// <summary>Every cause, in order of time.</summary>
    public ImmutableArray<ReadyMove> All() =>
        [.. Causes().Select(c => new ReadyMove(ShopTime.Clock(picture.Local(c.At)), c.What, Signed(c.By)))];

    private string Signed(TimeSpan? by) => by switch
    {
        null => moves.After is null ? "not known" : "known again",
        { Ticks: < 0 } sooner => $"{ShopTime.Span(-sooner)} sooner",
        { } later => $"{ShopTime.Span(later)} later",
    };

    private List<(DateTimeOffset At, string What, TimeSpan? By)> Causes()
    {
        var causes = new List<(DateTimeOffset At, string What, TimeSpan? By)>();
        foreach (var group in moves.Moves.GroupBy(KeyOf, StringComparer.Ordinal))
        {
            var unknown = group.Any(m => m.By is null);
            var by = unknown ? (TimeSpan?)null : group.Aggregate(TimeSpan.Zero, (sum, m) => sum + m.By!.Value);
            if (by is { } sum && sum.Duration() < Least) continue;
            causes.Add((group.Last().At, What(group.Last(), by ?? TimeSpan.Zero), by));
        }

        return causes;
    }

    // A task's time and its sign-off are one cause: how long it took.
    private static string KeyOf(CarMove move) => move switch
    {
        { Fact: null, WasInHand: true } => "took " + move.Node,
        { Fact: null } => "waited " + move.Node,
        { Fact: TaskSignedOff or TaskStarted or TaskLeftPartDone or CrewJoined or CrewLeft or TaskSaidFinished } => "took " + ((TaskFact)move.Fact).Task,
        { Fact: PartOrdered part } => "part " + part.Part,
        { Fact: PartArrived part } => "part " + part.Part,
        { Fact: PartChecked part } => "part " + part.Part,
        _ => $"{EntryKinds.KindOf(move.Fact!)} {(move.Fact as TaskFact)?.Task} {move.At.ToUnixTimeSeconds()}",
    };

    private string What(CarMove move, TimeSpan by) => move switch
    {
        { Fact: null, RestsOn.IsEmpty: false } => $"{Parts(move.RestsOn)} overdue",
        { Fact: null, Node: null } => "time went by",
        { Fact: null, WasInHand: false } when NotOrdered(move.Node!) is { } part => $"{part} is still not ordered",
        { Fact: null, WasInHand: false } => by < TimeSpan.Zero ? $"{Name(move.Node)} can be begun sooner" : $"nobody was on {Name(move.Node)}",
        { Fact: null } => Took(move.Node!, by),
        { Fact: TaskSignedOff or TaskStarted or TaskLeftPartDone or CrewJoined or CrewLeft or TaskSaidFinished } => Took(((TaskFact)move.Fact).Task, by),
        _ => Entered(move),
    };

    private string? NotOrdered(string node) => _index.Task(node) is not { } task
        ? null
        : car.Plan.Parts.FirstOrDefault(p => task.Parts.Contains(p.Id) && car.Parts[p.Id].Status == PartStatus.NotOrdered)?.Name;

    private string Took(string task, TimeSpan by)
    {
        var done = car.Tasks.TryGetValue(task, out var state) && state.Counts;
        if (by < TimeSpan.Zero) return $"{Name(task)} {(done ? "was done" : "goes on")} quicker than estimated";
        return $"{Name(task)} {(done ? "took" : "is taking")} longer than estimated";
    }

    private string Entered(CarMove move) => move.Fact switch
    {
        EstimateRevised f => $"the estimate of {Name(f.Task)} was revised",
        TaskUndone f => $"{Name(f.Task)} has to be done again",
        AgainAnswered f => f.Again ? $"{Name(f.Task)} has to be done again" : $"{Name(f.Task)} need not be done again",
        SecondChecked f => f.Passed ? $"{Name(f.Task)} passed its second check" : $"{Name(f.Task)} did not pass its second check",
        EvidenceLapsed f => $"{Name(f.Id.Split('/')[0])} lapsed",
        PartOrdered f => f.Expected is { } at ? $"{Part(f.Part)} is expected {ShopTime.Day(picture.Local(at))}" : $"{Part(f.Part)} was ordered, no day named",
        PartArrived f => $"{Part(f.Part)} arrived",
        PartChecked f => f.Right ? $"{Part(f.Part)} was checked right" : $"{Part(f.Part)} came wrong",
        HoldReleased f => $"{Name(f.Hold)} was released",
        PlanChanged f => $"the plan was changed ({picture.Shop.Say(f.Why)})",
        PlanRevised f => $"the plan was changed ({picture.Shop.Say(f.Why)})",
        ShopSet => "the shop's hours were changed",
        TakenBack => "something was taken back",
        null => "something that is blanked now",
        { } f => EntryKinds.KindOf(f).Replace('-', ' '),
    };

    private string Name(string? node) => node is null ? "it" : _index.NameOf(node);

    private string Part(string id) => car.Plan.Parts.FirstOrDefault(p => p.Id == id)?.Name ?? id;

    private string Parts(ImmutableArray<string> ids) => ShopTime.Names([.. ids.Select(Part)]) + (ids.Length == 1 ? " is" : " are");
}

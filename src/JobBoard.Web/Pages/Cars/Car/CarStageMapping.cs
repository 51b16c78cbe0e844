using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Shop.Dates;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Bay;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars.Car;

/// <summary>Makes what one stage of a car shows.</summary>
public sealed class CarStageMapping
{
    private readonly Picture _picture;
    private readonly ShopState _shop;
    private readonly CarBoard _car;
    private readonly PlanIndex _index;
    private readonly ShopHours _hours;
    private readonly CarDates _dates;
    private readonly Dictionary<string, ImmutableArray<WaitingOn>> _open;

    /// <summary>For one car as of a picture.</summary>
    public CarStageMapping(Picture picture, CarBoard car)
    {
        (_picture, _shop, _car) = (picture, picture.Shop, car);
        _index = PlanIndex.Of(car.Plan);
        _hours = ShopHours.Of(picture.Shop);
        _open = picture.Open(car).ToDictionary(e => e.Task.Id, e => e.Waiting, StringComparer.Ordinal);
        _dates = picture.Dates.Of(picture.Shop, car, picture.Now);
    }

    /// <summary>A stage of a car; an empty one when either is gone.</summary>
    public static CarStageView Of(Picture picture, string carId, string stage) =>
        picture.Shop.Cars.TryGetValue(carId, out var car) && car.Plan.Stages.FirstOrDefault(s => s.Id == stage) is { } found
            ? new CarStageMapping(picture, car).Stage(found)
            : new() { At = picture.Minute, CarId = carId };

    /// <summary>Everything a task waits on now; empty for one that is in hand or done.</summary>
    public ImmutableArray<WaitingOn> Waiting(PlanTask task) => _open.TryGetValue(task.Id, out var waiting) ? waiting : [];

    /// <summary>A question about a task.</summary>
    public TaskQuestion Question(PlanTask task) => new(_shop, _car, task, _picture.Now, RuleBook.Full, _hours);

    /// <summary>A task with how it stands.</summary>
    public CarNode Node(PlanTask task)
    {
        var state = _car.Tasks[task.Id];
        var waiting = Waiting(task);
        var readings = new CarReadings(_picture);
        return new()
        {
            Id = task.Id,
            Name = task.Name,
            Bolt = TaskWords.Mark(state),
            State = string.Join(", ", new[] { TaskWords.State(state), Who(state) }.OfType<string>()),
            Side = Side(task, state, waiting),
            WaitsOn = [.. waiting.Select(w => BayMapping.Wait(_picture, w))],
            Facts = [.. Facts(task, state)],
            Readings = [.. task.Readings.Select(r => readings.Of(Question(task), r))],
        };
    }

    private CarStageView Stage(Stage stage)
    {
        var tasks = _car.Plan.Tasks.Where(t => t.Stage == stage.Id).ToDictionary(t => t.Id, StringComparer.Ordinal);
        var nodes = _index.InOrder.Select(id => tasks.TryGetValue(id, out var task) ? Node(task) : _index.Hold(id) is { } hold && hold.Stage == stage.Id ? Node(hold) : null)
            .OfType<CarNode>().ToImmutableArray();
        return new()
        {
            At = _picture.Minute,
            CarId = _car.Id,
            Id = stage.Id,
            Name = stage.Name,
            Stands = Stands(tasks.Keys),
            IsOpen = nodes.Any(n => n.Bolt is { } bolt && (bolt is BoltNow or BoltAgain || n.Side == CanStart)),
            Nodes = nodes,
        };
    }

    private const Marks.BoltState BoltNow = Marks.BoltState.InHand;
    private const Marks.BoltState BoltAgain = Marks.BoltState.OutOfLine;
    private const string CanStart = "can start";

    private string Stands(IReadOnlyCollection<string> tasks)
    {
        var states = tasks.Select(t => _car.Tasks[t]).ToArray();
        var done = states.Count(s => s.Counts);
        var inHand = states.Count(s => s.Status == WorkStatus.InHand);
        if (done == tasks.Count) return "all signed off";
        return $"{done} of {tasks.Count} signed off{(inHand > 0 ? $", {inHand} in hand" : "")}";
    }

    private CarNode Node(HoldPoint hold)
    {
        var state = _car.Holds[hold.Id];
        return new()
        {
            Id = hold.Id,
            Name = hold.Name,
            State = HoldState(hold, state),
            Side = state.Counts ? null : _dates.Nodes.GetValueOrDefault(hold.Id)?.EarlyFinish is { } at ? "earliest " + Planned(at) : "date not known",
            Facts = [.. HoldFacts(hold, state)],
        };
    }

    private string HoldState(HoldPoint hold, HoldState state) => state.Released switch
    {
        { LapsedBy: { Holds: true } lapse } => "release lapsed: " + _shop.Say(Looks.Cause(Releasing.Question(_shop, _car, hold, _picture.Now, RuleBook.Full), lapse)),
        { } released => $"released by {_shop.NameOf(released.By)}, {Actual(released.At)}",
        _ => "hold point, not released",
    };

    private static IEnumerable<(string, string)> HoldFacts(HoldPoint hold, HoldState state)
    {
        if (hold.Asks.Length > 0) yield return ("Asks", hold.Asks);
        if (state.Why is { Length: > 0 } why) yield return ("Released because", why);
        if (state.Evidence is { Length: > 0 } evidence) yield return ("On the evidence", evidence);
    }

    private string? Who(TaskState state) => state switch
    {
        { Status: WorkStatus.InHand } => ShopTime.Names([.. state.Crew.Select(m => _shop.NameOf(m.Person))]),
        { Status: WorkStatus.PartDone, Left: { } left } => _shop.NameOf(left.By),
        { Status: WorkStatus.SignedOff or WorkStatus.ForSecondCheck, SignedOff: { } word } => _shop.NameOf(word.By) + (state.Checked is { } check ? $", checked by {_shop.NameOf(check.By)}" : ""),
        _ => null,
    };

    private string? Side(PlanTask task, TaskState state, ImmutableArray<WaitingOn> waiting)
    {
        if (state.Status == WorkStatus.InHand)
            return $"{ShopTime.Span(TimeSpan.FromMinutes(Remaining.Done(state, _hours, _picture.Now)))} of {ShopTime.Span(Usual(task, state))}{(Remaining.IsOver(task, state, _hours, _picture.Now) ? ", over its estimate" : "")}";
        if (!Evaluation.IsOpen(state)) return state.WorkEndedAt is { } end ? Actual(end) : null;
        if (waiting.IsEmpty) return CanStart;
        return _dates.Nodes.GetValueOrDefault(task.Id)?.EarlyStart is { } at ? "earliest " + Planned(at) : "date not known";
    }

    private IEnumerable<(string, string)> Facts(PlanTask task, TaskState state)
    {
        var node = _dates.Nodes.GetValueOrDefault(task.Id);
        yield return ("Estimate", $"usual {ShopTime.Span(Usual(task, state))}{(state.Revised is null ? "" : ", revised")}");
        if (state.StartedAt is { } started) yield return ("Started", Actual(started));
        if (state.MinutesDone > 0 || state.Status == WorkStatus.InHand) yield return ("Worked", ShopTime.Span(TimeSpan.FromMinutes(Remaining.Done(state, _hours, _picture.Now))));
        if (state.Left is { } left) yield return ("Left", $"{_shop.Say(left.Words)} ({_shop.NameOf(left.By)})");
        if (state.UndoneBecause is { Length: > 0 } undone) yield return ("Undone because", undone);
        if (state.SignedOff?.LapsedBy is { } lapse) yield return ("Lapsed", _shop.Say(Looks.Cause(Question(task), lapse)) + (lapse.TakenAgainBy is { } by ? $"; taken again by {_index.NameOf(by)}" : ""));
        if (state.Counts || node is null) yield break;
        foreach (var fact in Dates(node, state)) yield return fact;
    }

    private IEnumerable<(string, string)> Dates(NodeDates node, TaskState state)
    {
        if (node.RestsOn is { } part) yield return ("Dates", $"not known, rest on {_car.Plan.Parts.FirstOrDefault(p => p.Id == part)?.Name ?? part}");
        if (state.StartedAt is null && node.EarlyStart is { } start) yield return ("Earliest start", Planned(start));
        if (node.EarlyFinish is { } finish) yield return ("Earliest finish", Planned(finish));
        if (node.Slack is { } slack) yield return ("Slack", PlannedTime.Slack(slack) + (node.SetsTheDate ? ", sets the date" : ""));
    }

    private static TimeSpan Usual(PlanTask task, TaskState state) => TimeSpan.FromMinutes((state.Revised ?? task.Estimate).Usual);

    private string Planned(DateTimeOffset at) => PlannedTime.Of(_picture.Local(at), _picture.Now);

    private string Actual(DateTimeOffset at) => ShopTime.Since(_picture.Local(at), _picture.Now);
}

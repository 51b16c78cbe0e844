using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Items;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Work;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Cars;
using JobBoard.Web.Pages.Cars.Car;
using JobBoard.Web.Pages.Floor;
using JobBoard.Web.Pages.Holds;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Paper;

/// <summary>The sheet of one car.</summary>
public sealed class CarPaper
{
    private readonly Picture _picture;
    private readonly CarBoard _car;
    private readonly PlanIndex _index;

    private CarPaper(Picture picture, CarBoard car) => (_picture, _car, _index) = (picture, car, PlanIndex.Of(car.Plan));

    /// <summary>The sheet as of a picture.</summary>
    /// <param name="picture">The state.</param>
    /// <param name="car">The car.</param>
    /// <param name="by">Who printed it, in words.</param>
    public static PaperView Of(Picture picture, CarBoard car, string by)
    {
        var (paper, summary) = (new CarPaper(picture, car), CarSummary.Of(picture, car));
        return new()
        {
            Shop = picture.Shop.Name,
            Title = car.Name,
            Under = $"{car.Plan.Name}. {summary.Place ?? "Place not known"}. {summary.Stage}, {summary.Done} of {summary.Tasks} tasks signed off",
            Facts = paper.Facts(summary),
            Columns = PaperFit.Columns(paper.Lists().Where(l => l.IsAlways || !l.List.Lines.IsEmpty).Select(l => l.List)),
            Stamp = PaperWords.Stamp(picture, by),
        };
    }

    private ImmutableArray<PaperFact> Facts(CarSummary summary)
    {
        var sets = _picture.Dates.Of(_picture.Shop, _car, _picture.Now).SetsTheDate.Select(s => s.Node)
            .Where(n => !_car.Tasks.TryGetValue(n, out var t) || !t.Counts).Select(_index.NameOf).Take(3).ToArray();
        var given = summary.Given is { } at ? $"{ShopTime.DayClock(at)}{(summary.Margin is { } margin ? $", {margin}" : "")}" : "none";
        return
        [
            new("Date given", given),
            new("Earliest ready", $"{summary.Ready}{(summary.IsDone ? "" : ", people and places aside")}"),
            new("Sets the date", sets.Length == 0 ? "not known" : string.Join(", then ", sets)),
            new("Ask", PaperWords.WhoToAsk(_picture)),
        ];
    }

    private IEnumerable<(bool IsAlways, PaperList List)> Lists()
    {
        yield return (true, new("Stops and holds", [.. Stops(), .. Holds()]));
        yield return (true, new("Dangers that stand", [.. CarItemsView.Of(_picture, _car.Id).Dangers.Select(d => $"{d.Name}{(d.Of.Length > 0 ? $": {d.Of}" : "")}; {d.Ends}")]));
        yield return (true, new("In hand", [.. States(WorkStatus.InHand).Select(InHand)]));
        yield return (false, new("Left part-done", [.. States(WorkStatus.PartDone).Select(Left)]));
        yield return (false, new("For second check", [.. States(WorkStatus.ForSecondCheck).Select(t => $"{_index.NameOf(t.Id)}, signed off by {_picture.Shop.NameOf(t.SignedOff!.By)}")]));
        yield return (true, new("Can start next", [.. new FloorCarAtWork(_picture, _car).CanStart().Select(e => e.Task.Name)]));
        yield return (true, new("Still off or temporary", [.. _car.Plan.Items.Where(i => _car.Items.TryGetValue(i.Id, out var now) && now.Condition != i.AsForTheRoad).Select(Off)]));
        yield return (false, new("Parts missing", [.. _car.Plan.Parts.Where(p => _car.Parts.ContainsKey(p.Id)).Select(Part).OfType<(int Order, string Words)>().OrderBy(p => p.Order).Select(p => p.Words)]));
        yield return (false, new("Readings out or lapsed", [.. _car.Readings.Select(r => Reading(r.Key, r.Value)).OfType<string>()]));
        yield return (false, new("Snags", [.. _car.Snags.Values.Where(s => s.DoneAt is null).Select(s => _picture.Shop.Say(s.Words))]));
    }

    private IEnumerable<TaskState> States(WorkStatus status) => _car.Plan.Tasks.Select(t => _car.Tasks[t.Id]).Where(t => t.Status == status);

    private string InHand(TaskState task) =>
        $"{_index.NameOf(task.Id)}: {ShopTime.Names([.. task.Crew.Select(m => _picture.Shop.NameOf(m.Person))])}{(task.InHandSince is { } at ? $", since {PaperWords.At(_picture, at)}" : "")}";

    private string Left(TaskState task) => task.Left is { } left
        ? $"{_index.NameOf(task.Id)}: {_picture.Shop.Say(left.Words)} ({_picture.Shop.NameOf(left.By)}, {PaperWords.At(_picture, left.At)})"
        : _index.NameOf(task.Id);

    private IEnumerable<string> Stops() => _picture.Shop.Stops.Values
        .Where(s => s.Scope == StopScope.Shop || s.Car == _car.Id || (s.Place is not null && s.Place == _car.Place))
        .Select(s => StopWords(_picture, s));

    /// <summary>A stop in one entry of a sheet.</summary>
    internal static string StopWords(Picture picture, Stop stop)
    {
        var silent = stop.Told.Where(t => t.Value is null).Select(t => picture.Shop.NameOf(t.Key)).ToArray();
        var state = stop.Safe is null ? "not made safe yet" : "made safe, not released";
        var heard = silent.Length == 0 ? "" : $"; not heard by {ShopTime.Names(silent)}";
        return $"STOP {FloorMapping.ScopeWords(picture.Shop, stop)}: {picture.Shop.Say(stop.Why)}; {state}{heard}";
    }

    private IEnumerable<string> Holds()
    {
        if (_picture.Shop.People.Values.FirstOrDefault(p => p is { Left: false, Position: >= Position.Foreman }) is not { } foreman) yield break;
        foreach (var point in new HoldsPoints(_picture, foreman).Of(_car).Where(p => !p.IsLater))
        {
            var waits = point.WaitsOn.IsEmpty ? point.ReleasedBy : $"waits on {point.WaitsOn[0].What}{(point.WaitsOn.Length + point.More is > 1 and var more ? $" And {more - 1} more." : "")}";
            yield return $"{point.Name}: {waits}";
        }

        foreach (var reading in new FloorCarAtWork(_picture, _car).Held().Where(h => _car.Plan.Holds.All(p => p.Name != h.Words))) yield return $"Reading holds: {reading.Words}";
    }

    private string Off(Item item)
    {
        var next = _index.Changers(item.Id).Select(c => c.Task).FirstOrDefault(t => !_car.Tasks[t.Id].Counts);
        return $"{item.Name}: {_car.Items[item.Id].Condition}{(next is null ? "" : $"; next changed by {next.Name}")}";
    }

    private (int Order, string Words)? Part(Part part) => _car.Parts[part.Id] switch
    {
        { Status: PartStatus.Wrong } state => (0, $"{part.Name}: wrong{(state.Why is { } why ? $", {_picture.Shop.Say(why)}" : "")}"),
        { Status: PartStatus.Ordered, Expected: { } at } => (at < _picture.Now ? 1 : 2, $"{part.Name}: ordered, {(at < _picture.Now ? "was expected" : "expected")} {PaperWords.At(_picture, at)}"),
        { Status: PartStatus.Ordered } => (2, $"{part.Name}: ordered, no date"),
        { Status: PartStatus.NotOrdered } => (3, $"{part.Name}: not ordered"),
        { Status: PartStatus.Arrived } state => (4, $"{part.Name}: here{(state.Shelf is { } shelf ? $", {shelf}" : "")}, not checked"),
        _ => null,
    };

    private string? Reading(string key, ImmutableList<Reading> taken)
    {
        if (taken.Count == 0) return null;
        var (last, at) = (taken[^1], key.Split('/'));
        var words = last switch
        {
            { LapsedBy: { TakenAgainBy: null } lapse } => $"lapsed{(lapse.Task is { } task ? $", disturbed by {_index.NameOf(task)}" : "")}",
            { Verdict: not Verdict.InLimits, Released: null } => ReadingWords.Verdict(last.Verdict),
            _ => null,
        };
        var name = _index.Task(at[0])?.Readings.FirstOrDefault(r => r.Id == at[^1])?.Name ?? at[^1];
        return words is null ? null : $"{_index.NameOf(at[0])}, {name}: {last.Text} {last.Unit}, {words}";
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;
using JobBoard.Shop.Dates;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars.WhenReady;

/// <summary>Says what sets a car's date and who can shorten it; every figure comes from working the dates out again with that thing moved.</summary>
public sealed class ReadyWords
{
    private const int MostLevers = 12;
    private const int MostNames = 3;

    private readonly Picture _picture;
    private readonly ShopState _shop;
    private readonly CarBoard _car;
    private readonly PlanIndex _index;
    private readonly CarDates _dates;
    private readonly ImmutableArray<Lever> _levers;

    private ReadyWords(Picture picture, CarBoard car)
    {
        (_picture, _shop, _car, _index) = (picture, picture.Shop, car, PlanIndex.Of(car.Plan));
        _dates = picture.Dates.Of(_shop, car, picture.Now);
        _levers = Levers.Of(picture.Dates, _shop, car, picture.Now);
    }

    /// <summary>For a car; an empty one when it is gone.</summary>
    public static ReadyWordsView Of(Picture picture, MovedBook moved, string carId)
    {
        if (!picture.Shop.Cars.TryGetValue(carId, out var car)) return new();
        var words = new ReadyWords(picture, car).View();
        var moves = moved.Of(picture.Shop, car, picture.Now);
        var told = new ReadyMoved(picture, car, moves);
        return words with { Moved = told.Line(), Moves = told.All() };
    }

    private ReadyWordsView View()
    {
        var shorter = _levers.Where(l => l.Kind != LeverKind.Hold).ToArray();
        var best = shorter.FirstOrDefault(l => l.Today);
        return new()
        {
            Car = _car.Name,
            CarId = _car.Id,
            Answer = Answer(),
            Aside = _dates.Earliest is null || _dates.IsDone ? null : CarDateWords.Aside,
            Given = _car.DateGiven is { } given ? $"Date given: {ShopTime.DayClock(_picture.Local(given))}{(CarDateWords.Margin(_car, _dates) is { } margin ? ", " + margin : "")}." : null,
            SetBy = SetBy(),
            Best = best is null ? null : Say(best),
            Rest = Rest(shorter, best),
            Holds = [.. _levers.Where(l => l.Kind == LeverKind.Hold).Select(Say)],
            Levers = [.. shorter.Take(MostLevers).Select(Say)],
        };
    }

    private string Answer()
    {
        if (_dates.IsDone) return "done: everything is signed off and released";
        return _dates.Earliest is null ? CarDateWords.Ready(_picture, _car, _dates) : "ready " + CarDateWords.Ready(_picture, _car, _dates) + " at the earliest";
    }

    private string? SetBy()
    {
        if (_dates.IsDone) return null;
        if (_dates.Earliest is not null) return SetBy(_dates);
        var here = ReadyParts.AsIfHere(_picture, _car);
        if (here.Earliest is not { } at) return null;
        var parts = _dates.RestsOn.Select(p => _car.Plan.Parts.First(x => x.Id == p).Name).ToArray();
        var them = parts.Length == 1 ? "it" : "they";
        return $"Somebody has to say when {ShopTime.Names(parts)} {(parts.Length == 1 ? "comes" : "come")}. Here now, {them} would make it {PlannedTime.Of(_picture.Local(at), _picture.Now)} at the earliest: {SetBy(here)}";
    }

    private string? SetBy(CarDates dates)
    {
        var open = dates.SetsTheDate.Select(s => s.Node).Where(IsOpen).ToArray();
        if (open.Length == 0) return null;
        if (open.Length <= MostNames) return Then([.. open.Select(_index.NameOf)]);
        var stages = open.Select(n => _index.Task(n)).OfType<PlanTask>().GroupBy(t => t.Stage)
            .Select((g, order) => (Name: StageName(g.Key), Left: g.Sum(Left), order)).OrderByDescending(s => s.Left).Take(MostNames).OrderBy(s => s.order).Select(s => s.Name).ToArray();
        return $"{First(open[0], dates)}; then {Then(stages)}";
    }

    // What is done first, or the part that is waited for before it can be.
    private string First(string node, CarDates dates)
    {
        var late = _index.Task(node) is { } task && dates.Nodes[node].EarlyStart > _picture.Now.AddHours(1)
            ? ReadyParts.Awaited(_car, task, _picture.Now).OrderBy(p => p.Expected).LastOrDefault()
            : default;
        if (late.Part is null) return _index.NameOf(node) + " comes first";
        var when = late.Expected is { } at ? " until " + ShopTime.Day(_picture.Local(at)) : "";
        return $"{late.Part.Name} is waited for{when}, for {_index.NameOf(node)}";
    }

    private static string Then(string[] names) => string.Join(", then ", names) + (names.Length == 1 ? " sets the date" : " set the date");

    private string? Rest(Lever[] shorter, Lever? best)
    {
        if (_dates.Earliest is null || _dates.IsDone) return null;
        var others = shorter.Where(l => l.Today && l != best).Select(l => NameOf(l)).ToArray();
        if (best is null) return "Nothing that can be worked on today would shorten it.";
        return others.Length switch
        {
            0 => "Nothing else that can be worked on today would.",
            <= MostNames => $"Of today's other work only {ShopTime.Names(others)} would shorten it too.",
            _ => $"{others.Length} more things today would shorten it, each by less.",
        };
    }

    private bool IsOpen(string node) => _car.Tasks.TryGetValue(node, out var task) ? !task.Counts : !_car.Holds[node].Counts;

    private string StageName(string stage) => _car.Plan.Stages.FirstOrDefault(s => s.Id == stage)?.Name ?? stage;

    private int Left(PlanTask task) => Remaining.Minutes(task, _car.Tasks[task.Id], Domain.Places.ShopHours.Of(_shop), _picture.Now);

    private string NameOf(Lever lever) => lever.Kind == LeverKind.Part ? _car.Plan.Parts.First(p => p.Id == lever.About).Name : _index.NameOf(lever.About);

    private ReadyLever Say(Lever lever)
    {
        var then = PlannedTime.Of(_picture.Local(lever.Earliest), _picture.Now);
        var by = ShopTime.Span(lever.Gain);
        return lever.Kind switch
        {
            LeverKind.Part => new(NameOf(lever), "/parts", PartWho(_car.Parts[lever.About]), "here today", by, then),
            LeverKind.Hold => new(NameOf(lever), "/holds", $"the {_index.Hold(lever.About)!.ReleasedBy.ToString().ToLowerInvariant()}", "released now and not next morning", by, then),
            _ => new(NameOf(lever), $"/cars/{_car.Id}/{lever.About}", WorkWho(_index.Task(lever.About)!, _car.Tasks[lever.About]), $"done in {ShopTime.Span(lever.Then)} instead of {ShopTime.Span(lever.Now)}", by, then),
        };
    }

    private string PartWho(PartState part) => part.Status == PartStatus.NotOrdered
        ? "not ordered yet"
        : $"ordered{(part.By is { } by ? " by " + _shop.NameOf(by) : "")}{(part.Expected is { } at ? ", expected " + ShopTime.Day(_picture.Local(at)) : "")}";

    private string WorkWho(PlanTask task, TaskState state)
    {
        if (state.Status == WorkStatus.InHand) return "in hand: " + ShopTime.Names([.. state.Crew.Select(m => _shop.NameOf(m.Person))]);
        var asked = task.Crew.FirstOrDefault(c => c.Qualification is not null)?.Qualification;
        var able = _shop.People.Values.Where(p => !p.Left && p.Position != Position.Apprentice && p.IsQualified(asked, _picture.Now)).Select(p => p.Name).ToArray();
        if (asked is null) return "whoever takes it";
        return able.Length switch
        {
            0 => $"nobody is qualified for {asked}",
            <= MostNames => $"{ShopTime.Names(able)} ({asked})",
            _ => $"{able.Length} people are qualified ({asked})",
        };
    }
}

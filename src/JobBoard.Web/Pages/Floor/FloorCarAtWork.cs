using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Shop.Dates;
using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.Floor;

/// <summary>One car looked at for the wall: what is in hand, what can start, what it waits on, its date.</summary>
public sealed class FloorCarAtWork
{
    private readonly Picture _picture;
    private readonly ImmutableArray<Evaluated> _open;
    private readonly CarDates _dates;

    /// <summary>Evaluates the car once.</summary>
    public FloorCarAtWork(Picture picture, CarBoard car)
    {
        (_picture, Car) = (picture, car);
        _open = picture.Open(car);
        _dates = picture.Dates.Of(picture.Shop, car, picture.Now);
    }

    /// <summary>The car.</summary>
    public CarBoard Car { get; }

    /// <summary>What can start, the least slack first.</summary>
    public IEnumerable<Evaluated> CanStart() => _open.Where(e => e.CanStart).OrderBy(e => Slack(e.Task.Id));

    private TimeSpan Slack(string node) => _dates.Nodes.GetValueOrDefault(node)?.Slack ?? TimeSpan.MaxValue;

    /// <summary>Tasks in hand at a place.</summary>
    public IEnumerable<FloorTask> InHandAt(string place)
    {
        var hours = Domain.Places.ShopHours.Of(_picture.Shop);
        foreach (var state in Car.Tasks.Values.Where(t => t.Status == WorkStatus.InHand && (t.Place ?? Car.Place) == place))
        {
            if (PlanIndex.Of(Car.Plan).Task(state.Id) is not { } task) continue;
            yield return new()
            {
                Id = Car.Id + "-" + task.Id,
                Name = task.Name,
                Car = state.Place is null ? null : Car.Name,
                People = [.. state.Crew.Select(m => _picture.Shop.NameOf(m.Person))],
                SoFar = TimeSpan.FromMinutes(Remaining.Done(state, hours, _picture.Now)),
                Estimate = TimeSpan.FromMinutes((state.Revised ?? task.Estimate).Usual),
                OverItsEstimate = Remaining.IsOver(task, state, hours, _picture.Now),
            };
        }
    }

    /// <summary>Hold points whose work is done and that wait for their release, and readings that hold.</summary>
    public IEnumerable<FloorTag> Held()
    {
        var index = PlanIndex.Of(Car.Plan);
        foreach (var hold in Car.Plan.Holds)
        {
            if (!Car.Holds[hold.Id].Counts && index.LinksInto(hold.Id).All(l => Car.Tasks.TryGetValue(l.After, out var t) ? t.Counts : Car.Holds[l.After].Counts))
                yield return new(Car.Id + "-" + hold.Id, hold.Name);
        }

        foreach (var task in Car.Plan.Tasks)
        {
            foreach (var need in task.Readings)
            {
                if (Looks.Holds(Car, task, need)) yield return new($"{Car.Id}-{task.Id}-{need.Id}", need.Name);
            }
        }
    }

    /// <summary>The car in the list beside the map.</summary>
    public FloorCar Listed()
    {
        var next = CanStart().Select(e => e.Task.Name).Take(3).ToImmutableArray();
        return new()
        {
            Id = Car.Id,
            Name = Car.Name,
            Stage = StageNow(),
            Date = Date(),
            CanStart = next,
            WaitsOn = next.IsEmpty && Car.Tasks.Values.All(t => t.Status != WorkStatus.InHand) ? WaitsOn() : null,
        };
    }

    private string StageNow()
    {
        var task = Car.Plan.Tasks.FirstOrDefault(t => Car.Tasks[t.Id].Status == WorkStatus.InHand)
            ?? Car.Plan.Tasks.FirstOrDefault(t => !Car.Tasks[t.Id].Counts);
        return Car.Plan.Stages.FirstOrDefault(s => s.Id == task?.Stage)?.Name ?? "done";
    }

    private FloorDate Date()
    {
        if (_dates.IsDone) return new(FloorDateKind.Done);
        if (_dates.Earliest is { } at) return new(FloorDateKind.Earliest, _picture.Local(at));
        return new(FloorDateKind.NotKnown, RestsOn: string.Join(", ", _dates.RestsOn.Select(p => Car.Plan.Parts.FirstOrDefault(x => x.Id == p)?.Name ?? p)));
    }

    private string? WaitsOn()
    {
        if (_picture.Shop.Stops.Values.Any(s => s.Car == Car.Id)) return "waits on a stop";
        if (Held().FirstOrDefault() is { } held) return "waits on " + held.Words;
        var nearest = _open.Where(e => !e.CanStart).OrderBy(e => e.Waiting.Length).ThenBy(e => Slack(e.Task.Id)).FirstOrDefault();
        return nearest is null ? null : _picture.Shop.Say(nearest.Waiting[0].Words);
    }
}

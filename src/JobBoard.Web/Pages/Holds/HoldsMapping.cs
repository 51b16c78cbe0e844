using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Floor;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.Holds;

/// <summary>Makes what the holds show one person from the state of the shop.</summary>
public sealed class HoldsMapping
{
    private readonly Picture _picture;
    private readonly ShopState _shop;
    private readonly Person _me;
    private readonly ShopHours _hours;

    private HoldsMapping(Picture picture, Person me) => (_picture, _shop, _me, _hours) = (picture, picture.Shop, me, ShopHours.Of(picture.Shop));

    /// <summary>The holds for a person as of a picture; empty for somebody who is not there.</summary>
    public static HoldsView Of(Picture picture, string personId)
    {
        var at = picture.Minute;
        return picture.Shop.People.TryGetValue(personId, out var me) ? new HoldsMapping(picture, me).View(at) : new() { At = at };
    }

    private HoldsView View(DateTimeOffset at)
    {
        var cars = _shop.Cars.Values.ToArray();
        var stops = new HoldsStops(_picture, _me);
        var points = new HoldsPoints(_picture, _me);
        return new()
        {
            At = at,
            Stops = [.. _shop.Stops.Values.OrderByDescending(s => s.RaisedAt).Select(stops.Of)],
            Points = [.. cars.SelectMany(points.Of).OrderBy(p => p.WorkIsDone ? 0 : 1).ThenBy(p => p.Earliest ?? DateTimeOffset.MaxValue)],
            Readings = [.. cars.SelectMany(Readings)],
            Questions = [.. cars.SelectMany(Questions)],
            Checks = [.. cars.SelectMany(Checks)],
            Dangers = [.. cars.SelectMany(c => c.Standing.Select(d => Danger(c, d)))],
        };
    }

    private IEnumerable<HoldsReading> Readings(CarBoard car) =>
        from task in car.Plan.Tasks
        from need in task.Readings
        where Looks.Holds(car, task, need)
        select Reading(car, task, need);

    private HoldsReading Reading(CarBoard car, PlanTask task, ReadingNeed need)
    {
        var latest = Looks.Latest(car, task.Id, need.Id)!;
        var may = MayPost.May<ReleaseReading>(_me.Position) && !Looks.IsOwnWork(car, task.Id, _me.Id);
        return new()
        {
            Id = need.Id,
            Name = need.Name,
            TaskId = task.Id,
            Task = task.Name,
            CarId = car.Id,
            Car = car.Name,
            Value = $"{latest.Text} {latest.Unit}, {ReadingWords.Verdict(latest.Verdict)}",
            Limit = ReadingWords.Limit(need),
            Because = latest.Because,
            By = _shop.NameOf(latest.By),
            TakenAt = _picture.Local(latest.At),
            MayRelease = may,
            LetThrough = may ? LetThroughView.Of(car, _picture.Open(car), $"{task.Id}/{need.Id}") : null,
        };
    }

    private IEnumerable<HoldsQuestion> Questions(CarBoard car)
    {
        var index = PlanIndex.Of(car.Plan);
        var may = MayPost.May<AnswerAgain>(_me.Position);
        return car.Questions.Select(q => new HoldsQuestion(
            car.Id, car.Name, q.Key, index.NameOf(q.Key), index.NameOf(q.Value), car.Tasks.GetValueOrDefault(q.Value)?.UndoneBecause, may));
    }

    private IEnumerable<HoldsCheck> Checks(CarBoard car) =>
        from state in car.Tasks.Values
        where state is { Status: WorkStatus.ForSecondCheck, SignedOff: not null, Lapsed: false }
        let task = PlanIndex.Of(car.Plan).Task(state.Id)
        where task is not null
        select Check(car, task, state.SignedOff!);

    private HoldsCheck Check(CarBoard car, PlanTask task, SignOff word)
    {
        var q = new TaskQuestion(_shop, car, task, _picture.Now, RuleBook.Full, _hours);
        var others = _shop.People.Values.Where(p => p.Id != _me.Id && Looks.MayCheck(q, p)).Select(p => p.Name);
        return new(
            car.Id, car.Name, task.Id, task.Name, _shop.NameOf(word.By), _picture.Local(word.At), [.. Measured(car, task)], Looks.MayCheck(q, _me), [.. others]);
    }

    private static IEnumerable<string> Measured(CarBoard car, PlanTask task) =>
        from need in task.Readings
        let latest = Looks.Latest(car, task.Id, need.Id)
        where latest is not null
        select $"{need.Name}: {latest.Text} {latest.Unit}, {ReadingWords.Verdict(latest.Verdict)}";

    private HoldsDanger Danger(CarBoard car, StandingHazard danger)
    {
        var kind = _shop.Hazards.GetValueOrDefault(danger.Hazard);
        var index = PlanIndex.Of(car.Plan);
        return new(
            car.Id, car.Name, danger.Id, kind?.Name ?? danger.Hazard, FloorMapping.Sign(kind?.Sign), index.NameOf(danger.Task),
            _shop.NameOf(danger.By), _picture.Local(danger.Since), kind?.Ends == HazardEnd.ByReading ? ReadingName(index, danger.EndsByReading) : null);
    }

    private static string ReadingName(PlanIndex index, string? key) => key?.Split('/') is [var task, var reading] && index.Task(task) is { } found
        ? $"{found.Readings.FirstOrDefault(r => r.Id == reading)?.Name ?? reading} ({found.Name})"
        : "a reading";
}

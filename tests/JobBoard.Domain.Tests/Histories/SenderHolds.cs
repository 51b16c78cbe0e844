using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Tests.Histories.Oracle;

namespace JobBoard.Domain.Tests.Histories;

/// <summary>Hold points, stops and dangers.</summary>
public sealed partial class Sender
{
    private IEnumerable<(int, Func<Sent?>)> HoldMoves() =>
        [(110, Release), (500, AnswerTheCall), (8, AnswerAnything), (900, Fail), (10, ReleaseAnything), (10, Through), (12, Stop), (24, Hear), (80, Safe), (90, ReleaseStopped), (50, Ease), (16, Disturb), (12, Extraction)];

    private Sent? Release()
    {
        var ready = shop.Cars.Values.SelectMany(c => c.Plan.Holds.Where(h => c.Holds[h.Id].Released is not { Missing: false } && Ready(c, h)).Select(h => (c, h))).ToList();
        if (ready.Count == 0) return null;
        var called = ready.Where(r => r.h.KeyCheck && shop.IsCalled(r.c, r.h.Id)).ToList();
        var (car, hold) = called.Count > 0 && dice.Chance(80) ? dice.Pick(called) : dice.Pick(ready);
        var worked = car.Plan.Links.Where(l => l.Task == hold.Id && car.Tasks.ContainsKey(l.After)).SelectMany(l => car.Tasks[l.After].WorkedBy).ToHashSet();
        var may = shop.People.Values.Where(p => !p.Left && p.Position >= hold.ReleasedBy && p.Can(hold.Qualification, _now) && !worked.Contains(p.Id)).Select(p => p.Id).ToList();
        return new(may.Count > 0 && dice.Chance(75) ? dice.Pick(may) : Chief(), new ReleaseHold(hold.Id, Why(), "seen") { Car = car.Id });
    }

    private static bool Ready(CarPicture car, HoldPoint hold) =>
        car.Plan.Links.Where(l => l.Task == hold.Id).All(l => car.Tasks.TryGetValue(l.After, out var t) ? t.Status == Domain.Work.WorkStatus.SignedOff : car.Holds[l.After].Released is { Holds: false });

    private Sent? AnswerTheCall()
    {
        var open = shop.Cars.Values.SelectMany(c => c.Plan.Holds.Where(h => h.KeyCheck && Ready(c, h) && c.Plan.Links.All(l => l.After != h.Id || !c.Tasks.TryGetValue(l.Task, out var t) || t.StartedAt is null || t.Status == Domain.Work.WorkStatus.PartDone)).Select(h => (c, h)))
            .SelectMany(x => Present.Where(p => !x.c.Answers.TryGetValue((x.h.Id, p), out var said) || said is { Go: false } or { Lapsed: true }).Select(p => (x.c, x.h, p))).ToList();
        if (open.Count == 0) return null;
        var (car, hold, person) = dice.Pick(open);
        return new(dice.Chance(85) ? person : Chief(), new AnswerCall(hold.Id, person, dice.Chance(94), Why()) { Car = car.Id });
    }

    private Sent? AnswerAnything() =>
        Car() is { } car && !car.Plan.Holds.IsEmpty ? new(Somebody(), new AnswerCall(dice.Pick(car.Plan.Holds).Id, Somebody(), dice.Chance(60), dice.Chance(70) ? Why() : null) { Car = car.Id }) : null;

    private Sent? Fail()
    {
        var begun = shop.Cars.Values.SelectMany(c => c.Plan.Holds.Where(h => h.KeyCheck && c.Plan.Links.Any(l => l.After == h.Id && c.Tasks.TryGetValue(l.Task, out var t) && t.StartedAt is not null && (t.InHand || (t.Status == Domain.Work.WorkStatus.PartDone && dice.Chance(50)) || dice.Chance(5)))).Select(h => (c, h))).ToList();
        if (begun.Count == 0) return TurnKey();
        var (car, hold) = dice.Pick(begun);
        var done = car.Before(hold.Id).Where(n => car.Tasks.TryGetValue(n, out var t) && (t.Status == Domain.Work.WorkStatus.SignedOff || dice.Chance(3))).Order(StringComparer.Ordinal).ToList();
        var behind = car.Plan.Links.Where(l => l.After == hold.Id && car.Tasks.ContainsKey(l.Task)).Select(l => car.Task(l.Task)).ToList();
        return new(Somebody(), new FailStart(hold.Id, Why())
        {
            Car = car.Id,
            Undo = [.. done.Where(_ => dice.Chance(25))],
            How = "left as it stood",
            Items = behind.SelectMany(t => t.Changes).DistinctBy(c => c.Item).Where(_ => dice.Chance(90)).ToImmutableSortedDictionary(c => c.Item, c => dice.Pick(c.Path.ToList()), StringComparer.Ordinal),
        });
    }

    /// <summary>Starts what a key check that was given its word lets start.</summary>
    private Sent? TurnKey()
    {
        var keys = shop.Cars.Values.SelectMany(c => c.Plan.Links.Where(l => c.Holds.TryGetValue(l.After, out var h) && h.Released is not null && c.Hold(l.After).KeyCheck && c.Tasks.TryGetValue(l.Task, out var t) && Startable(t)).Select(l => (c, l.Task))).ToList();
        if (keys.Count == 0) return null;
        var (car, task) = dice.Pick(keys);
        var crew = CrewFor(car.Task(task));
        return new(crew[0].Person, Starting(car, car.Task(task), crew));
    }

    private Sent? ReleaseAnything()
    {
        if (Car() is not { } car || car.Plan.Holds.IsEmpty) return null;
        return new(Somebody(), new ReleaseHold(dice.Pick(car.Plan.Holds).Id, Why(), "seen") { Car = car.Id });
    }

    private Sent? Through()
    {
        if (Car() is not { } car) return null;
        var task = SomeTask(car);
        var held = shop.Stops.Keys.Concat(car.Holds.Keys).Concat(car.Readings.Keys).ToList();
        return held.Count == 0 ? null : new(Chief(), new LetThrough(dice.Pick(held), task, Why()) { Car = car.Id });
    }

    private Sent? Stop()
    {
        if (AnyTask() is not var (car, task)) return null;
        if (dice.Chance(60) && InHand() is var (busy, hand)) (car, task) = (busy, hand);
        var scope = dice.Pick([StopScope.Task, StopScope.Task, StopScope.Car, StopScope.Place, StopScope.Shop]);
        return new(Somebody(), new RaiseStop(scope, Why())
        {
            Car = scope is StopScope.Task or StopScope.Car ? car.Id : null,
            Task = scope == StopScope.Task ? task.Id : null,
            Place = scope == StopScope.Place ? dice.Pick(shop.Places.Keys.ToList()) : null,
        }, MayBeLate: true);
    }

    private Sent? Hear()
    {
        if (shop.Stops.Count == 0) return null;
        var (stop, what) = dice.Pick(shop.Stops.ToList());
        return new(what.Told.Count > 0 && dice.Chance(85) ? dice.Pick(what.Told.Order(StringComparer.Ordinal).ToList()) : Somebody(), new HearStop(stop));
    }

    private Sent? Safe()
    {
        var open = shop.Stops.Where(s => !s.Value.Safe || dice.Chance(5)).ToList();
        if (open.Count == 0) return null;
        var (stop, what) = dice.Pick(open);
        var mine = shop.InHand.Where(h => what.Covers(h.Car.Id, h.Task.Id, h.Task.Place ?? h.Car.Place)).ToList();
        var actor = mine.SelectMany(h => h.Task.Crew).Select(m => m.Person).ToList() is { Count: > 0 } crews && dice.Chance(80) ? dice.Pick(crews) : Chief();
        var items = mine.SelectMany(h => h.Car.Task(h.Task.Id).Changes.Where(_ => dice.Chance(80)).Select(c => (Key: h.Car.Id + "/" + c.Item, To: dice.Pick(c.Path.ToList()))))
            .DistinctBy(i => i.Key).ToImmutableSortedDictionary(i => i.Key, i => i.To, StringComparer.Ordinal);
        return new(actor, new MakeSafe(stop, dice.Chance(95) ? "chocked and roped off" : "") { Answers = Answers(what), Items = items });
    }

    /// <summary>An answer for each danger in scope; one is left out now and then.</summary>
    private ImmutableArray<HazardAnswer> Answers(StopPicture stop) =>
    [
        ..
        from danger in StopScopes.DangersIn(shop, stop)
        where dice.Chance(97)
        select new HazardAnswer(danger.Key, Ends(danger.Value)),
    ];

    private bool Ends(Danger danger) => danger.EndsBy is null && danger.Item is null ? dice.Chance(60) : dice.Chance(3);

    private Sent? ReleaseStopped()
    {
        var open = shop.Stops.Where(s => s.Value.Safe || dice.Chance(20)).ToList();
        return open.Count == 0 ? null : new(Chief(), new ReleaseStop(dice.Pick(open).Key, Why(), "looked at it"));
    }

    private Sent? Ease()
    {
        if (shop.Cars.Values.Where(c => c.Standing.Count > 0).ToList() is not { Count: > 0 } cars) return null;
        var car = dice.Pick(cars);
        var own = car.Standing.Where(s => s.Value.EndsByReading is null || dice.Chance(10)).Select(s => s.Key).ToList();
        if (own.Count == 0) return null;
        return new(Somebody(), new MakeHazardSafe(dice.Chance(95) ? dice.Pick(own) : "no/hazard", "bled down") { Car = car.Id }, MayBeLate: true);
    }

    private Sent? Disturb()
    {
        if (Car() is not { } car || car.Plan.Items.IsEmpty) return null;
        var item = dice.Pick(car.Plan.Items);
        var only = dice.Chance(60);
        return new(dice.Chance(60) ? Chief() : Somebody(), new ChangeItem(item.Id, only ? car.Items[item.Id] : dice.Chance(97) ? dice.Pick(item.Conditions) : "melted", Why())
        {
            Car = car.Id,
            Aspects = only && dice.Chance(70) ? [dice.Pick(item.Aspects)] : [],
        }, MayBeLate: true);
    }

    private Sent? Extraction()
    {
        if (shop.Items.Count == 0) return null;
        var item = dice.Pick(shop.Items.Values.ToList());
        return new(Somebody(), new ChangeShopItem(item.Id, dice.Chance(97) ? dice.Chance(70) ? "on" : "off" : "broken", Why()), MayBeLate: true);
    }
}

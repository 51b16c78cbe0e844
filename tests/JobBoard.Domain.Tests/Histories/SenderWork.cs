using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Tests.Histories.Oracle;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Tests.Histories;

/// <summary>Work on tasks.</summary>
public sealed partial class Sender
{
    private IEnumerable<(int, Func<Sent?>)> WorkMoves() =>
    [
        (300, Start), (45, StartAnything), (40, StartHeldUp), (280, Finish), (12, SignOffAnything), (110, Check), (8, CheckAnything),
        (40, PartDone), (30, Acknowledge), (18, Join), (18, Leave), (12, Off), (40, Undo), (30, Answer), (6, Revise),
        (40, Measure), (90, FreeReading),
    ];

    private Sent? Start()
    {
        if (Car() is not { } car) return null;
        foreach (var task in dice.Shuffled(car.Plan.Tasks.Where(t => Startable(car.Tasks[t.Id]))).Take(6))
        {
            var waits = new Waits(shop, car, task.Id, _now);
            if (waits.Before().Count > 0 && !dice.Chance(5)) continue;
            var crew = CrewFor(task);
            if (waits.All(crew, null).Count > 0 && !dice.Chance(5)) continue;
            return new(dice.Chance(92) ? crew[0].Person : Somebody(), Starting(car, task, crew));
        }

        return null;
    }

    /// <summary>A start that waits on something that seldom stands in the way.</summary>
    private Sent? StartHeldUp()
    {
        if (Car() is not { } car) return null;
        foreach (var task in dice.Shuffled(car.Plan.Tasks.Where(t => Startable(car.Tasks[t.Id]))))
        {
            var kinds = new Waits(shop, car, task.Id, _now).All([], null).Select(w => w.Kind).ToHashSet();
            if (!kinds.Overlaps(Seldom) || (kinds.Contains("link") && dice.Chance(60))) continue;
            var crew = CrewFor(task);
            return new(crew[0].Person, Starting(car, task, crew));
        }

        return null;
    }

    private static readonly HashSet<string> Seldom = ["again-or-not", "lapsed", "reading-hold", "lag", "in-work", "takes-away", "keep-apart", "gear", "how-left"];

    private static bool Startable(TaskPicture task) => !task.InHand && (task.Status is not (WorkStatus.SignedOff or WorkStatus.ForSecondCheck) || task.Lapsed);

    private Sent? StartAnything()
    {
        if (Car() is not { } car) return null;
        var task = dice.Pick(car.Plan.Tasks);
        if (car.Tasks[task.Id].Status == WorkStatus.SignedOff && dice.Chance(70)) return null;
        var crew = dice.Chance(60) ? CrewFor(task) : [.. task.Crew.Select(n => new CrewMember(Somebody(), n.Duty))];
        return new(crew[0].Person, Starting(car, task, crew));
    }

    private StartTask Starting(CarPicture car, PlanTask task, List<CrewMember> crew) =>
        new([.. crew]) { Car = dice.Chance(99) ? car.Id : SomeCar(), Task = dice.Chance(99) ? task.Id : SomeTask(car), Place = task.Place != "car" && dice.Chance(25) ? dice.Pick(shop.Places.Keys.ToList()) : null };

    private Sent? Finish()
    {
        if (InHand() is not var (car, task)) return null;
        var missing = car.Task(task.Id).Readings.Where(r => car.Last(task.Id + "/" + r.Id) is not { Missing: false } last || last.At < task.StartedAt || Waits.Held(r, last)).ToList();
        if (missing.Count > 0 && dice.Chance(88)) return Log(car, task, dice.Pick(missing), 80);
        var signer = task.Crew.Count > 0 && dice.Chance(93) ? task.Crew[0].Person : Somebody();
        return new(signer, new SignOffTask { Car = car.Id, Task = task.Id, Late = dice.Chance(7) }, MayBeLate: true);
    }

    private Sent? SignOffAnything() =>
        AnyTask() is var (car, task) ? new(Somebody(), new SignOffTask { Car = car.Id, Task = task.Id, Late = dice.Chance(30) }, MayBeLate: true) : null;

    private Sent? Measure()
    {
        if (Task(t => t.Status != WorkStatus.NotStarted || dice.Chance(5)) is not var (car, task)) return null;
        var readings = car.Task(task.Id).Readings;
        if (readings.IsEmpty) return null;
        return Log(car, task, dice.Pick(readings), 50);
    }

    private Sent Log(CarPicture car, TaskPicture task, ReadingNeed need, int good)
    {
        var value = dice.Chance(good) ? Inside(need) : dice.Chance(50) ? Edge(need) : (need.Max ?? need.Min ?? 1) * dice.Pick([0.3m, 1.7m]);
        var (text, unit) = Typed(value, need.Unit);
        var second = dice.Chance(need.SeenByTwo ? 90 : 10) ? Somebody() : null;
        return new(task.Crew.Count > 0 && dice.Chance(70) ? task.Crew[0].Person : Somebody(), new LogReading(dice.Chance(98) ? need.Id : "no-such-reading", text, unit)
        {
            Car = car.Id,
            Task = task.Id,
            Instrument = With(need),
            SeenBy = second,
        }, MayBeLate: true);
    }

    private static decimal Inside(ReadingNeed need) => need is { Min: { } min, Max: { } max } ? (min + max) / 2 : need.Max is { } most ? most / 2 : (need.Min ?? 0) + 10;

    private decimal Edge(ReadingNeed need) => (dice.Chance(50) ? need.Min ?? need.Max : need.Max ?? need.Min) is { } edge ? edge + (dice.Pick([-2m, -1m, 0m, 1m, 2m]) * edge / 100) : 1;

    private (string Text, string Unit) Typed(decimal value, string unit)
    {
        if (dice.Chance(1)) return (dice.Pick(["about ten", "1,234", ""]), unit);
        if (dice.Chance(1)) return (Plain(value), dice.Pick(["V", "kPa", "furlong"]));
        return unit switch
        {
            "kPa" when dice.Chance(30) => (Plain(value / 100), "bar"),
            "V" when dice.Chance(20) => (Plain(value * 1000), "mV"),
            _ => (Plain(value), unit),
        };
    }

    private static string Plain(decimal value) => Math.Round(value, 4).ToString("0.####", System.Globalization.CultureInfo.InvariantCulture);

    private string? With(ReadingNeed need) => dice.Below(10) switch
    {
        0 => null,
        1 => dice.Pick(shop.Instruments.Keys.ToList()),
        _ => shop.Instruments.Values.FirstOrDefault(i => Verdicts.Convertible(i.Unit, need.Unit))?.Id,
    };

    private Sent? FreeReading()
    {
        var held = shop.Cars.Values.SelectMany(c => c.Plan.Tasks.SelectMany(t => t.Readings.Where(r => Waits.Held(r, c.Last(t.Id + "/" + r.Id))).Select(r => (c, t, r)))).ToList();
        if (held.Count == 0) return null;
        var (car, task, reading) = dice.Pick(held);
        if (dice.Chance(35)) return Log(car, car.Tasks[task.Id], reading, 85);
        return new(Chief(), new ReleaseReading(reading.Id, Why()) { Car = car.Id, Task = task.Id });
    }

    private Sent? Check()
    {
        if (Task(t => t.Status == WorkStatus.ForSecondCheck) is not var (car, task)) return null;
        var others = Present.Where(p => !task.WorkedBy.Contains(p) && shop.People[p].Can(car.Task(task.Id).SecondCheckQualification, _now)).ToList();
        return new(dice.Chance(75) && others.Count > 0 ? dice.Pick(others) : Somebody(), new SecondCheck(dice.Chance(88), Why()) { Car = car.Id, Task = task.Id });
    }

    private Sent? CheckAnything() => AnyTask() is var (car, task) ? new(Somebody(), new SecondCheck(true, "ok") { Car = car.Id, Task = task.Id }) : null;

    private Sent? PartDone()
    {
        if (InHand() is not var (car, task)) return null;
        var items = car.Task(task.Id).Changes.Where(_ => dice.Chance(80)).ToImmutableSortedDictionary(c => c.Item, c => dice.Pick(c.Path.ToList()), StringComparer.Ordinal);
        return new(task.Crew.Count > 0 && dice.Chance(90) ? dice.Pick(task.Crew).Person : Somebody(), new LeavePartDone { Car = car.Id, Task = task.Id, How = How(car.Task(task.Id)), Items = items }, MayBeLate: true);
    }

    private string? How(PlanTask task) => task.HowLeft.IsEmpty ? (dice.Chance(10) ? "as it was" : null) : dice.Chance(88) ? dice.Pick(task.HowLeft) : null;

    private Sent? Acknowledge() =>
        Task(t => t.Status == WorkStatus.PartDone && t.LeftBy is not null) is var (car, task) ? new(Somebody(), new AcknowledgeLeft { Car = car.Id, Task = task.Id }) : null;

    private Sent? Join()
    {
        if (InHand() is not var (car, task)) return null;
        var person = Somebody();
        return new(dice.Chance(80) ? person : Chief(), new JoinTask(person, dice.Pick(["hand", "lead", "guide"])) { Car = car.Id, Task = task.Id });
    }

    private Sent? Leave()
    {
        if (InHand() is not var (car, task)) return null;
        var person = task.Crew.Count > 0 && dice.Chance(90) ? dice.Pick(task.Crew).Person : Somebody();
        return new(dice.Chance(85) ? person : Chief(), new LeaveTask(person) { Car = car.Id, Task = task.Id });
    }

    private Sent? Off()
    {
        var actor = Somebody();
        var mine = shop.InHand.Where(h => h.Task.Crew.Any(m => m.Person == actor)).ToList();
        if (mine.Count == 0 && dice.Chance(80)) return null;
        var how = mine.Where(h => How(h.Car.Task(h.Task.Id)) is not null).ToImmutableSortedDictionary(h => h.Car.Id + "/" + h.Task.Id, h => h.Car.Task(h.Task.Id).HowLeft.FirstOrDefault() ?? "as it was", StringComparer.Ordinal);
        var items = mine.SelectMany(h => h.Car.Task(h.Task.Id).Changes.Where(_ => dice.Chance(80)).Select(c => (Key: h.Car.Id + "/" + c.Item, To: dice.Pick(c.Path.ToList()))))
            .DistinctBy(i => i.Key).ToImmutableSortedDictionary(i => i.Key, i => i.To, StringComparer.Ordinal);
        return new(actor, new KnockOff { How = how, Items = items });
    }

    private Sent? Undo() =>
        (dice.Chance(95) ? Task(t => t.Status == WorkStatus.SignedOff && dice.Chance(50)) : AnyTask()) is var (car, task) ? new(Chief(), new MarkUndone(Why()) { Car = car.Id, Task = task.Id }) : null;

    private Sent? Answer()
    {
        var open = shop.Cars.Values.SelectMany(c => c.Questions.Select(q => (c, q))).ToList();
        if (open.Count == 0) return dice.Chance(3) && AnyTask() is var (any, task) ? new(Chief(), new AnswerAgain(true, "x") { Car = any.Id, Task = task.Id }) : null;
        var (car, question) = dice.Pick(open);
        return new(Chief(), new AnswerAgain(dice.Chance(40), Why()) { Car = car.Id, Task = question });
    }

    private Sent? Revise()
    {
        if (AnyTask() is not var (car, task)) return null;
        var usual = dice.Between(5, 90);
        return new(Chief(), new ReviseEstimate(dice.Chance(93) ? new(usual, usual + 10, usual + 40) : new(9, 3, 0), Why()) { Car = car.Id, Task = task.Id });
    }
}

using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Tests.Histories.Oracle;

namespace JobBoard.Domain.Tests.Histories;

/// <summary>Cars, their plans, parts, snags and notes.</summary>
public sealed partial class Sender
{
    private IEnumerable<(int, Func<Sent?>)> CarMoves() =>
    [
        (12, Move), (16, ChangeThePlan), (16, GoOverThePlan), (3, KeepATemplate), (4, TakeInAnother), (8, Order), (34, Arrive), (70, LookAt), (4, Promise), (6, RaiseASnag), (8, FinishASnag), (6, Note), (5, Choose), (3, AskThem), (40, Answered), (34, TakeBackOne),
    ];

    /// <summary>Takes a new car in; its plan has a planted fault now and then.</summary>
    public TakeInCar NewCar(int faulty)
    {
        var plan = new PlanMaker(dice, shop.Places.Values.Any(p => p.Kind == "fuel corner")).Make(Id("plan"));
        var bays = shop.Places.Values.Where(p => p.Kind == "bay" && shop.Cars.Values.Count(c => c.Place == p.Id) < p.Capacity).Select(p => p.Id).ToList();
        return new TakeInCar("A car", dice.Chance(faulty) ? new Spoiler(dice).Spoil(plan) : plan, dice.Chance(97) ? dice.PickOrNone(bays) : null) { Car = Id("car") };
    }

    private Sent? TakeInAnother() => new(Chief(), shop.Cars.Count < 4 ? NewCar(50) : NewCar(100));

    private Sent? Move()
    {
        if (Car() is not { } car) return null;
        return new(Somebody(), new MoveCar(dice.Chance(95) ? dice.Pick(shop.Places.Values.Where(p => p.Kind == "bay" || dice.Chance(10)).Select(p => p.Id).DefaultIfEmpty("bay-1").ToList()) : null) { Car = car.Id });
    }

    private Sent? ChangeThePlan()
    {
        if (Car() is not { } car) return null;
        return new(dice.Chance(90) ? Chief() : Somebody(), dice.Below(6) switch
        {
            0 => Without(car),
            1 => Unlinked(car),
            2 => Linked(car),
            _ => With(car),
        });
    }

    private ChangePlan With(CarPicture car)
    {
        var task = Lane.Job(Id("extra")) with { Hazards = dice.Chance(20) ? [new("hands-in-belts")] : [] };
        if (dice.Chance(15)) task = task with { Needs = [new("no-such-item", ["on"])] };
        var early = dice.Pick(car.Plan.Tasks).Id;
        return new ChangePlan(Why()) { Car = car.Id, Add = [task], AddLinks = [new Link(task.Id, early), .. dice.Chance(60) && car.Holds.ContainsKey("handover") ? new[] { new Link("handover", task.Id) } : []] };
    }

    private ChangePlan Without(CarPicture car)
    {
        if (car.Plan.Tasks.Length < 3) return With(car);
        var task = dice.Pick(car.Plan.Tasks.Where(t => t.Id.StartsWith("extra", StringComparison.Ordinal)).DefaultIfEmpty(dice.Pick(car.Plan.Tasks)).ToList());
        var gone = car.Plan.Links.Where(l => l.Task == task.Id || l.After == task.Id).ToList();
        return new ChangePlan(Why()) { Car = car.Id, TakeOut = [task.Id], TakeOutLinks = dice.Chance(95) ? [.. gone] : [] };
    }

    private ChangePlan Unlinked(CarPicture car) => new(Why()) { Car = car.Id, TakeOutLinks = car.Plan.Links.IsEmpty ? [] : [dice.Pick(car.Plan.Links)] };

    private ChangePlan Linked(CarPicture car) => new(Why()) { Car = car.Id, AddLinks = [new Link(dice.Pick(car.Plan.Tasks).Id, dice.Pick(car.Plan.Tasks).Id)] };

    private (string Car, string Part)? Part(Func<PartStatus, bool> like)
    {
        var all = shop.Cars.Values.SelectMany(c => c.Parts.Where(p => like(p.Value)).Select(p => (c.Id, p.Key))).ToList();
        return all.Count == 0 ? null : dice.Pick(all);
    }

    private Sent? Order() =>
        Part(p => p is PartStatus.NotOrdered or PartStatus.Wrong || dice.Chance(10)) is var (car, part) ? new(Somebody(), new OrderPart(part, dice.Chance(70) ? _now.AddHours(dice.Between(1, 40)) : null) { Car = car }) : null;

    private Sent? Arrive() =>
        Part(p => p is PartStatus.NotOrdered or PartStatus.Ordered || dice.Chance(3)) is var (car, part) ? new(Somebody(), new ArrivePart(part, "shelf 2") { Car = car }) : null;

    private Sent? LookAt() =>
        Part(p => p == PartStatus.Arrived || dice.Chance(2)) is var (car, part) ? new(Somebody(), new CheckPart(part, dice.Chance(88), Why()) { Car = car }) : null;

    private Sent? Promise() => new(Chief(), new GiveDate(dice.Chance(80) ? _now.AddDays(dice.Between(3, 30)) : null, Why()) { Car = SomeCar(), WordsForCustomer = dice.Chance(50) ? Why() : null });

    private Sent? RaiseASnag() => new(Somebody(), new RaiseSnag(Id("snag"), dice.Chance(95) ? "scratch on the sill" : "") { Car = SomeCar() });

    private Sent? FinishASnag()
    {
        var open = shop.Cars.Values.SelectMany(c => c.Snags.Where(s => !s.Value).Select(s => (c.Id, s.Key))).ToList();
        if (open.Count == 0) return null;
        var (car, snag) = dice.Pick(open);
        return new(Somebody(), new FinishSnag(snag, Why()) { Car = car });
    }

    private Sent? Note()
    {
        if (Car() is not { } car) return null;
        return new(Somebody(), new WriteNote("looks well") { Car = car.Id, Task = dice.Chance(50) ? SomeTask(car) : null, ForCustomer = dice.Chance(20) });
    }

    private Sent? Choose()
    {
        var notes = shop.Entries.Where(e => e.Fact is NoteWritten).ToList();
        if (notes.Count == 0) return null;
        var note = dice.Pick(notes);
        return new(Chief(), new ChooseNote(note.Seq, dice.Chance(80)) { Car = dice.Chance(95) ? note.Stream : SomeCar() });
    }

    private Sent? AskThem() => new(Chief(), new AskCustomer(Id("ask"), dice.Chance(95) ? "Which silencer?" : "") { Car = SomeCar(), By = dice.Chance(40) ? DateOnly.FromDateTime(_now.AddDays(dice.Between(-1, 9)).Date) : null });

    private Sent? Answered()
    {
        var facts = shop.Entries.Select(e => e.Fact).ToList();
        var answered = facts.OfType<CustomerAnswered>().Select(f => f.Ask).ToHashSet();
        var asked = facts.OfType<CustomerAsked>().Where(f => !answered.Contains(f.Ask) || dice.Chance(10)).ToList();
        if (asked.Count == 0) return null;
        var one = dice.Pick(asked);
        return new(Somebody(), new TakeAnswer(one.Ask, Why()) { Car = one.Car });
    }

    private Sent? TakeBackOne()
    {
        var recent = _sent.Where(s => _now - s.At < TimeSpan.FromMinutes(dice.Chance(90) ? 1 : 30)).ToList();
        if (recent.Count == 0) return null;
        var (id, actor, _) = dice.Chance(70) ? recent[^1] : dice.Pick(recent);
        return new(dice.Chance(85) ? actor : Somebody(), new TakeBack(id));
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Floor;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Bay;

/// <summary>Makes what one person's phone shows from the state of the shop.</summary>
public static class BayMapping
{
    private const int MostNext = 6;
    private const int MostWaiting = 5;

    /// <summary>The bay of a person as of a picture.</summary>
    public static BayView Of(Picture picture, string personId)
    {
        var shop = picture.Shop;
        var me = shop.People[personId];
        var mine = InHand(shop, personId).ToImmutableArray();
        var tasks = new BayTaskMapping(picture, me);
        return new()
        {
            Stamp = "",
            At = picture.Minute,
            Me = new(me.Id, me.Name, me.IsIn, me.WorksUnder is null ? null : shop.NameOf(me.WorksUnder)),
            Place = mine.Select(m => Where(shop, m.Car, m.State)).FirstOrDefault(),
            Stops = [.. shop.Stops.Values.Where(s => Touches(shop, s, me, mine)).OrderByDescending(s => s.RaisedAt).Select(s => BayStops.Of(picture, s, me))],
            InHand = [.. mine.Select(m => tasks.Task(m.Car, m.State))],
            ToAcknowledge = [.. me.IsIn ? ToAcknowledge(picture, me) : []],
            CanStart = [.. Offers(picture, personId).Select(o => tasks.Next(o, mine))],
            Waiting = [.. me.IsIn ? Waiting(picture, me) : []],
            SecondChecks = [.. SecondChecks(picture, me)],
            TakeBack = [.. TakeBacks(picture, personId)],
            StopScopes = BayStops.Here(shop, mine),
            StopCars = [.. shop.Cars.Values.Select(c => new BayChoice(c.Id, c.Name))],
            StopPlaces = [.. shop.Places.Values.Select(p => new BayChoice(p.Id, p.Name))],
        };
    }

    /// <summary>What a person has in hand.</summary>
    public static IEnumerable<(CarBoard Car, TaskState State)> InHand(ShopState shop, string person) =>
        from car in shop.Cars.Values
        from state in car.Tasks.Values
        where state.Status == WorkStatus.InHand && state.Crew.Any(m => m.Person == person)
        orderby state.InHandSince descending
        select (car, state);

    /// <summary>Where a task is, in words.</summary>
    public static string? Where(ShopState shop, CarBoard car, TaskState state) =>
        (state.Place ?? car.Place) is { } place ? shop.Places.GetValueOrDefault(place)?.Name ?? place : null;

    private static IEnumerable<Offer> Offers(Picture picture, string person) =>
        Evaluation.CanStartFor(picture.Shop, person, picture.Now)
            .OrderBy(o => o.State.Status == WorkStatus.PartDone && o.State.WorkedBy.Contains(person) ? 0 : 1)
            .ThenBy(o => picture.Dates.Of(picture.Shop, o.Car, picture.Now).Nodes.GetValueOrDefault(o.Task.Id)?.Slack ?? TimeSpan.MaxValue)
            .Take(MostNext);

    /// <summary>A stop touches whom it told, whoever works in its scope, and everybody who releases stops.</summary>
    private static bool Touches(ShopState shop, Stop stop, Person me, ImmutableArray<(CarBoard Car, TaskState State)> mine) =>
        stop.Told.ContainsKey(me.Id) || me.Position >= Position.Foreman || stop.RaisedBy == me.Id || stop.Scope == StopScope.Shop
        || mine.Any(m => stop.Car == m.Car.Id || (stop.Place is not null && stop.Place == (m.State.Place ?? m.Car.Place)));

    private static IEnumerable<BayLeft> ToAcknowledge(Picture picture, Person me) =>
        from car in picture.Shop.Cars.Values
        from state in car.Tasks.Values
        where state is { Status: WorkStatus.PartDone, Left: not null } && state.Left!.By != me.Id && !state.Left.AcknowledgedBy.Contains(me.Id)
        let task = PlanIndex.Of(car.Plan).Task(state.Id)
        where task is not null && task.Crew.Any(c => me.IsQualified(c.Qualification, picture.Now))
        select new BayLeft(task.Id, car.Id, task.Name, car.Name, picture.Shop.NameOf(state.Left!.By), picture.Local(state.Left.At), [picture.Shop.Say(state.Left!.Words), .. LeftItems(car, task)]);

    private static IEnumerable<string> LeftItems(CarBoard car, PlanTask task) =>
        task.Changes.Select(c => $"{PlanIndex.Of(car.Plan).Item(c.Item)?.Name}: {car.Items[c.Item].Condition}");

    /// <summary>The tasks that could start soonest of those this person could be on, with everything each waits on.</summary>
    private static IEnumerable<BayWaiting> Waiting(Picture picture, Person me) =>
        (from car in picture.Shop.Cars.Values
         let dates = picture.Dates.Of(picture.Shop, car, picture.Now).Nodes
         from e in picture.Open(car)
         where !e.CanStart && e.Task.Crew.Any(c => me.IsQualified(c.Qualification, picture.Now))
         let node = dates.GetValueOrDefault(e.Task.Id)
         orderby node?.EarlyStart ?? DateTimeOffset.MaxValue, node?.Slack ?? TimeSpan.MaxValue, e.Waiting.Length
         select new BayWaiting(car.Id + "-" + e.Task.Id, e.Task.Name, car.Name, [.. e.Waiting.Select(w => Wait(picture, w))]))
        .Take(MostWaiting);

    /// <summary>One thing waited on, in words.</summary>
    public static BayWait Wait(Picture picture, WaitingOn waiting) => new(
        picture.Shop.Say(waiting.Words),
        waiting.Who.IsEmpty ? null : ShopTime.Names([.. waiting.Who.Select(picture.Shop.NameOf)]),
        waiting.When is { } at && at < DateTimeOffset.MaxValue.AddDays(-1) ? picture.Local(at) : null);

    private static IEnumerable<BaySecondCheck> SecondChecks(Picture picture, Person me) =>
        from car in picture.Shop.Cars.Values
        from state in car.Tasks.Values
        where state.Status == WorkStatus.ForSecondCheck
        let task = PlanIndex.Of(car.Plan).Task(state.Id)
        where task is not null
        let q = new TaskQuestion(picture.Shop, car, task, picture.Now, RuleBook.Full, ShopHours.Of(picture.Shop))
        select new BaySecondCheck(task.Id, car.Id, task.Name, car.Name, picture.Shop.NameOf(state.SignedOff!.By), picture.Local(state.SignedOff.At), NotMine(q, me));

    private static string? NotMine(TaskQuestion q, Person me) => Looks.MayCheck(q, me)
        ? null
        : q.State.WorkedBy.Contains(me.Id) ? "your own work: another person checks it"
        : me.Position == Position.Apprentice ? "an apprentice signs nothing off"
        : q.Task.SecondCheckQualification is { } asked && !me.IsQualified(asked, q.Now) ? $"asks for somebody qualified for {asked}"
        : "your own reading: another person checks it";

    private static IEnumerable<BayTakeBack> TakeBacks(Picture picture, string person) =>
        picture.Shop.Recent.Where(r => r.Actor == person && picture.Now - r.At < Folding.TakeBackWithin && !r.Entries.Any(e => e.Fact is Domain.Entries.TakenBack))
            .Reverse().Take(3)
            .Select(r => new BayTakeBack(r.Id.ToString("D"), TakeBackWords.Of(picture.Shop, r.Entries[0].Fact), picture.Local(r.At + Folding.TakeBackWithin)));
}

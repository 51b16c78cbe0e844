using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>Commands about a car as a whole: take-in, moves, plan, parts, snags, estimates.</summary>
internal static class CarDecisions
{
    public static void Decide(Ask ask, CarCommand command)
    {
        if (command is TakeInCar taken)
        {
            TakeIn(ask, taken);
            return;
        }

        if (ask.Car(command.Car) is not { } car) return;
        switch (command)
        {
            case MoveCar c: Move(ask, car, c); break;
            case ChangePlan c: PlanChanges.Change(ask, car, c); break;
            case RevisePlan c: PlanRevisions.Revise(ask, car, c); break;
            case ReviseEstimate c: Revise(ask, c); break;
            case GiveDate c: CustomerDecisions.Give(ask, c); break;
            case RaiseSnag or FinishSnag: Snag(ask, car, command); break;
            case WriteNote c: CustomerDecisions.Write(ask, car, c); break;
            case ChooseNote c: CustomerDecisions.Choose(ask, car, c); break;
            case AskCustomer c: CustomerDecisions.Put(ask, car, c); break;
            case TakeAnswer c: CustomerDecisions.Take(ask, car, c); break;
            default: Part(ask, car, command); break;
        }
    }

    private static void TakeIn(Ask ask, TakeInCar c)
    {
        if (!ShopDecisions.IsId(c.Car) || c.Car == Fact.ShopStream) ask.Bad("car", "A car's id is lower-case words joined by hyphens, such as heron-coupe.");
        if (ask.Shop.Cars.ContainsKey(c.Car)) ask.Bad("car", $"There is a car '{c.Car}' already.");
        if (string.IsNullOrWhiteSpace(c.Name)) ask.Bad("name", "Give the car a name people can call across the shop.");
        CheckPlace(ask, c.Car, c.Place);
        if (ask.Has(RuleBook.Ids.PlanFault))
            ask.Reasons.AddRange(PlanChanges.Faults(ask, c.Plan));
        if (ask.Reasons.Count == 0) ask.Facts.Add(new CarTakenIn(c.Name.Trim(), c.Plan, c.Place) { Car = c.Car });
    }

    private static void CheckPlace(Ask ask, string car, string? place)
    {
        if (place is null) return;
        if (!ask.Shop.Places.TryGetValue(place, out var found)) ask.Bad("place", $"There is no place '{place}'.");
        else if (ask.Shop.Cars.Values.Count(c => c.Place == place && c.Id != car) >= found.Capacity)
            ask.Refuse(RuleBook.Ids.Place, $"{found.Name} is taken.", about: place);
    }

    private static void Move(Ask ask, CarBoard car, MoveCar c)
    {
        CheckPlace(ask, car.Id, c.Place);
        foreach (var task in car.Tasks.Values.Where(t => t.Status == WorkStatus.InHand && t.Place is null))
            ask.Refuse(RuleBook.Ids.Pinned, $"{PlanIndex.Of(car.Plan).Task(task.Id)?.Name} is in hand on it.", [.. task.Crew.Select(m => m.Person)], task.Id);
        foreach (var danger in Dangers.Standing(ask.Shop).Where(d => d.Car == car.Id && d.Hazard is not null))
        {
            if (ask.Shop.Hazards.GetValueOrDefault(danger.Hazard!) is { PinsCar: true } kind) ask.Refuse(RuleBook.Ids.Pinned, $"{kind.Name}: it may not be moved.", about: danger.Key);
        }

        if (ask.Reasons.Count == 0 && car.Place != c.Place) ask.Facts.Add(new CarMoved(c.Place) { Car = car.Id });
    }

    private static void Revise(Ask ask, ReviseEstimate c)
    {
        if (ask.Task(c) is not { } q) return;
        var e = c.Estimate;
        if (!(e.Low > 0 && e.Low <= e.Usual && e.Usual <= e.High && e.High <= 60_000)) ask.Bad("estimate", "Minutes: 0 < low ≤ usual ≤ high ≤ 60,000.");
        if (q.State.Status is WorkStatus.SignedOff or WorkStatus.ForSecondCheck) ask.Refuse(RuleBook.Ids.TaskState, $"{q.Task.Name} is done.", about: q.Task.Id);
        if (ask.Reasons.Count == 0) ask.Facts.Add(new EstimateRevised(e, c.Why ?? "") { Car = q.Car.Id, Task = q.Task.Id });
    }

    private static void Snag(Ask ask, CarBoard car, CarCommand command)
    {
        if (command is RaiseSnag raise)
        {
            if (string.IsNullOrWhiteSpace(raise.Words)) ask.Bad("words", "Say what is to be put right.");
            if (!ShopDecisions.IsId(raise.Snag) || car.Snags.ContainsKey(raise.Snag)) ask.Bad("snag", "A snag needs an id of its own.");
            if (ask.Reasons.Count == 0) ask.Facts.Add(new SnagRaised(raise.Snag, raise.Words.Trim()) { Car = car.Id });
            return;
        }

        var finish = (FinishSnag)command;
        if (!car.Snags.TryGetValue(finish.Snag, out var snag)) ask.Bad("snag", $"{car.Name} has no snag '{finish.Snag}'.");
        else if (snag.DoneAt is not null) ask.Refuse(RuleBook.Ids.TaskState, $"It was put right by {{{snag.DoneBy}}}.", about: finish.Snag);
        if (ask.Person.Position == Position.Apprentice) ask.Refuse(RuleBook.Ids.ApprenticeSigns, "An apprentice signs nothing off.", about: "actor");
        if (ask.Reasons.Count == 0) ask.Facts.Add(new SnagDone(finish.Snag, finish.How ?? "") { Car = car.Id });
    }

    private static void Part(Ask ask, CarBoard car, CarCommand command)
    {
        var id = command switch { OrderPart c => c.Part, ArrivePart c => c.Part, CheckPart c => c.Part, _ => "" };
        if (!car.Parts.TryGetValue(id, out var part))
        {
            ask.Bad("part", $"{car.Name} has no part '{id}'.");
            return;
        }

        var name = car.Plan.Parts.First(p => p.Id == id).Name;
        if (command is not CheckPart && part.Status == PartStatus.CheckedRight) ask.Refuse(RuleBook.Ids.TaskState, $"{name} is here and checked right.", about: id);
        if (command is CheckPart && part.Status is PartStatus.NotOrdered or PartStatus.Ordered) ask.Refuse(RuleBook.Ids.TaskState, $"{name} has not arrived.", about: id);
        if (command is CheckPart { Right: false } wrong && string.IsNullOrWhiteSpace(wrong.Why)) ask.Bad("why", "Say what is wrong with it.");
        if (ask.Reasons.Count > 0) return;
        ask.Facts.Add(command switch
        {
            OrderPart c => new PartOrdered(id, c.Expected) { Car = car.Id },
            ArrivePart c => new PartArrived(id, c.Shelf) { Car = car.Id },
            CheckPart c => (Fact)new PartChecked(id, c.Right, c.Why) { Car = car.Id },
            _ => throw new InvalidOperationException($"No decision for {command.GetType().Name}."),
        });
    }
}

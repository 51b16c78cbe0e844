using System.Collections.Immutable;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Boards;

/// <summary>Folds facts about one car, all but those about its tasks (<see cref="TaskFolding"/>) and its evidence (<see cref="EvidenceFolding"/>).</summary>
internal static class CarFolding
{
    public static ShopState TakeIn(ShopState shop, CarTakenIn f, Entry entry)
    {
        var car = new CarBoard
        {
            Id = f.Car,
            Name = f.Name,
            Plan = f.Plan,
            PlanAt = entry.Seq,
            Place = f.Place,
            TakenInAt = entry.OccurredAt,
            Tasks = f.Plan.Tasks.ToImmutableSortedDictionary(t => t.Id, t => new TaskState { Id = t.Id }, StringComparer.Ordinal),
            Holds = f.Plan.Holds.ToImmutableSortedDictionary(h => h.Id, h => new Holds.HoldState(h.Id), StringComparer.Ordinal),
            Items = f.Plan.Items.ToImmutableSortedDictionary(i => i.Id, i => new ItemState(i.Id, i.AtTakeIn, entry.OccurredAt, entry.Actor), StringComparer.Ordinal),
            Parts = f.Plan.Parts.ToImmutableSortedDictionary(p => p.Id, p => new PartState(p.Id, PartStatus.NotOrdered), StringComparer.Ordinal),
        };
        return shop with { Cars = shop.Cars.SetItem(f.Car, car) };
    }

    public static CarBoard Fold(CarBoard car, CarFact fact, Entry entry, ShopState shop) => CallFolding.After(FoldOwn(car, fact, entry, shop), fact, entry);

    private static CarBoard FoldOwn(CarBoard car, CarFact fact, Entry entry, ShopState shop) => fact switch
    {
        TaskFact f => TaskFolding.Fold(car, f, entry, shop),
        CarMoved f => car with { Place = f.Place },
        DateWasGiven f => car with { DatesGiven = car.DatesGiven.Add(new(f.Date, entry.OccurredAt, f.Why, f.WordsForCustomer)) },
        PlanChanged f => ChangePlan(car, f, entry),
        PlanRevised f => RevisePlan(car, f, entry),
        ItemChanged f => TaskFolding.Disturb(
            TaskFolding.Hang(car with { Items = car.Items.SetItem(f.Item, new(f.Item, f.To, entry.OccurredAt, entry.Actor)) }, [f.Item], f.HangsIn), f.Disturbs, new(null, entry.Actor, entry.OccurredAt)),
        PartOrdered f => WithPart(car, f.Part, p => p with { Status = PartStatus.Ordered, Expected = f.Expected, Why = null, By = entry.Actor, At = entry.OccurredAt }),
        PartArrived f => WithPart(car, f.Part, p => p with { Status = PartStatus.Arrived, Shelf = f.Shelf, By = entry.Actor, At = entry.OccurredAt }),
        PartChecked f => WithPart(car, f.Part, p => p with
        {
            Status = f.Right ? PartStatus.CheckedRight : PartStatus.Wrong,
            Expected = f.Right ? p.Expected : null,
            Why = f.Why,
            By = entry.Actor,
            At = entry.OccurredAt,
        }),
        SnagRaised f => car with { Snags = car.Snags.SetItem(f.Snag, new(f.Snag, f.Words, entry.Actor, entry.OccurredAt)) },
        SnagDone f => car with { Snags = car.Snags.SetItem(f.Snag, car.Snags[f.Snag] with { DoneBy = entry.Actor, DoneAt = entry.OccurredAt, HowDone = f.How }) },
        NoteWritten f => car with { Notes = car.Notes.Add(new(entry.Seq, f.Words, entry.Actor, entry.OccurredAt, f.Task, f.ForCustomer, f.Chosen)) },
        NoteChosen f => car with { Notes = car.Notes.ConvertAll(n => n.Seq == f.Note ? n with { Chosen = f.Show } : n) },
        CustomerAsked f => car with { Asks = car.Asks.SetItem(f.Ask, new(f.Ask, f.Words, f.By, entry.Actor, entry.OccurredAt)) },
        CustomerAnswered f => car with { Asks = car.Asks.SetItem(f.Ask, car.Asks[f.Ask] with { Answer = f.Answer, AnsweredBy = entry.Actor, AnsweredAt = entry.OccurredAt }) },
        TaskLetThrough f => car with { LetThrough = car.LetThrough.SetItem(f.Hold + "|" + f.Task, f.Why) },
        _ => EvidenceFolding.Fold(car, fact, entry),
    };

    private static CarBoard WithPart(CarBoard car, string id, Func<PartState, PartState> change) =>
        car with { Parts = car.Parts.SetItem(id, change(car.Parts[id])) };

    private static CarBoard ChangePlan(CarBoard car, PlanChanged f, Entry entry)
    {
        var differs = new PlanDifference { NodesAdded = [.. f.Added.Select(t => t.Id)], NodesTakenOut = f.TakenOut, LinksAdded = f.LinksAdded, LinksTakenOut = f.LinksTakenOut };
        return Stepped(car, f.ApplyTo(car.Plan), differs, f.Why, entry) with
        {
            Tasks = car.Tasks.RemoveRange(f.TakenOut).SetItems(f.Added.Select(t => KeyValuePair.Create(t.Id, new TaskState { Id = t.Id }))),
        };
    }

    /// <summary>What was begun keeps its state, what is new begins; a new estimate counts before one that was revised.</summary>
    private static CarBoard RevisePlan(CarBoard car, PlanRevised f, Entry entry)
    {
        var was = PlanIndex.Of(car.Plan);
        return Stepped(car, f.Plan, f.Differs, f.Why, entry) with
        {
            Tasks = Only(car.Tasks, f.Plan.Tasks, t => t.Id, t => car.Tasks.TryGetValue(t.Id, out var known) ? known with { Revised = was.Task(t.Id)?.Estimate == t.Estimate ? known.Revised : null } : new TaskState { Id = t.Id }),
            Holds = Only(car.Holds, f.Plan.Holds, h => h.Id, h => car.Holds.GetValueOrDefault(h.Id) ?? new Holds.HoldState(h.Id)),
            Items = Only(car.Items, f.Plan.Items, i => i.Id, i => car.Items.GetValueOrDefault(i.Id) ?? new ItemState(i.Id, i.AtTakeIn, entry.OccurredAt, entry.Actor)),
            Parts = Only(car.Parts, f.Plan.Parts, p => p.Id, p => car.Parts.GetValueOrDefault(p.Id) ?? new PartState(p.Id, PartStatus.NotOrdered)),
            Call = car.Call.RemoveRange(car.Call.Where(a => f.Plan.Holds.All(h => h.Id != a.Value.Hold)).Select(a => a.Key)),
        };
    }

    private static CarBoard Stepped(CarBoard car, Plan plan, PlanDifference differs, string why, Entry entry) => car with
    {
        Plan = plan,
        PlanAt = entry.Seq,
        PlanSteps = car.PlanSteps.Add(new(entry.Seq, entry.Actor, entry.OccurredAt, why, [.. differs.Words(car.Plan, plan)])),
    };

    private static ImmutableSortedDictionary<string, TState> Only<TState, TPlanned>(
        ImmutableSortedDictionary<string, TState> states, IEnumerable<TPlanned> planned, Func<TPlanned, string> id, Func<TPlanned, TState> state) =>
        states.Clear().SetItems(planned.Select(p => KeyValuePair.Create(id(p), state(p))));
}

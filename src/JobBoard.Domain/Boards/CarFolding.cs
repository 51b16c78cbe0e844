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
        PlanChanged f => ChangePlan(car, f),
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

    private static CarBoard ChangePlan(CarBoard car, PlanChanged f)
    {
        var plan = f.ApplyTo(car.Plan);
        return car with
        {
            Plan = plan,
            Tasks = car.Tasks.RemoveRange(f.TakenOut).SetItems(f.Added.Select(t => KeyValuePair.Create(t.Id, new TaskState { Id = t.Id }))),
        };
    }
}

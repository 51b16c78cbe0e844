using System.Collections.Immutable;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Holds;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Boards;

/// <summary>Folds entries into the state. Everything an entry needs is in it: nothing is judged here.</summary>
public static class Folding
{
    /// <summary>How long a command can be taken back.</summary>
    public static TimeSpan TakeBackWithin { get; } = TimeSpan.FromMinutes(1);

    /// <summary>The state after one more entry.</summary>
    /// <exception cref="InvalidOperationException">The entry is not the next one.</exception>
    public static ShopState Apply(ShopState shop, Entry entry)
    {
        if (entry.Seq != shop.Seq + 1) throw new InvalidOperationException($"Entry {entry.Seq} does not follow {shop.Seq}.");
        var next = entry.Fact is TakenBack back ? WithoutCommand(shop, back.Command) : Fold(shop, entry);
        return Remember(shop, next, entry) with { Seq = entry.Seq, RecordedAt = entry.RecordedAt };
    }

    /// <summary>What an entry says, folded in, without its place in the day book.</summary>
    internal static ShopState Fold(ShopState shop, Entry entry) => entry.Fact switch
    {
        CarTakenIn taken => CarFolding.TakeIn(shop, taken, entry),
        CarFact fact when shop.Cars.TryGetValue(fact.Car, out var car) =>
            shop with { Cars = shop.Cars.SetItem(car.Id, CarFolding.Fold(car, fact, entry, shop)) },
        _ => CallFolding.After(FoldShop(shop, entry), entry),
    };

    private static ShopState FoldShop(ShopState shop, Entry entry) => entry.Fact switch
    {
        ShopSet f => shop with { Name = f.Name, Zone = f.Zone, Hours = f.Hours, Closed = f.Closed },
        ContactSet f => shop with { Phone = f.Phone, Mail = f.Mail },
        PlaceSet f => shop with { Places = shop.Places.SetItem(f.Place.Id, f.Place) },
        PlaceTakenOut f => shop with { Places = shop.Places.Remove(f.Place) },
        GearSet f => shop with { Gear = shop.Gear.SetItem(f.Gear.Id, f.Gear) },
        InstrumentSet f => shop with { Instruments = shop.Instruments.SetItem(f.Instrument.Id, f.Instrument) },
        HazardSet f => shop with { Hazards = shop.Hazards.SetItem(f.Hazard.Id, f.Hazard) },
        KeepApartSet f => shop with { KeepApart = shop.KeepApart.SetItem(f.Rule.Id, f.Rule) },
        KeepApartTakenOut f => shop with { KeepApart = shop.KeepApart.Remove(f.Rule) },
        ShopItemSet f => shop with { Items = shop.Items.SetItem(f.Item.Id, f.Item) },
        ShopItemChanged f => shop with { Items = shop.Items.SetItem(f.Item, shop.Items[f.Item] with { Condition = f.To }) },
        TemplateSaved f => shop with { Templates = shop.Templates.SetItem(f.Plan.Id, f.Plan) },
        _ => FoldPeople(shop, entry),
    };

    private static ShopState FoldPeople(ShopState shop, Entry entry) => entry.Fact switch
    {
        PersonSet f => WithPerson(shop, f.Person, p => p with
        {
            Position = f.Position,
            Outside = f.Outside,
            WorksUnder = f.WorksUnder,
            Qualifications = f.Qualifications,
            Hours = f.Hours,
            Left = false,
        }),
        PersonNamed f => WithPerson(shop, f.Person, p => p with { Name = f.Name }),
        PersonCameIn f => WithPerson(shop, f.Person, p => p with { InSince = entry.OccurredAt }),
        PersonWentOut f => WithPerson(shop, f.Person, p => p with { InSince = null }),
        PersonAway f => WithPerson(shop, f.Person, p => p with { Absences = p.Absences.Add(new(f.From, f.To, f.Why)) }),
        PersonLeft f => WithPerson(shop, f.Person, p => p with { Left = true, InSince = null }),
        _ => FoldStops(shop, entry),
    };

    private static ShopState FoldStops(ShopState shop, Entry entry) => entry.Fact switch
    {
        StopRaised f => shop with { Stops = shop.Stops.SetItem(f.Stop, Raised(shop, f, entry)) },
        StopHeard f => WithStop(shop, f.Stop, s => s with { Told = s.Told.SetItem(f.Person, entry.OccurredAt) }),
        StopMadeSafe f => WithStop(shop, f.Stop, s => s with { Safe = new(entry.Actor, entry.OccurredAt, f.How) }),
        StopReleased f => shop with { Stops = shop.Stops.Remove(f.Stop) },
        _ => shop,
    };

    private static Stop Raised(ShopState shop, StopRaised f, Entry entry) => new()
    {
        Id = f.Stop,
        Scope = f.Scope,
        Car = f.Car,
        Task = f.Task,
        Place = f.Place,
        Why = f.Why,
        Clash = f.Clash,
        RaisedBy = entry.Actor,
        RaisedAt = entry.OccurredAt,
        Tasks = f.Tasks,
        WorkedBy = ImmutableSortedSet.CreateRange(StringComparer.Ordinal, f.Tasks.SelectMany(t => WorkedOn(shop, t))),
        Told = f.Told.ToImmutableSortedDictionary(p => p, p => p == entry.Actor ? entry.OccurredAt : (DateTimeOffset?)null, StringComparer.Ordinal),
    };

    /// <summary>Everybody who worked on a task <c>car/task</c> in its present life.</summary>
    private static IEnumerable<string> WorkedOn(ShopState shop, string key) =>
        key.Split('/') is [var car, var task] && shop.Cars.TryGetValue(car, out var board) && board.Tasks.TryGetValue(task, out var state) ? state.WorkedBy : [];

    private static ShopState WithPerson(ShopState shop, string id, Func<Person, Person> change)
    {
        var person = shop.People.GetValueOrDefault(id) ?? new Person { Id = id, Name = id, Position = Position.Technician };
        return shop with { People = shop.People.SetItem(id, change(person)) };
    }

    private static ShopState WithStop(ShopState shop, string id, Func<Stop, Stop> change) =>
        shop.Stops.TryGetValue(id, out var stop) ? shop with { Stops = shop.Stops.SetItem(id, change(stop)) } : shop;

    /// <summary>Notes what was touched, and keeps the commands of the last minute with the state before each.</summary>
    private static ShopState Remember(ShopState before, ShopState after, Entry entry)
    {
        var touch = new Touch(entry.Seq, entry.Actor, entry.RecordedAt, EntryKinds.KindOf(entry.Fact));
        var touched = after.Touched.SetItems(entry.Fact.Footprint.Select(key => KeyValuePair.Create(key, touch.After(after.Touched.GetValueOrDefault(key)))));
        var recent = after.Recent.RemoveAll(r => entry.RecordedAt - r.At > TakeBackWithin);
        var open = recent.FindLastIndex(r => r.Id == entry.CommandId);
        recent = open >= 0
            ? recent.SetItem(open, recent[open] with { Entries = recent[open].Entries.Add(entry), Footprint = recent[open].Footprint.Union(entry.Fact.Footprint) })
            : recent.Add(new(entry.CommandId, entry.Actor, entry.RecordedAt, before with { Recent = [] }, [entry], [.. entry.Fact.Footprint]));
        return after with { Touched = touched, Recent = recent };
    }

    /// <summary>
    /// The state as if a command of the last minute had not been: the state before it with everything since folded on again.
    /// Exact, because taking back is refused when anything since touched the same things.
    /// </summary>
    private static ShopState WithoutCommand(ShopState shop, Guid command)
    {
        var at = shop.Recent.FindIndex(r => r.Id == command);
        if (at < 0) throw new InvalidOperationException($"Command {command} cannot be taken back any more.");
        var state = shop.Recent[at].Before;
        var recent = shop.Recent.GetRange(0, at);
        foreach (var later in shop.Recent.Skip(at + 1))
        {
            recent = recent.Add(later with { Before = state });
            foreach (var entry in later.Entries) state = Fold(state, entry);
        }

        return state with { Touched = shop.Touched, Recent = recent };
    }
}

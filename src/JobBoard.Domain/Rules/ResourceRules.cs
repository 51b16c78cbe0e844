using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>Place, gear, people, and how the task was left.</summary>
internal static class ResourceRules
{
    public static IEnumerable<WaitingOn> Of(TaskQuestion q, StartCheck.With with)
    {
        foreach (var waiting in InPlace(q, with.Place)) yield return waiting;
        var taken = ImmutableArray<string>.Empty;
        foreach (var need in q.Task.Gear)
        {
            if (PickGear(q, need, taken) is { } gear) taken = taken.Add(gear.Id);
            else if (q.Has(RuleBook.Ids.Gear)) yield return NoGear(q, need);
        }

        IEnumerable<WaitingOn> lacks = with.Crew is { } named ? Crewing.Lacks(q.Shop, q.Car, q.Task, named, q.Now, q.Rules) : AnyCrew(q, with);
        foreach (var waiting in lacks) yield return waiting;
        foreach (var waiting in Acknowledged(q, with.Crew ?? [])) yield return waiting;
    }

    private static ImmutableArray<WaitingOn> AnyCrew(TaskQuestion q, StartCheck.With with) =>
        q.Crews is { } book && with.TreatFree is null && q.State.Status != WorkStatus.InHand
            ? book.Against(q.Shop, q.Car, q.Task, q.Now, q.Rules)
            : Crewing.AgainstAny(q.Shop, q.Car, q.Task, q.Now, q.Rules, with.TreatFree);

    /// <summary>
    /// Gear for one need: what the task has; where its load hangs in gear of that kind, that and no other; else what is free. Rated,
    /// in date and reaching the car in any case.
    /// </summary>
    public static Gear? PickGear(TaskQuestion q, GearNeed need, ImmutableArray<string> taken)
    {
        var held = q.State.Gear;
        return ToPickFrom(q, need, taken)
            .Where(g => Fits(q, g, need) && (held.Contains(g.Id) || IsFree(q, g)))
            .OrderBy(g => held.Contains(g.Id) ? 0 : 1).ThenBy(g => g.RatedKg ?? 0).ThenBy(g => g.Id, StringComparer.Ordinal)
            .FirstOrDefault();
    }

    /// <summary>Gear for every need of the task, or nothing where one finds none.</summary>
    public static ImmutableArray<string> AllGear(TaskQuestion q)
    {
        var taken = ImmutableArray<string>.Empty;
        foreach (var need in q.Task.Gear)
        {
            if (PickGear(q, need, taken) is { } gear) taken = taken.Add(gear.Id);
        }

        return taken;
    }

    /// <summary>Gear in use by the task that is no longer fit for it.</summary>
    public static IEnumerable<WaitingOn> GearLost(TaskQuestion q)
    {
        foreach (var gear in q.State.Gear.Select(g => q.Shop.Gear.GetValueOrDefault(g)).OfType<Gear>())
        {
            var fit = q.Task.Gear.Any(n => n.Kind == gear.Kind && gear.OutOfUse is null && !(n.MinRatedKg > (gear.RatedKg ?? 0)) && !(gear.InspectedUntil <= q.Now));
            if (q.Has(RuleBook.Ids.Gear) && !fit) yield return new(RuleBook.Ids.Gear, $"{gear.Name} is no longer rated, in date and in use.", q.Foremen, About: gear.Id);
        }
    }

    private static bool Fits(TaskQuestion q, Gear gear, GearNeed need) =>
        gear.OutOfUse is null && !(need.MinRatedKg > (gear.RatedKg ?? 0)) && !(gear.InspectedUntil <= q.Now) && ReachesCar(q, gear);

    private static bool ReachesCar(TaskQuestion q, Gear gear) =>
        gear.Sweep is null || q.Car.Place is null || !q.Shop.Places.TryGetValue(q.Car.Place, out var place) || gear.Sweep.Overlaps(place.Area);

    private static Gear[] ToPickFrom(TaskQuestion q, GearNeed need, ImmutableArray<string> taken)
    {
        var loaded = Loads.OfTask(q).ToHashSet(StringComparer.Ordinal);
        Gear[] kind = [.. q.Shop.Gear.Values.Where(g => g.Kind == need.Kind && !taken.Contains(g.Id))];
        return kind.Any(g => loaded.Contains(g.Id)) ? [.. kind.Where(g => loaded.Contains(g.Id))] : kind;
    }

    private static bool IsFree(TaskQuestion q, Gear gear) =>
        HolderOf(q.Shop, gear.Id) is null && (Loads.In(q.Shop, gear.Id) is null || Loads.OfTask(q).Contains(gear.Id));

    /// <summary>The task in hand that has a piece of gear now.</summary>
    private static (CarBoard Car, TaskState Task)? HolderOf(ShopState shop, string gear)
    {
        foreach (var car in shop.Cars.Values)
        {
            foreach (var task in Going.On(car).InHand)
            {
                if (task.Gear.Contains(gear)) return (car, task);
            }
        }

        return null;
    }

    private static WaitingOn NoGear(TaskQuestion q, GearNeed need)
    {
        var kind = ToPickFrom(q, need, []);
        if (kind.FirstOrDefault(g => Fits(q, g, need) && !IsFree(q, g)) is { } busy) return Taken(q, need, busy);
        var rated = need.MinRatedKg is { } kg ? $" rated for {kg} kg" : "";
        var why = string.Join("; ", kind.Select(g => $"{g.Name}: {WhyNot(q, g, need)}"));
        return new(RuleBook.Ids.Gear, $"No {need.Kind}{rated}, in date and within reach{(why.Length > 0 ? " (" + why + ")" : "")}.", q.Foremen, About: need.Kind);
    }

    private static WaitingOn Taken(TaskQuestion q, GearNeed need, Gear gear)
    {
        if (HolderOf(q.Shop, gear.Id) is { } holder)
            return new(RuleBook.Ids.Gear, $"{gear.Name} is taken by {NameOf(holder.Car, holder.Task.Id)} on {holder.Car.Name}.", [.. holder.Task.Crew.Select(m => m.Person)], About: need.Kind);
        var load = Loads.In(q.Shop, gear.Id)!.Value;
        return new(RuleBook.Ids.Gear, $"{gear.Name} is taken: {PlanIndex.Of(load.Car.Plan).Item(load.Item)!.Name} of {load.Car.Name} hangs in it.", q.Foremen, About: need.Kind);
    }

    private static string WhyNot(TaskQuestion q, Gear gear, GearNeed need) => gear switch
    {
        { OutOfUse: { } why } => "out of use, " + why,
        _ when need.MinRatedKg > (gear.RatedKg ?? 0) => $"rated {gear.RatedKg ?? 0} kg",
        _ when gear.InspectedUntil <= q.Now => "inspection run out",
        _ when !ReachesCar(q, gear) => "does not reach the car",
        _ => "taken",
    };

    private static string NameOf(CarBoard car, string task) => PlanIndex.Of(car.Plan).Task(task)?.Name ?? task;

    private static IEnumerable<WaitingOn> InPlace(TaskQuestion q, string? asked)
    {
        if (!q.Has(RuleBook.Ids.Place)) yield break;
        if (q.Task.Place == "car")
        {
            if (q.Car.Place is null) yield return new(RuleBook.Ids.Place, $"Nobody has said where {q.Car.Name} stands.", q.Foremen, About: "car");
        }
        else if (PickPlace(q, asked) is null)
        {
            yield return new(RuleBook.Ids.Place, $"No {q.Task.Place} has room.", About: q.Task.Place);
        }
    }

    /// <summary>Where the task would be done: at the car, or at the place it would take.</summary>
    public static string? PlaceOf(TaskQuestion q, string? asked) => q.Task.Place == "car" ? q.Car.Place : PickPlace(q, asked)?.Id;

    /// <summary>The place to take for a task not done at the car: the first with room, by id.</summary>
    public static Place? PickPlace(TaskQuestion q, string? asked) => q.Shop.Places.Values
        .Where(p => p.Kind == q.Task.Place && (asked is null || p.Id == asked) && TasksAt(q.Shop, p.Id) < p.Capacity)
        .FirstOrDefault();

    private static int TasksAt(ShopState shop, string place) =>
        shop.Cars.Values.Sum(c => Going.On(c).InHand.Count(t => t.Place == place));

    private static IEnumerable<WaitingOn> Acknowledged(TaskQuestion q, ImmutableArray<CrewMember> crew)
    {
        if (!q.Has(RuleBook.Ids.HowLeft) || q.State is not { Status: WorkStatus.PartDone, Left: { } left }) yield break;
        foreach (var member in crew)
        {
            if (member.Person != left.By && !left.AcknowledgedBy.Contains(member.Person))
                yield return new(RuleBook.Ids.HowLeft, $"{{{member.Person}}} has not acknowledged how it was left: {left.Words}.", [member.Person], About: member.Person);
        }
    }
}

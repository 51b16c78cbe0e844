using JobBoard.Domain.Boards;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Hazards;

/// <summary>Two dangers that stand, or would stand, together although a rule keeps them apart.</summary>
public sealed record Clashing(KeepApart Rule, Danger One, Danger Other)
{
    /// <summary>Stable name of the clash.</summary>
    public string Key => string.CompareOrdinal(One.Key, Other.Key) <= 0
        ? $"keep-apart:{Rule.Id}|{One.Key}|{Other.Key}"
        : $"keep-apart:{Rule.Id}|{Other.Key}|{One.Key}";
}

/// <summary>Keeps dangers apart.</summary>
public static class Apart
{
    /// <summary>All pairs among the standing dangers that must not stand together.</summary>
    public static IEnumerable<Clashing> Among(ShopState shop)
    {
        var standing = StandingDangers.In(shop).All;
        return Enumerable.Range(0, standing.Length).SelectMany(i => Beside(shop, standing[i], i + 1));
    }

    /// <summary>What of <paramref name="added"/> may not stand beside what stands already.</summary>
    public static IEnumerable<Clashing> Between(ShopState shop, IEnumerable<Danger> added) => added.SelectMany(a => Beside(shop, a, 0));

    private static IEnumerable<Clashing> Beside(ShopState shop, Danger danger, int first) =>
        from pair in StandingDangers.In(shop).Opposite(danger, first)
        where !Exempt(shop, danger, pair.Other) && Reaches(shop, pair.Rule, danger, pair.Other)
        select new Clashing(pair.Rule, danger, pair.Other);

    /// <summary>A task is not kept from its own dangers, nor from one that it puts right. One item is in one condition.</summary>
    private static bool Exempt(ShopState shop, Danger a, Danger b) =>
        a.Car == b.Car && a.Car is not null
        && ((a.Task is not null && a.Task == b.Task) || (a.Item is not null && a.Item == b.Item) || PutsRight(shop, a, b) || PutsRight(shop, b, a));

    private static bool PutsRight(ShopState shop, Danger worker, Danger danger)
    {
        if (worker.Task is null || !shop.Cars.TryGetValue(worker.Car!, out var car)) return false;
        if (PlanIndex.Of(car.Plan).Task(worker.Task) is not { } task) return false;
        if (danger.Item is not null) return task.Changes.Any(c => c.Item == danger.Item && c.To != danger.Condition);
        var standing = car.Standing.Find(s => s.Id == danger.Standing);
        return standing?.EndsByReading is { } reading && reading.StartsWith(task.Id + "/", StringComparison.Ordinal);
    }

    /// <summary>Whether the rule's scope joins the two. Where a position is unknown the scope is the whole shop.</summary>
    public static bool Reaches(ShopState shop, KeepApart rule, Danger a, Danger b) => rule.Scope switch
    {
        Scope.Car => a.Car is null || b.Car is null || a.Car == b.Car,
        Scope.Bay => a.Place is null || b.Place is null || a.Place == b.Place,
        Scope.Distance => Near(shop, a, b, (double)(rule.Metres ?? 0)),
        Scope.Sweep => Swept(shop, a, b),
        _ => true,
    };

    private static bool Near(ShopState shop, Danger a, Danger b, double metres) =>
        AreaOf(shop, a) is not { } one || AreaOf(shop, b) is not { } other || one.DistanceTo(other) <= metres;

    private static bool Swept(ShopState shop, Danger a, Danger b)
    {
        if (AreaOf(shop, a) is not { } one || AreaOf(shop, b) is not { } other) return true;
        if (a.Sweeps.IsEmpty && b.Sweeps.IsEmpty) return SweptByAny(shop, one, other);
        return a.Place == b.Place || a.Sweeps.Any(s => s.Overlaps(other)) || b.Sweeps.Any(s => s.Overlaps(one));
    }

    /// <summary>
    /// A load that nobody works on hangs in some gear over its place: whatever that gear can sweep is under it. Where no gear
    /// reaches either place nobody knows what it hangs in, and it is the whole shop.
    /// </summary>
    private static bool SweptByAny(ShopState shop, Area one, Area other)
    {
        var over = shop.Gear.Values.Select(g => g.Sweep).OfType<Area>().Where(s => s.Overlaps(one) || s.Overlaps(other)).ToArray();
        return over.Length == 0 || one == other || over.Any(s => s.Overlaps(one) && s.Overlaps(other));
    }

    private static Area? AreaOf(ShopState shop, Danger danger) =>
        danger.Place is not null && shop.Places.TryGetValue(danger.Place, out var place) ? place.Area : null;
}

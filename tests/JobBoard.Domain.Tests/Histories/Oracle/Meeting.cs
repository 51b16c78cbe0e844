using JobBoard.Domain.Hazards;
using JobBoard.Domain.Places;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>Which dangers may not meet, and whether they do.</summary>
public sealed partial class Dangers
{
    /// <summary>Pairs that one of the ones and one of the others make although a rule keeps them apart.</summary>
    public IEnumerable<(KeepApart Rule, Danger One, Danger Other)> Clashes(IReadOnlyCollection<Danger> ones, IReadOnlyCollection<Danger> others) =>
        from rule in shop.Apart.Values
        from one in ones
        let a = Fits(rule.A, one)
        let b = Fits(rule.B, one)
        where a || b
        from other in others
        where (a && Fits(rule.B, other)) || (b && Fits(rule.A, other))
        where !Own(one, other) && Reaches(rule, one, other)
        select (rule, one, other);

    private static bool Fits(Side side, Danger danger) =>
        side.Hazard is { } hazard ? danger.Hazard == hazard : danger.Hazard is null && side.Item == danger.Item && side.Condition == danger.Condition;

    /// <summary>A task is not kept from its own dangers, nor from one that it puts right; an item is in one condition at a time.</summary>
    private bool Own(Danger one, Danger other)
    {
        if (one == other) return true;
        if (one.Car is null || one.Car != other.Car) return false;
        if (one.Task is not null && one.Task == other.Task) return true;
        return (one.Item is not null && one.Item == other.Item) || PutsRight(one, other) || PutsRight(other, one);
    }

    private bool PutsRight(Danger worker, Danger danger)
    {
        if (worker.Task is null || !shop.Cars[worker.Car!].Tasks.ContainsKey(worker.Task)) return false;
        var task = shop.Cars[worker.Car!].Task(worker.Task);
        if (danger.Item is not null) return task.Changes.Any(c => c.Item == danger.Item && c.To != danger.Condition);
        return danger.EndsBy?.Split('/')[0] == task.Id;
    }

    /// <summary>Whether two dangers are within the scope of a rule; where a position is unknown that is the whole shop.</summary>
    private bool Reaches(KeepApart rule, Danger one, Danger other)
    {
        if (rule.Scope == Scope.Shop || one.Car is null || other.Car is null) return true;
        if (rule.Scope == Scope.Car) return one.Car == other.Car;
        var (a, b) = (AreaOf(one), AreaOf(other));
        if (a is null || b is null) return true;
        return rule.Scope switch
        {
            Scope.Bay => one.Place == other.Place,
            Scope.Distance => rule.Metres is not { } metres || Nearer(a, b, metres),
            _ when !Sweeps(one).Any() && !Sweeps(other).Any() => Hangs(a, b),
            _ => one.Place == other.Place || Sweeps(one).Any(s => Overlap(s, b)) || Sweeps(other).Any(s => Overlap(s, a)),
        };
    }

    /// <summary>A load left hanging hangs in some gear over it; where there is none over either place, nobody knows in which.</summary>
    private bool Hangs(Area a, Area b)
    {
        var over = shop.Gear.Values.Select(g => g.Sweep).OfType<Area>().Where(s => Overlap(s, a) || Overlap(s, b)).ToList();
        return over.Count == 0 || a == b || over.Any(s => Overlap(s, a) && Overlap(s, b));
    }

    private Area? AreaOf(Danger danger) => danger.Place is not null && shop.Places.TryGetValue(danger.Place, out var place) ? place.Area : null;

    private IEnumerable<Area> Sweeps(Danger danger) => danger.Gear.Select(g => shop.Gear[g].Sweep).OfType<Area>();

    public static bool Overlap(Area a, Area b) => Gap(a.X, a.Width, b.X, b.Width) < 0 && Gap(a.Y, a.Depth, b.Y, b.Depth) < 0;

    private static bool Nearer(Area a, Area b, decimal metres)
    {
        var dx = Math.Max(0, Gap(a.X, a.Width, b.X, b.Width));
        var dy = Math.Max(0, Gap(a.Y, a.Depth, b.Y, b.Depth));
        return (dx * dx) + (dy * dy) <= metres * metres;
    }

    /// <summary>How far two stretches are apart; below nothing where they overlap.</summary>
    private static decimal Gap(decimal a, decimal along, decimal b, decimal across) => Math.Max(a, b) - Math.Min(a + along, b + across);
}

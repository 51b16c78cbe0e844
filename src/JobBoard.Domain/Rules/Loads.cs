using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Rules;

/// <summary>
/// Loads and the gear they hang in. Gear belongs to its task only while somebody is on it; what hangs in it when they leave keeps it,
/// until a task that has to do with that load takes it over or the load is out of it.
/// </summary>
internal static class Loads
{
    /// <summary>Whether an item in this condition hangs in gear.</summary>
    public static bool Hangs(ShopState shop, CarBoard car, string item, string condition)
    {
        foreach (var danger in PlanIndex.Of(car.Plan).Item(item)?.Dangers ?? [])
        {
            if (danger.Condition == condition && shop.Hazards.GetValueOrDefault(danger.Hazard) is { HangsInGear: true }) return true;
        }

        return false;
    }

    /// <summary>
    /// What the items hang in once the task leaves them so: the gear of the task where it has some, else what they hung in before.
    /// </summary>
    public static ImmutableSortedDictionary<string, ImmutableArray<string>> After(TaskQuestion q, ImmutableSortedDictionary<string, string> items)
    {
        var hang = ShopState.ById<ImmutableArray<string>>().ToBuilder();
        foreach (var (item, condition) in items)
        {
            if (!Hangs(q.Shop, q.Car, item, condition)) continue;
            var gear = q.State.Gear.IsEmpty ? q.Car.HangsIn.GetValueOrDefault(item, []) : q.State.Gear;
            if (!gear.IsEmpty) hang[item] = gear;
        }

        return hang.ToImmutable();
    }

    /// <summary>The same for one item changed outside a task: it hangs in what it hung in.</summary>
    public static ImmutableSortedDictionary<string, ImmutableArray<string>> After(ShopState shop, CarBoard car, string item, string condition) =>
        car.HangsIn.TryGetValue(item, out var gear) && Hangs(shop, car, item, condition) ? ShopState.ById<ImmutableArray<string>>().Add(item, gear) : ShopState.ById<ImmutableArray<string>>();

    /// <summary>Gear in which something hangs that the task changes or has to find hanging.</summary>
    public static IEnumerable<string> OfTask(TaskQuestion q) =>
        q.Task.Changes.Select(c => c.Item).Concat(q.Task.Needs.Select(n => n.Item)).SelectMany(i => q.Car.HangsIn.GetValueOrDefault(i, []));

    /// <summary>The load that hangs in a piece of gear, or nothing.</summary>
    public static (CarBoard Car, string Item)? In(ShopState shop, string gear)
    {
        foreach (var car in shop.Cars.Values)
        {
            foreach (var (item, hangs) in car.HangsIn)
            {
                if (hangs.Contains(gear)) return (car, item);
            }
        }

        return null;
    }

    /// <summary>
    /// Whether whoever leaves a change on the way has to say what condition the item is in: it passes through others, or one of
    /// them is dangerous. Anything else is taken to be as it was.
    /// </summary>
    public static bool HasToBeSaid(ShopState shop, CarBoard car, Change change) =>
        !change.Through.IsEmpty || change.Path.Any(c => Dangers.IsDangerous(shop, car, change.Item, c));

    /// <summary>What is taken of a change that nobody spoke for: the worst it can be. A hanging load first, then any danger, then what it was.</summary>
    public static string Worst(ShopState shop, CarBoard car, Change change)
    {
        var now = car.Items[change.Item].Condition;
        return change.Path.FirstOrDefault(c => Hangs(shop, car, change.Item, c))
            ?? change.Path.FirstOrDefault(c => Dangers.IsDangerous(shop, car, change.Item, c))
            ?? (change.Through.IsEmpty ? now : change.Through[0]);
    }
}

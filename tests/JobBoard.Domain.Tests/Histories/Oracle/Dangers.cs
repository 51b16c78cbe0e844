using JobBoard.Domain.Hazards;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>
/// One danger that stands, or would stand if a task were started: a hazard, or an item in a condition.
/// </summary>
/// <param name="Car">The car, nothing for a thing of the shop.</param>
/// <param name="Task">The task it comes from, nothing where it comes from a condition alone.</param>
/// <param name="Hazard">The hazard, if it is one.</param>
/// <param name="Item">The item it comes from, <c>shop/ID</c> for one of the shop's.</param>
/// <param name="Condition">The condition it comes from.</param>
/// <param name="Place">Where it stands, nothing where unknown.</param>
/// <param name="Gear">Gear that carries it.</param>
/// <param name="EndsBy">The reading that ends it, if one does.</param>
public sealed record Danger(string? Car, string? Task, string? Hazard, string? Item, string? Condition, string? Place, IReadOnlyList<string> Gear, string? EndsBy = null);

/// <summary>Which dangers stand in the shop.</summary>
public sealed partial class Dangers(Picture shop)
{
    /// <summary>All that stand now.</summary>
    public List<Danger> All() => [.. shop.Cars.Values.SelectMany(OfCar), .. shop.Items.Values.SelectMany(OfShop)];

    /// <summary>Those that a start would add: its hazards, and conditions on its way that do not stand yet.</summary>
    public List<Danger> OfStart(CarPicture car, PlanTask task, string? place, IReadOnlyList<string> gear) =>
    [
        .. task.Hazards.Select(h => new Danger(car.Id, task.Id, h.Hazard, null, null, place, gear, h.EndsByReading)),
        .. task.Changes.SelectMany(c => c.Path.Distinct().Where(on => on != car.Items[c.Item]).SelectMany(on => OfCondition(car, c.Item, on)))
            .Select(d => d with { Task = task.Id, Place = place, Gear = [.. gear, .. car.HangsIn.GetValueOrDefault(d.Item!, [])] }),
    ];

    private IEnumerable<Danger> OfCar(CarPicture car)
    {
        foreach (var standing in car.Standing.Values)
            yield return new(car.Id, standing.Task, standing.Hazard, null, null, standing.Place ?? car.Place, [], standing.EndsByReading);
        var inHand = car.Tasks.Values.Where(t => t.InHand).ToList();
        foreach (var task in inHand)
            foreach (var hazard in car.Task(task.Id).Hazards.Where(h => shop.Hazards[h.Hazard].Ends is HazardEnd.WithTheWork or HazardEnd.WithTheCondition))
                yield return new(car.Id, task.Id, hazard.Hazard, null, null, task.Place ?? car.Place, task.Gear);
        foreach (var (item, condition) in car.Items.Where(i => MayEndanger(car, i.Key)))
        {
            var worker = inHand.FirstOrDefault(t => Changes(car, t, item));
            var path = worker is null ? [condition] : car.Task(worker.Id).Changes.First(c => c.Item == item).Path.Append(condition).Distinct();
            List<string> gear = [.. worker?.Gear ?? [], .. car.HangsIn.GetValueOrDefault(item, [])];
            foreach (var danger in path.SelectMany(on => OfCondition(car, item, on)))
                yield return danger with { Task = worker?.Id, Gear = gear, Place = worker?.Place ?? car.Place };
        }
    }

    /// <summary>Whether a condition is named by a rule on its own account.</summary>
    private bool IsSide(string item, string condition) =>
        shop.Apart.Values.Any(r => (r.A.Item == item && r.A.Condition == condition) || (r.B.Item == item && r.B.Condition == condition));

    private bool MayEndanger(CarPicture car, string item) =>
        car.Plan.Items.Any(i => i.Id == item && !i.Dangers.IsEmpty) || shop.Apart.Values.Any(r => r.A.Item == item || r.B.Item == item);

    private static bool Changes(CarPicture car, TaskPicture task, string item) => car.Task(task.Id).Changes.Any(c => c.Item == item);

    private IEnumerable<Danger> OfCondition(CarPicture car, string item, string condition)
    {
        if (IsSide(item, condition)) yield return new(car.Id, null, null, item, condition, car.Place, []);
        foreach (var danger in car.Plan.Items.Where(i => i.Id == item).SelectMany(i => i.Dangers).Where(d => d.Condition == condition))
            yield return new(car.Id, null, danger.Hazard, item, condition, car.Place, []);
    }

    private IEnumerable<Danger> OfShop(ShopItem item)
    {
        if (IsSide("shop/" + item.Id, item.Condition)) yield return new(null, null, null, "shop/" + item.Id, item.Condition, null, []);
        foreach (var danger in item.Dangers.Where(d => d.Condition == item.Condition))
            yield return new(null, null, danger.Hazard, "shop/" + item.Id, item.Condition, null, []);
    }
}

using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Hazards;

/// <summary>
/// A danger that stands now, or would stand: a hazard, or a condition that is a side of a keep-apart rule.
/// </summary>
/// <param name="Hazard">The hazard kind, or nothing for a bare condition.</param>
/// <param name="Item">The item whose condition it is (<c>shop/ID</c> for the shop's), or nothing.</param>
/// <param name="Condition">The condition, with <paramref name="Item"/>.</param>
/// <param name="Car">The car, or nothing for the shop's own.</param>
/// <param name="Task">The task in hand that brings it, or that began it; nothing for a condition nobody works on.</param>
/// <param name="Place">Where: the place of the work that brings it (an item on the bench is on the bench), else of the car; nothing while unknown.</param>
/// <param name="Sweeps">Floor that gear carrying it can pass over.</param>
/// <param name="Standing">Id of the standing hazard, for those that end by made safe or a reading.</param>
public sealed record Danger(string? Hazard, string? Item, string? Condition, string? Car, string? Task, string? Place, ImmutableArray<Area> Sweeps, string? Standing = null)
{
    /// <summary>Stable name, for clash keys and for answers on making safe.</summary>
    public string Key => $"{Car ?? "shop"}|{Hazard ?? "-"}|{(Item is null ? "task " + Task : Item + "=" + Condition)}";

    /// <summary>Whether it is one side of a rule.</summary>
    public bool Is(Side side) => side.Hazard is not null ? side.Hazard == Hazard : side.Item == Item && side.Condition == Condition;
}

/// <summary>What stands in a shop.</summary>
public static class Dangers
{
    private static readonly ConditionalWeakTable<CarBoard, CarDangers> Known = [];
    private static readonly ConditionalWeakTable<ImmutableSortedDictionary<string, KeepApart>, Side[]> Conditions = [];

    /// <summary>Every danger of the whole shop now.</summary>
    public static ImmutableArray<Danger> Standing(ShopState shop) => StandingDangers.In(shop).All;

    /// <summary>The same, looked for anew.</summary>
    internal static ImmutableArray<Danger> Find(ShopState shop)
    {
        var all = ImmutableArray.CreateBuilder<Danger>();
        foreach (var car in shop.Cars.Values) all.AddRange(OfCar(shop, car));
        foreach (var item in shop.Items.Values) AddCondition(shop, "shop/" + item.Id, item.Condition, item.Dangers, null, null, null, [], all);
        return all.DrainToImmutable();
    }

    /// <summary>What starting a task would add: its own hazards and those of every condition it passes through or leaves.</summary>
    public static ImmutableArray<Danger> OfStart(ShopState shop, CarBoard car, PlanTask task, string? place, ImmutableArray<string> gear)
    {
        var all = ImmutableArray.CreateBuilder<Danger>();
        var sweeps = SweepsOf(shop, gear);
        AddWork(task, car, place ?? car.Place, sweeps, all);
        foreach (var h in task.Hazards.Where(h => !StandsWithWork(shop, h.Hazard)))
            all.Add(new(h.Hazard, null, null, car.Id, task.Id, place ?? car.Place, sweeps, task.Id + "/" + h.Hazard));
        foreach (var change in task.Changes)
        {
            var dangers = DangersOf(car, change.Item);
            if (dangers.IsEmpty && !IsSide(shop, change.Item)) continue;
            var now = car.Items.TryGetValue(change.Item, out var state) ? state.Condition : change.From;
            foreach (var condition in change.Path.Distinct().Where(c => c != now))
                AddCondition(shop, change.Item, condition, dangers, car.Id, task.Id, place ?? car.Place, SweepsOf(shop, [.. gear.Union(car.HangsIn.GetValueOrDefault(change.Item, []))]), all);
        }

        return all.DrainToImmutable();

        void AddWork(PlanTask t, CarBoard c, string? at, ImmutableArray<Area> s, ImmutableArray<Danger>.Builder to)
        {
            foreach (var h in t.Hazards.Where(h => StandsWithWork(shop, h.Hazard))) to.Add(new(h.Hazard, null, null, c.Id, t.Id, at, s));
        }
    }

    /// <summary>Whether a hazard of this kind stands only while somebody is on its task.</summary>
    public static bool StandsWithWork(ShopState shop, string hazard) =>
        !shop.Hazards.TryGetValue(hazard, out var kind) || kind.Ends is HazardEnd.WithTheWork or HazardEnd.WithTheCondition;

    /// <summary>Those of one car, kept as long as the car and what they rest on stay as they are.</summary>
    private static ImmutableArray<Danger> OfCar(ShopState shop, CarBoard car)
    {
        if (Known.TryGetValue(car, out var known) && known.Hazards == shop.Hazards && known.Gear == shop.Gear && known.KeepApart == shop.KeepApart) return known.Dangers;
        var all = ImmutableArray.CreateBuilder<Danger>();
        AddCar(shop, car, all);
        var found = new CarDangers(shop.Hazards, shop.Gear, shop.KeepApart, all.DrainToImmutable());
        Known.AddOrUpdate(car, found);
        return found.Dangers;
    }

    private static void AddCar(ShopState shop, CarBoard car, ImmutableArray<Danger>.Builder all)
    {
        var index = PlanIndex.Of(car.Plan);
        var workers = new Dictionary<string, (PlanTask Task, TaskState State)>(StringComparer.Ordinal);
        foreach (var state in Going.On(car).InHand)
        {
            if (index.Task(state.Id) is not { } task) continue;
            var sweeps = SweepsOf(shop, state.Gear);
            foreach (var h in task.Hazards.Where(h => StandsWithWork(shop, h.Hazard)))
                all.Add(new(h.Hazard, null, null, car.Id, task.Id, state.Place ?? car.Place, sweeps));
            foreach (var change in task.Changes) workers[change.Item] = (task, state);
        }

        foreach (var h in car.Standing) all.Add(new(h.Hazard, null, null, car.Id, h.Task, h.Place ?? car.Place, [], h.Id));
        foreach (var item in car.Items.Values) AddItem(shop, car, item.Id, item.Condition, workers, all);
    }

    private static void AddItem(ShopState shop, CarBoard car, string item, string condition, Dictionary<string, (PlanTask Task, TaskState State)> workers, ImmutableArray<Danger>.Builder all)
    {
        var dangers = DangersOf(car, item);
        var hangsIn = car.HangsIn.GetValueOrDefault(item, []);
        if (!workers.TryGetValue(item, out var worker))
        {
            AddCondition(shop, item, condition, dangers, car.Id, null, car.Place, SweepsOf(shop, hangsIn), all);
            return;
        }

        var sweeps = SweepsOf(shop, [.. worker.State.Gear.Union(hangsIn)]);
        foreach (var c in worker.Task.Changes.First(c => c.Item == item).Path.Append(condition).Distinct())
            AddCondition(shop, item, c, dangers, car.Id, worker.Task.Id, worker.State.Place ?? car.Place, sweeps, all);
    }

    private static void AddCondition(ShopState shop, string item, string condition, ImmutableArray<ConditionHazard> dangers, string? car, string? task, string? place, ImmutableArray<Area> sweeps, ImmutableArray<Danger>.Builder all)
    {
        var found = false;
        foreach (var danger in dangers)
        {
            if (danger.Condition != condition) continue;
            all.Add(new(danger.Hazard, item, condition, car, task, place, sweeps));
            found = true;
        }

        if (!found && IsSide(shop, item, condition)) all.Add(new(null, item, condition, car, task, place, sweeps));
    }

    /// <summary>Whether an item in this condition is a danger, or itself a side of a keep-apart rule.</summary>
    internal static bool IsDangerous(ShopState shop, CarBoard car, string item, string condition) =>
        DangersOf(car, item).Any(d => d.Condition == condition) || IsSide(shop, item, condition);

    /// <summary>Whether a condition, or any of the item, is itself a side of a keep-apart rule.</summary>
    private static bool IsSide(ShopState shop, string item, string? condition = null)
    {
        foreach (var side in Conditions.GetValue(shop.KeepApart, rules => [.. rules.Values.SelectMany(r => new[] { r.A, r.B }).Where(s => s.Item is not null)]))
        {
            if (side.Item == item && (condition is null || side.Condition == condition)) return true;
        }

        return false;
    }

    private sealed record CarDangers(
        ImmutableSortedDictionary<string, HazardKind> Hazards, ImmutableSortedDictionary<string, Gear> Gear, ImmutableSortedDictionary<string, KeepApart> KeepApart, ImmutableArray<Danger> Dangers);

    private static ImmutableArray<ConditionHazard> DangersOf(CarBoard car, string item) =>
        PlanIndex.Of(car.Plan).Item(item)?.Dangers ?? [];

    private static ImmutableArray<Area> SweepsOf(ShopState shop, ImmutableArray<string> gear) =>
        gear.IsEmpty ? [] : [.. gear.Select(g => shop.Gear.GetValueOrDefault(g)?.Sweep).OfType<Area>()];
}

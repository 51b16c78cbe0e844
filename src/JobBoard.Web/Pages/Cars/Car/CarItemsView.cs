using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Plans;
using JobBoard.Web.Live;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Floor;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars.Car;

/// <summary>A walk round the car: every item and its condition, and the dangers that stand.</summary>
public sealed record CarItemsView
{
    /// <summary>The car's id.</summary>
    public required string CarId { get; init; }

    /// <summary>Items that are not as for the road.</summary>
    public ImmutableArray<CarItem> StillOff { get; init; } = [];

    /// <summary>The others.</summary>
    public ImmutableArray<CarItem> AsForTheRoad { get; init; } = [];

    /// <summary>Dangers that stand on the car.</summary>
    public ImmutableArray<CarDanger> Dangers { get; init; } = [];

    /// <summary>The items of a car; none when it is gone.</summary>
    public static CarItemsView Of(Picture picture, string carId)
    {
        if (!picture.Shop.Cars.TryGetValue(carId, out var car)) return new() { CarId = carId };
        var items = car.Plan.Items.Where(i => car.Items.ContainsKey(i.Id)).ToLookup(i => car.Items[i.Id].Condition == i.AsForTheRoad, i => Item(picture, car, i));
        return new()
        {
            CarId = carId,
            StillOff = [.. items[false]],
            AsForTheRoad = [.. items[true]],
            Dangers = [.. Domain.Hazards.Dangers.Standing(picture.Shop).Where(d => d.Car == carId && d.Hazard is not null).DistinctBy(d => d.Key).Select(d => Danger(picture.Shop, car, d))],
        };
    }

    private static CarItem Item(Picture picture, CarBoard car, Item item)
    {
        var state = car.Items[item.Id];
        var index = PlanIndex.Of(car.Plan);
        var next = index.Changers(item.Id).Select(c => c.Task).FirstOrDefault(t => !car.Tasks[t.Id].Counts);
        return new(item.Id, item.Name, item.Where, state.Condition, item.Conditions, item.Aspects, item.AsForTheRoad)
        {
            Since = state.Since == car.TakenInAt
                ? "since it came in"
                : $"since {ShopTime.Since(picture.Local(state.Since), picture.Now)}, {picture.Shop.NameOf(state.By)}{(state.Task is null ? ", outside a task" : $", {index.NameOf(state.Task)}")}",
            PutRightBy = next?.Name,
        };
    }

    private static CarDanger Danger(ShopState shop, CarBoard car, Danger danger)
    {
        var kind = shop.Hazards.GetValueOrDefault(danger.Hazard!);
        var index = PlanIndex.Of(car.Plan);
        var of = danger.Item is not null ? $"{index.Item(danger.Item)?.Name ?? danger.Item} {danger.Condition}" : danger.Task is null ? "" : index.NameOf(danger.Task);
        var byReading = kind?.Ends == HazardEnd.ByReading;
        var ends = danger.Item is not null ? "ends with that condition" : danger.Standing is null ? "ends with the work" : byReading ? "ends by a reading in limits" : "stands until made safe";
        return new(danger.Key.Replace('|', '-').Replace('/', '-').Replace(' ', '-').Replace('=', '-'), kind?.Name ?? danger.Hazard!, of, ends, FloorMapping.Sign(kind?.Sign), byReading ? null : danger.Standing);
    }
}

/// <summary>An item of a car.</summary>
/// <param name="Id">The item's id.</param>
/// <param name="Name">The item.</param>
/// <param name="Where">Where on the car.</param>
/// <param name="Condition">Its condition now.</param>
/// <param name="Conditions">All conditions.</param>
/// <param name="Aspects">What can be sworn to of it.</param>
/// <param name="ForTheRoad">The condition it has on the road.</param>
public sealed record CarItem(
    string Id, string Name, string Where, string Condition, ImmutableArray<string> Conditions, ImmutableArray<string> Aspects, string ForTheRoad)
{
    /// <summary>Since when, by whom, by which task.</summary>
    public string Since { get; init; } = "";

    /// <summary>The next task that changes it, or nothing.</summary>
    public string? PutRightBy { get; init; }
}

/// <summary>A danger that stands on a car.</summary>
/// <param name="Key">Unique on the page.</param>
/// <param name="Name">What it is.</param>
/// <param name="Of">The condition or task it comes from.</param>
/// <param name="Ends">How it ends.</param>
/// <param name="Sign">Its ISO 7010 sign.</param>
/// <param name="MakeSafe">The standing danger that can be made safe by word, or nothing.</param>
public sealed record CarDanger(string Key, string Name, string Of, string Ends, SafetySignKind Sign, string? MakeSafe);

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Plans;
using JobBoard.Web.Live;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Floor;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars.Car;

/// <summary>What of a car is still off or temporary, and the dangers that stand.</summary>
public sealed record CarItemsView
{
    /// <summary>The car's id.</summary>
    public required string CarId { get; init; }

    /// <summary>Items that are not as for the road.</summary>
    public ImmutableArray<CarItem> StillOff { get; init; } = [];

    /// <summary>Dangers that stand on the car.</summary>
    public ImmutableArray<CarDanger> Dangers { get; init; } = [];

    /// <summary>The items of a car; none when it is gone.</summary>
    public static CarItemsView Of(Picture picture, string carId)
    {
        if (!picture.Shop.Cars.TryGetValue(carId, out var car)) return new() { CarId = carId };
        return new()
        {
            CarId = carId,
            StillOff = [.. car.Plan.Items.Where(i => car.Items.TryGetValue(i.Id, out var state) && state.Condition != i.AsForTheRoad).Select(i => new CarItem(i.Name, car.Items[i.Id].Condition))],
            Dangers = [.. Domain.Hazards.Dangers.Standing(picture.Shop).Where(d => d.Car == carId && d.Hazard is not null).DistinctBy(d => d.Key).Select(d => Danger(picture.Shop, car, d))],
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

/// <summary>An item that is not as for the road.</summary>
public sealed record CarItem(string Name, string Condition);

/// <summary>A danger that stands on a car.</summary>
/// <param name="Key">Unique on the page.</param>
/// <param name="Name">What it is.</param>
/// <param name="Of">The condition or task it comes from.</param>
/// <param name="Ends">How it ends.</param>
/// <param name="Sign">Its ISO 7010 sign.</param>
/// <param name="MakeSafe">The standing danger that can be made safe by word, or nothing.</param>
public sealed record CarDanger(string Key, string Name, string Of, string Ends, SafetySignKind Sign, string? MakeSafe);

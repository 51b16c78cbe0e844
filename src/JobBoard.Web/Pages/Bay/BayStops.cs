using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Floor;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Bay;

/// <summary>Stops as the people they touch see them.</summary>
public static class BayStops
{
    /// <summary>One stop for one person.</summary>
    public static BayStop Of(Picture picture, Stop stop, Person me)
    {
        var shop = picture.Shop;
        return new()
        {
            Id = stop.Id,
            Scope = FloorMapping.ScopeWords(shop, stop),
            Why = shop.Say(stop.Why),
            RaisedBy = stop.Clash is null ? shop.NameOf(stop.RaisedBy) : "the board",
            RaisedAt = picture.Local(stop.RaisedAt),
            State = stop.Safe is null ? StopState.ToldToStop : StopState.MadeSafe,
            AsksMe = stop.Told.TryGetValue(me.Id, out var heard) && heard is null,
            NotHeard = [.. stop.Told.Where(t => t.Value is null).Select(t => shop.NameOf(t.Key))],
            MadeSafe = stop.Safe is { } safe ? $"Made safe by {shop.NameOf(safe.By)}: {safe.How}" : null,
            Release = "The foreman releases.",
            ToMakeSafe = stop.Safe is null && (stop.Told.ContainsKey(me.Id) || me.Position >= Position.Foreman) ? ToAnswer(shop, stop) : null,
            ItemsToSay = stop.Safe is null ? ItemsToSay(shop, stop) : [],
        };
    }

    private static ImmutableArray<BayStandingDanger> ToAnswer(ShopState shop, Stop stop) =>
    [
        .. Stopping.InScope(shop, stop).DistinctBy(d => d.Key)
            .Select(d => (Danger: d, Kind: shop.Hazards.GetValueOrDefault(d.Hazard!)))
            .Select(x => new BayStandingDanger(x.Danger.Key, Words(shop, x.Danger, x.Kind?.Name), FloorMapping.Sign(x.Kind?.Sign))),
    ];

    /// <summary>What it is, from what, on which car: where a stop reaches far two dangers of a kind have to be told apart.</summary>
    private static string Words(ShopState shop, Domain.Hazards.Danger danger, string? name)
    {
        var car = danger.Car is null ? null : shop.Cars.GetValueOrDefault(danger.Car);
        var index = car is null ? null : PlanIndex.Of(car.Plan);
        var of = danger.Item is { } item ? $"{index?.Item(item)?.Name ?? ShopItem(shop, item)} {danger.Condition}" : danger.Task is null ? null : index?.NameOf(danger.Task);
        var what = of is null ? name ?? danger.Hazard! : $"{name ?? danger.Hazard}: {of}";
        return car is null ? what : $"{what}, {car.Name}";
    }

    private static string ShopItem(ShopState shop, string item) => shop.Items.GetValueOrDefault(item.Replace("shop/", "", StringComparison.Ordinal))?.Name ?? item;

    /// <summary>Items of the work in scope whose real condition has to be said, because the work passes through others or a danger.</summary>
    private static ImmutableArray<BayHowLeft> ItemsToSay(ShopState shop, Stop stop) =>
    [
        .. from work in Stopping.InHand(shop)
           where Looks.Covers(stop, work.Car, work.Task.Id, work.Place)
           let task = PlanIndex.Of(work.Car.Plan).Task(work.Task.Id)
           where task is not null
           from change in task.Changes
           where Looks.HasToBeSaid(shop, work.Car, change)
           select new BayHowLeft($"items[{work.Car.Id}/{change.Item}]", $"{PlanIndex.Of(work.Car.Plan).Item(change.Item)?.Name} is", [.. change.Path.Distinct().Select(c => new BayChoice(c, c))]),
    ];

    /// <summary>What a stop can be raised on from here, the nearest first: the task in hand, its car, its place, the shop.</summary>
    public static ImmutableArray<BayStopScope> Here(ShopState shop, ImmutableArray<(CarBoard Car, TaskState State)> mine)
    {
        var all = new BayStopScope("shop", "the whole shop");
        if (mine.IsEmpty) return [all];
        var (car, state) = mine[0];
        var task = new BayStopScope("task", PlanIndex.Of(car.Plan).Task(state.Id)?.Name ?? state.Id, car.Id, state.Id);
        var place = (state.Place ?? car.Place) is { } id ? new BayStopScope("place", shop.Places.GetValueOrDefault(id)?.Name ?? id, Place: id) : null;
        return [task, new("car", car.Name, car.Id), .. place is null ? [] : new[] { place }, all];
    }
}

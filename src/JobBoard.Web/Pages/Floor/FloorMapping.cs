using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Shop.Dates;
using JobBoard.Web.Live;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Floor;

/// <summary>Makes what the wall shows from the state of the shop.</summary>
public static class FloorMapping
{
    /// <summary>The wall as of a picture.</summary>
    public static FloorView Of(Picture picture)
    {
        var shop = picture.Shop;
        var dangers = Dangers.Standing(shop);
        var cars = shop.Cars.Values.Select(c => new FloorCarAtWork(picture, c)).ToImmutableArray();
        return new()
        {
            Stamp = "",
            ShopName = shop.Name,
            At = picture.Minute,
            Shop = Whole(shop),
            Places = [.. shop.Places.Values.Select(p => Place(picture, p, cars, dangers))],
            Gear = [.. shop.Gear.Values.Where(g => g.Sweep is not null).Select(g => Gear(shop, g, dangers))],
            Cars = [.. cars.Select(c => c.Listed())],
            Stops = [.. shop.Stops.Values.OrderByDescending(s => s.RaisedAt).Select(s => Stop(picture, s))],
        };
    }

    private static FloorArea Whole(ShopState shop)
    {
        var areas = shop.Places.Values.Select(p => p.Area).Concat(shop.Gear.Values.Select(g => g.Sweep).OfType<Area>()).ToArray();
        return areas.Length == 0
            ? new(0, 0, 16, 10)
            : new(0, 0, (double)areas.Max(a => a.X + a.Width) + 0.5, (double)areas.Max(a => a.Y + a.Depth) + 0.5);
    }

    private static FloorArea Area(Area a) => new((double)a.X, (double)a.Y, (double)a.Width, (double)a.Depth);

    private static FloorPlace Place(Picture picture, Place place, ImmutableArray<FloorCarAtWork> cars, ImmutableArray<Danger> dangers)
    {
        var here = cars.Where(c => c.Car.Place == place.Id).ToArray();
        return new()
        {
            Id = place.Id,
            Name = place.Name,
            Kind = place.Kind == "bay" ? FloorPlaceKind.Bay : FloorPlaceKind.Corner,
            Area = Area(place.Area),
            Car = here.Length == 0 ? null : string.Join(", ", here.Select(c => c.Car.Name)),
            Stops = [.. picture.Shop.Stops.Values.Where(s => IsHere(picture.Shop, s, place.Id)).Select(s => new FloorPlaceStop(s.Id, StopWords(s)))],
            Dangers = [.. dangers.Where(d => d.Place == place.Id && d.Hazard is not null).GroupBy(d => d.Hazard).OrderBy(g => Weight(picture.Shop, g)).Select(g => Danger(picture.Shop, g))],
            InHand = [.. cars.SelectMany(c => c.InHandAt(place.Id))],
            Held = [.. here.SelectMany(c => c.Held())],
            CanStart = [.. here.SelectMany(c => c.CanStart()).Take(3).Select(e => new FloorNext(e.Car.Id + "-" + e.Task.Id, e.Task.Name, e.State.Status == WorkStatus.PartDone ? "left part-done" : "nobody on it"))],
        };
    }

    private static bool IsHere(ShopState shop, Stop stop, string place) => stop.Scope switch
    {
        StopScope.Place => stop.Place == place,
        StopScope.Shop => false,
        StopScope.Car => shop.Cars.GetValueOrDefault(stop.Car!)?.Place == place,
        _ => shop.Cars.GetValueOrDefault(stop.Car!) is { } car && (car.Tasks.GetValueOrDefault(stop.Task!)?.Place ?? car.Place) == place,
    };

    private static ImmutableArray<string> StopWords(Stop stop)
    {
        var heard = stop.Told.Count(t => t.Value is not null);
        return [stop.Safe is null ? "told to stop" : "made safe", stop.Why, stop.Told.IsEmpty ? "nobody in reach" : $"heard by {heard} of {stop.Told.Count}"];
    }

    /// <summary>Dangers of work and of loads before those of conditions that stand for days.</summary>
    private static int Weight(ShopState shop, IGrouping<string?, Danger> danger) =>
        danger.Key == "suspended-load" ? 0 : danger.Any(d => d.Task is not null) ? 1 : shop.Hazards.GetValueOrDefault(danger.Key!)?.PinsCar == true ? 3 : 2;

    private static FloorDanger Danger(ShopState shop, IGrouping<string?, Danger> danger)
    {
        var kind = shop.Hazards.GetValueOrDefault(danger.Key!);
        var sign = Sign(kind?.Sign);
        var words = danger.FirstOrDefault(d => d.Item is not null && sign == SafetySignKind.W015)?.Condition ?? kind?.Name ?? danger.Key!;
        ImmutableArray<SafetySignKind> signs = sign == SafetySignKind.W021 ? [sign, SafetySignKind.P003] : [sign];
        return new(danger.Key!, words, signs);
    }

    /// <summary>The sign of a hazard; the general warning where this program draws none of its own.</summary>
    public static SafetySignKind Sign(string? sign) => Enum.TryParse<SafetySignKind>(sign, out var kind) ? kind : SafetySignKind.W001;

    private static FloorGear Gear(ShopState shop, Gear gear, ImmutableArray<Danger> dangers)
    {
        var loaded = dangers.Any(d => d.Sweeps.Contains(gear.Sweep!) && Sign(shop.Hazards.GetValueOrDefault(d.Hazard ?? "")?.Sign) == SafetySignKind.W015);
        return new() { Id = gear.Id, Name = gear.Name, Sweep = Area(gear.Sweep!), OnRails = gear.Name.Contains("gantry", StringComparison.OrdinalIgnoreCase), KeepOut = loaded ? Area(gear.Sweep!) : null };
    }

    private static FloorStop Stop(Picture picture, Stop stop)
    {
        var shop = picture.Shop;
        return new()
        {
            Id = stop.Id,
            Scope = ScopeWords(shop, stop),
            Why = shop.Say(stop.Why),
            RaisedBy = stop.Clash is null ? shop.NameOf(stop.RaisedBy) : "the board",
            RaisedAt = picture.Local(stop.RaisedAt),
            State = stop.Safe is null ? StopState.ToldToStop : StopState.MadeSafe,
            NotHeard = [.. stop.Told.Where(t => t.Value is null).Select(t => shop.NameOf(t.Key))],
            Touches = stop.Told.Count,
            Note = stop.Safe is { } safe ? $"Made safe by {shop.NameOf(safe.By)}: {safe.How}. The foreman releases." : null,
        };
    }

    /// <summary>What a stop holds, in words.</summary>
    public static string ScopeWords(ShopState shop, Stop stop) => stop.Scope switch
    {
        StopScope.Shop => "The whole shop",
        StopScope.Place => shop.Places.GetValueOrDefault(stop.Place!)?.Name ?? stop.Place!,
        StopScope.Car => shop.Cars.GetValueOrDefault(stop.Car!)?.Name ?? stop.Car!,
        _ => shop.Cars.GetValueOrDefault(stop.Car!) is { } car ? $"{car.Name}, {PlanIndex.Of(car.Plan).Task(stop.Task!)?.Name ?? stop.Task}" : stop.Task!,
    };
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Plans;

namespace JobBoard.Web.Pages.Alarm;

/// <summary>Stops that sound on a screen.</summary>
/// <param name="Stops">Those somebody has still to hear.</param>
/// <param name="Asks">Whether this screen's reader is asked to say heard; a wall only sounds.</param>
public sealed record AlarmView(ImmutableArray<AlarmStop> Stops, bool Asks)
{
    /// <summary>Stops that touch a person who has not said heard.</summary>
    public static AlarmView ForPerson(ShopState shop, string person) =>
        new(Of(shop, s => s.Told.TryGetValue(person, out var heard) && heard is null), Asks: true);

    /// <summary>Stops that anybody has still to hear.</summary>
    public static AlarmView ForWall(ShopState shop) => new(Of(shop, s => s.Safe is null && s.Told.Values.Any(heard => heard is null)), Asks: false);

    private static ImmutableArray<AlarmStop> Of(ShopState shop, Func<Stop, bool> sounds) =>
        [.. shop.Stops.Values.Where(sounds).OrderByDescending(s => s.RaisedAt).Select(s => AlarmStop.Of(s, shop))];
}

/// <summary>A stop as it sounds.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Where">What it stops.</param>
/// <param name="Why">Why.</param>
/// <param name="By">Who raised it.</param>
public sealed record AlarmStop(string Id, string Where, string Why, string By)
{
    /// <summary>A stop in words.</summary>
    public static AlarmStop Of(Stop stop, ShopState shop)
    {
        var car = stop.Car is { } id && shop.Cars.TryGetValue(id, out var board) ? board : null;
        var where = stop.Scope switch
        {
            StopScope.Task => $"{car?.Name}, {(car is null || stop.Task is null ? stop.Task : PlanIndex.Of(car.Plan).Task(stop.Task)?.Name)}",
            StopScope.Car => car?.Name ?? stop.Car ?? "",
            StopScope.Place => stop.Place is { } place && shop.Places.TryGetValue(place, out var known) ? known.Name : stop.Place ?? "",
            _ => "the whole shop",
        };
        return new(stop.Id, where, shop.Say(stop.Why), stop.Clash is null ? shop.NameOf(stop.RaisedBy) : "the board");
    }
}

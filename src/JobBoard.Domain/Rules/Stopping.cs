using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Places;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>Whom a stop touches.</summary>
public static class Stopping
{
    /// <summary>A stop with everybody it tells: the crews in scope and those whom their dangers reach.</summary>
    public static StopRaised Raise(ShopState shop, string id, StopScope scope, string? car, string? task, string? place, string why, string? clash)
    {
        var stop = new Stop { Id = id, Scope = scope, Car = car, Task = task, Place = place, Why = why, RaisedBy = "", RaisedAt = default };
        var inHand = InHand(shop).ToArray();
        var inScope = inHand.Where(x => HoldRules.Covers(stop, x.Car, x.Task.Id, x.Place)).ToArray();
        var told = scope == StopScope.Shop
            ? shop.People.Values.Where(p => p.IsIn).Select(p => p.Id)
            : inScope.Concat(inHand.Where(x => Reached(shop, InScope(shop, stop), x))).SelectMany(x => x.Task.Crew).Select(m => m.Person);
        return new(id, scope, car, task, place, why, clash, [.. told.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)], [.. inScope.Select(x => x.Car.Id + "/" + x.Task.Id)]);
    }

    /// <summary>Standing dangers in a stop's scope: each has to be answered when it is made safe.</summary>
    public static ImmutableArray<Danger> InScope(ShopState shop, Stop stop) =>
    [
        .. Dangers.Standing(shop).Where(d => d.Hazard is not null && stop.Scope switch
        {
            StopScope.Shop => true,
            StopScope.Place => d.Place == stop.Place,
            StopScope.Car => d.Car == stop.Car,
            _ => d.Car == stop.Car && d.Task == stop.Task,
        }),
    ];

    /// <summary>Tasks in hand with where they are.</summary>
    public static IEnumerable<(CarBoard Car, TaskState Task, string? Place)> InHand(ShopState shop) =>
        from car in shop.Cars.Values
        from task in Going.On(car).InHand
        select (car, task, task.Place ?? car.Place);

    private static bool Reached(ShopState shop, ImmutableArray<Danger> dangers, (CarBoard Car, TaskState Task, string? Place) work)
    {
        var there = new Danger(null, null, null, work.Car.Id, work.Task.Id, work.Place, []);
        return dangers.Any(d => shop.KeepApart.Values.Any(r => (d.Is(r.A) || d.Is(r.B)) && Apart.Reaches(shop, r, d, there)));
    }
}

using System.Collections.Immutable;
using System.Text.Json;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Histories;

/// <summary>A shop's whole state as text, so that two can be held against each other.</summary>
public static class Dump
{
    public static string Of(ShopState shop) => string.Join('\n', Parts(shop));

    /// <summary>Anything of a plan as text.</summary>
    public static string OfPlanned<T>(T? value) => JsonSerializer.Serialize(value, PlanJson.Options);

    private static readonly Plan Unplanned = new() { Id = "", Name = "" };
    private static readonly ImmutableDictionary<string, Touch> NoTouches = ShopState.Empty.Touched;

    private static IEnumerable<string> Parts(ShopState shop)
    {
        var cars = shop.Cars.Values.Select(car => KeyValuePair.Create(car.Id, car with { Plan = Unplanned }));
        yield return JsonSerializer.Serialize(shop with { Recent = [], Touched = NoTouches, Cars = shop.Cars.SetItems(cars) }, PlanJson.Options);
        foreach (var car in shop.Cars.Values)
            yield return $"{car.Id}: {string.Join(", ", car.Plan.Tasks.Select(t => t.Id))}; {string.Join(", ", car.Plan.Links)}";
        foreach (var (key, touch) in shop.Touched.OrderBy(t => t.Key, StringComparer.Ordinal)) yield return key + " " + touch;
        foreach (var recent in shop.Recent)
            yield return $"{recent.Id} {recent.Actor} {recent.At:O} {recent.Before.Seq} {string.Join(',', recent.Entries.Select(e => e.Seq))}";
    }
}

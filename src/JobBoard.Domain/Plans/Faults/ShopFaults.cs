using System.Globalization;
using JobBoard.Domain.Places;

namespace JobBoard.Domain.Plans.Faults;

/// <summary>Gear and places the shop does not have.</summary>
internal static class ShopFaults
{
    public static IEnumerable<Found> Gear(PlanCheck check) =>
        from t in check.Tasks
        let needs = t.Task.Gear
        let gear = check.Shop.Gear
        where !Pairing.Covers(needs.Length, gear.Length, (need, piece) => Fits(gear[piece], needs[need]))
        select new Found(
            t.At + ".gear",
            $"{check.Say(t.Task.Id)} takes {string.Join(", ", needs.Select(Say))}, and the shop does not have it.",
            "add the gear to the shop, or ask for less");

    public static IEnumerable<Found> Places(PlanCheck check) =>
        from t in check.Tasks
        where t.Task.Place != "car" && check.Shop.Places.All(p => p.Kind != t.Task.Place)
        select new Found(
            t.At + ".place",
            $"{check.Say(t.Task.Id)} is done at a {t.Task.Place}, and the shop has none.",
            "write \"car\" where it is done at the car, or add the place to the shop");

    private static bool Fits(Gear gear, GearNeed need) =>
        gear.Kind == need.Kind && (need.MinRatedKg is null || gear.RatedKg >= need.MinRatedKg);

    private static string Say(GearNeed need) => need.MinRatedKg is { } kg
        ? $"a {need.Kind} rated for {kg.ToString(CultureInfo.InvariantCulture)} kg"
        : $"a {need.Kind}";
}

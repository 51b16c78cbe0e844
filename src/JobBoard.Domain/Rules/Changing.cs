using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Rules;

/// <summary>Changes outside tasks, and making a danger safe.</summary>
internal static class Changing
{
    public static void Item(Ask ask, ChangeItem command)
    {
        if (ask.Car(command.Car) is not { } car) return;
        if (PlanIndex.Of(car.Plan).Item(command.Item) is not { } item)
        {
            ask.Bad("item", $"{car.Name} has no item '{command.Item}'.");
            return;
        }

        if (!item.Conditions.Contains(command.To)) ask.Bad("condition", $"{item.Name} is one of: {string.Join(", ", item.Conditions)}.");
        if (string.IsNullOrWhiteSpace(command.Why)) ask.Bad("why", "Say why it was changed outside a task.");
        foreach (var aspect in command.Aspects.Where(a => !item.Aspects.Contains(a))) ask.Bad("aspect", $"{item.Name} has no '{aspect}': {string.Join(", ", item.Aspects)}.");
        if (ask.Reasons.Count > 0) return;
        var from = car.Items[item.Id].Condition;
        var named = from != command.To || command.Aspects.IsEmpty ? item.Aspects : command.Aspects;
        ImmutableArray<string> disturbs = [.. named.Select(a => item.Id + "/" + a)];
        ask.Facts.Add(new ItemChanged(item.Id, from, command.To, command.Why.Trim(), disturbs, Loads.After(ask.Shop, car, item.Id, command.To)) { Car = car.Id });
        if (ask.Has(RuleBook.Ids.Lapse)) ask.Facts.AddRange(Lapsing.OfDisturbance(ask, car, disturbs, null));
    }

    public static void ShopItem(Ask ask, ChangeShopItem command)
    {
        if (!ask.Shop.Items.TryGetValue(command.Item, out var item))
        {
            ask.Bad("item", $"The shop has no '{command.Item}'.");
            return;
        }

        if (!item.Conditions.Contains(command.To)) ask.Bad("condition", $"{item.Name} is one of: {string.Join(", ", item.Conditions)}.");
        if (ask.Reasons.Count == 0 && item.Condition != command.To) ask.Facts.Add(new ShopItemChanged(item.Id, item.Condition, command.To, command.Why ?? ""));
    }

    public static void MakeHazardSafe(Ask ask, MakeHazardSafe command)
    {
        if (ask.Car(command.Car) is not { } car) return;
        var standing = car.Standing.Find(s => s.Id == command.Hazard);
        if (standing is null)
        {
            ask.Bad("hazard", $"No danger '{command.Hazard}' stands on {car.Name}.");
            return;
        }

        if (string.IsNullOrWhiteSpace(command.How)) ask.Bad("how", "Say how it was made safe.");
        if (ask.Shop.Hazards.GetValueOrDefault(standing.Hazard)?.Ends == HazardEnd.ByReading)
            ask.Refuse(RuleBook.Ids.ByReading, $"{ask.Shop.Hazards[standing.Hazard].Name} ends by a reading: {standing.EndsByReading}.", about: standing.Id);
        if (ask.Reasons.Count == 0) ask.Facts.Add(new HazardMadeSafe(standing.Id, command.How.Trim()) { Car = car.Id });
    }
}

using JobBoard.Domain.Hazards;

namespace JobBoard.Domain.Rules;

/// <summary>Dangers the start would add against those of the whole shop that stand.</summary>
internal static class DangerRules
{
    public static IEnumerable<WaitingOn> Of(TaskQuestion q, StartCheck.With with)
    {
        if ((q.Task.Hazards.IsEmpty && q.Task.Changes.IsEmpty) || !q.Has(RuleBook.Ids.KeepApart)) yield break;
        var place = q.Task.Place == "car" ? null : ResourceRules.PickPlace(q, with.Place)?.Id;
        var added = Dangers.OfStart(q.Shop, q.Car, q.Task, place, ResourceRules.AllGear(q));
        if (added.IsEmpty) yield break;
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var clash in Apart.Between(q.Shop, added))
        {
            var other = clash.Other;
            if (seen.Add(clash.Rule.Id + other.Key))
                yield return new(RuleBook.Ids.KeepApart, $"{Named(q, other)} stands{Where(q, other)}: keep apart. {clash.Rule.Said()}", WhoEnds(q, other), About: other.Key);
        }
    }

    private static string Named(TaskQuestion q, Danger danger)
    {
        if (danger.Hazard is { } hazard) return q.Shop.Hazards.GetValueOrDefault(hazard)?.Name ?? hazard;
        var car = danger.Car is null ? null : q.Shop.Cars.GetValueOrDefault(danger.Car);
        var item = car is null ? q.Shop.Items.GetValueOrDefault(danger.Item![5..])?.Name : Plans.PlanIndex.Of(car.Plan).Item(danger.Item!)?.Name;
        return $"{item ?? danger.Item}: {danger.Condition}";
    }

    private static string Where(TaskQuestion q, Danger danger)
    {
        var car = danger.Car is null ? null : q.Shop.Cars.GetValueOrDefault(danger.Car)?.Name;
        var place = danger.Place is null ? null : q.Shop.Places.GetValueOrDefault(danger.Place)?.Name;
        return (car, place) switch
        {
            (null, null) => "",
            (_, null) => $" at {car}",
            (null, _) => $" in {place}",
            _ => $" at {car}, {place}",
        };
    }

    private static System.Collections.Immutable.ImmutableArray<string> WhoEnds(TaskQuestion q, Danger danger) =>
        danger is { Car: { } car, Task: { } task } && q.Shop.Cars[car].Tasks.TryGetValue(task, out var state)
            ? [.. state.Crew.Select(m => m.Person)]
            : q.Foremen;
}

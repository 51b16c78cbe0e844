using System.Collections.Immutable;

namespace JobBoard.Domain.Plans.Faults;

/// <summary>Names of things that are nowhere in the plan.</summary>
internal static class ReferenceFaults
{
    public static IEnumerable<Found> Unknown(PlanCheck check) =>
    [
        .. check.Items.SelectMany(i => OfItem(i.Item, i.At)),
        .. check.Tasks.SelectMany(t => OfTask(check, t.Task, t.At)),
        .. check.Holds.SelectMany(h => OfHold(check, h.Hold, h.At)),
        .. check.Links.SelectMany(l => Node(check, l.Link.Task, l.At + ".task").Concat(Node(check, l.Link.After, l.At + ".after"))),
    ];

    private static IEnumerable<Found> OfItem(Item item, string at) =>
    [
        .. Condition(item, item.AtTakeIn, at + ".atTakeIn"),
        .. Condition(item, item.AsForTheRoad, at + ".asForTheRoad"),
        .. PlanCheck.Each(item.Dangers, at + ".dangers").SelectMany(d => Condition(item, d.Value.Condition, d.At + ".condition")),
    ];

    private static IEnumerable<Found> OfTask(PlanCheck check, PlanTask task, string at) =>
    [
        .. Stage(check, task.Stage, at),
        .. PlanCheck.Each(task.Needs, at + ".needs").Where(n => !NeedFaults.IsOfShop(n.Value))
            .SelectMany(n => Conditions(check, n.Value.Item, n.Value.Conditions, n.At, ".conditions")),
        .. PlanCheck.Each(task.Changes, at + ".changes").SelectMany(c => OfChange(check, c.Value, c.At)),
        .. Aspects(check, task.Touches, at + ".touches"),
        .. Aspects(check, task.StandsOn, at + ".standsOn"),
        .. PlanCheck.Each(task.Readings, at + ".readings").SelectMany(r => Aspects(check, r.Value.StandsOn, r.At + ".standsOn")),
        .. PlanCheck.Each(task.Parts, at + ".parts").Where(p => check.Plan.Parts.All(part => part.Id != p.Value))
            .Select(p => new Found(p.At, $"There is no part \"{p.Value}\" in the plan.")),
        .. PlanCheck.Each(task.TakesAgain, at + ".takesAgain").SelectMany(n => Node(check, n.Value, n.At)),
    ];

    private static IEnumerable<Found> OfHold(PlanCheck check, HoldPoint hold, string at) =>
    [
        .. Stage(check, hold.Stage, at),
        .. Aspects(check, hold.StandsOn, at + ".standsOn"),
        .. PlanCheck.Each(hold.TakesAgain, at + ".takesAgain").SelectMany(n => Node(check, n.Value, n.At)),
    ];

    private static IEnumerable<Found> OfChange(PlanCheck check, Change change, string at) =>
        Conditions(check, change.Item, [change.From, change.To, .. change.Through], at, "");

    private static IEnumerable<Found> Node(PlanCheck check, string id, string at) =>
        check.Index.IsNode(id) ? [] : [new Found(at, $"There is no task or hold point \"{id}\" in the plan.")];

    private static IEnumerable<Found> Stage(PlanCheck check, string id, string at) =>
        check.Index.StageOrder(id) >= 0 ? [] : [new Found(at + ".stage", $"There is no stage \"{id}\" in the plan.")];

    private static IEnumerable<Found> Conditions(PlanCheck check, string item, ImmutableArray<string> conditions, string at, string below) =>
        check.Index.Item(item) is { } known
            ? conditions.SelectMany(c => Condition(known, c, at + below))
            : [new Found(at + ".item", $"There is no item \"{item}\" in the plan.")];

    private static IEnumerable<Found> Condition(Item item, string condition, string at) =>
        item.Conditions.Contains(condition)
            ? []
            : [new Found(at, $"{item.Name} is never \"{condition}\".", $"write one of {string.Join(", ", item.Conditions)}")];

    private static IEnumerable<Found> Aspects(PlanCheck check, ImmutableArray<Aspect> aspects, string at) =>
        from a in PlanCheck.Each(aspects, at)
        let item = check.Index.Item(a.Value.Item)
        where item is null || !item.Aspects.Contains(a.Value.Name)
        select item is null
            ? new Found(a.At + ".item", $"There is no item \"{a.Value.Item}\" in the plan.")
            : new Found(a.At + ".name", $"{item.Name} has no aspect \"{a.Value.Name}\".", item.Aspects.IsEmpty ? null : $"write one of {string.Join(", ", item.Aspects)}");
}

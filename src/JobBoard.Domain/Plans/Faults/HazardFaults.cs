using System.Collections.Immutable;
using JobBoard.Domain.Hazards;

namespace JobBoard.Domain.Plans.Faults;

/// <summary>Dangers the shop does not know, that never end, or that the order itself brings together.</summary>
internal static class HazardFaults
{
    public static IEnumerable<Found> Unknown(PlanCheck check) =>
        from h in check.Tasks.SelectMany(t => PlanCheck.Each(t.Task.Hazards, t.At + ".hazards").Select(h => (h.Value.Hazard, h.At)))
            .Concat(check.Items.SelectMany(i => PlanCheck.Each(i.Item.Dangers, i.At + ".dangers").Select(d => (d.Value.Hazard, d.At))))
        where check.Shop.Hazards.All(kind => kind.Id != h.Hazard)
        select new Found(h.At, $"The shop knows no hazard \"{h.Hazard}\".", "add it to the shop with its keep-apart rules, or take it out");

    public static IEnumerable<Found> Readings(PlanCheck check) =>
        from t in check.Tasks
        from h in PlanCheck.Each(t.Task.Hazards, t.At + ".hazards")
        let ends = check.Shop.Hazards.FirstOrDefault(kind => kind.Id == h.Value.Hazard)?.Ends
        where ends == HazardEnd.ByReading || h.Value.EndsByReading is not null
        where !Exists(check, h.Value.EndsByReading)
        select new Found(
            h.At,
            h.Value.EndsByReading is { } key
                ? $"{h.Value.Hazard} of {check.Say(t.Task.Id)} ends by the reading \"{key}\", which is not in the plan."
                : $"{h.Value.Hazard} of {check.Say(t.Task.Id)} ends by a reading, and none is named.",
            "name a reading as task/reading");

    /// <summary>
    /// The task's own dangers against conditions that the chain of changes keeps all through it on the same car. What the
    /// task changes itself it puts right; dangers of other tasks are ended by their sign-off.
    /// </summary>
    public static IEnumerable<Found> Impossible(PlanCheck check) =>
        from t in check.Tasks
        let own = Own(check, t.Task).ToImmutableArray()
        where !own.IsEmpty
        from i in check.Items
        where t.Task.Changes.All(c => c.Item != i.Item.Id)
        let over = check.Over(i.Item, t.Task.Id)
        where over is not null
        let standing = Of(i.Item, over.Value.Condition).ToImmutableArray()
        from rule in check.Shop.KeepApart
        where Reaches(rule, t.Task) && (Meet(rule.A, rule.B, own, standing) || Meet(rule.B, rule.A, own, standing))
        select new Found(
            t.At,
            $"{check.Say(t.Task.Id)} can never start: {i.Item.Name} is {over.Value.Condition} all through it, and that must keep apart: {rule.Reason}",
            Ender(check, i.Item, over.Value.Condition, t.Task) is { } ender ? $"move {check.Say(t.Task.Id)} after {check.Say(ender)}" : null);

    private static bool Exists(PlanCheck check, string? key) =>
        key?.Split('/') is [var task, var reading] && check.Index.Task(task)?.Readings.Any(r => r.Id == reading) == true;

    /// <summary>What begins with the task: its work's dangers, and those of every condition it passes through or leaves.</summary>
    private static IEnumerable<Side> Own(PlanCheck check, PlanTask task) =>
        task.Hazards.Select(h => new Side(h.Hazard))
            .Concat(from change in task.Changes
                    let item = check.Index.Item(change.Item)
                    where item is not null
                    from condition in change.Path.Skip(1)
                    from side in Of(item, condition)
                    select side);

    /// <summary>A condition as sides of keep-apart rules: itself and its dangers.</summary>
    private static IEnumerable<Side> Of(Item item, string condition) =>
        item.Dangers.Where(d => d.Condition == condition).Select(d => new Side(d.Hazard))
            .Append(new Side(null, item.Id, condition));

    private static bool Meet(Side ours, Side theirs, ImmutableArray<Side> own, ImmutableArray<Side> standing) =>
        own.Contains(ours) && standing.Contains(theirs);

    /// <summary>Work away from the car meets the car's conditions only where the rule is of the car or the whole shop.</summary>
    private static bool Reaches(KeepApart rule, PlanTask task) =>
        task.Place == "car" || rule.Scope is Scope.Car or Scope.Shop;

    private static string? Ender(PlanCheck check, Item item, string condition, PlanTask task) =>
        check.Index.Changers(item.Id).Where(c => check.Index.IsAfter(c.Task.Id, task.Id) && c.Change.To != condition)
            .Select(c => c.Task.Id).FirstOrDefault();
}

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
    public static IEnumerable<Found> Impossible(PlanCheck check)
    {
        var makers = check.Tasks.SelectMany((t, n) => Own(check, t.Task).Distinct().Select(side => (Side: side, By: (t.Task, t.At, Number: n))))
            .ToLookup(m => m.Side, m => m.By);
        var standing = check.Plan.Items.SelectMany(i => i.Conditions.SelectMany(c => Of(i, c)).Distinct().Select(side => (Side: side, Item: i)))
            .ToLookup(s => s.Side, s => s.Item);
        var met = from rule in check.Shop.KeepApart
                  from side in new[] { (Ours: rule.A, Theirs: rule.B), (Ours: rule.B, Theirs: rule.A) }
                  from item in standing[side.Theirs]
                  from maker in makers[side.Ours]
                  where Reaches(rule, maker.Task) && maker.Task.Changes.All(c => c.Item != item.Id)
                  let over = check.Over(item, maker.Task.Id)
                  where over is not null && Of(item, over.Value.Condition).Contains(side.Theirs)
                  select (Maker: maker, Item: item, over.Value.Condition, Rule: rule);
        return met.DistinctBy(m => (m.Maker.Number, m.Item.Id, m.Rule.Id)).OrderBy(m => m.Maker.Number)
            .Select(m => Never(check, m.Maker.Task, m.Maker.At, m.Item, m.Condition, m.Rule));
    }

    private static Found Never(PlanCheck check, PlanTask task, string at, Item item, string condition, KeepApart rule) => new(
        at,
        $"{check.Say(task.Id)} can never start: {item.Name} is {condition} all through it, and that must keep apart: {rule.Reason}",
        Ender(check, item, condition, task) is { } ender ? $"move {check.Say(task.Id)} after {check.Say(ender)}" : null);

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

    /// <summary>Work away from the car meets the car's conditions only where the rule is of the car or the whole shop.</summary>
    private static bool Reaches(KeepApart rule, PlanTask task) =>
        task.Place == "car" || rule.Scope is Scope.Car or Scope.Shop;

    private static string? Ender(PlanCheck check, Item item, string condition, PlanTask task) =>
        check.Index.Changers(item.Id).Where(c => check.Index.IsAfter(c.Task.Id, task.Id) && c.Change.To != condition)
            .Select(c => c.Task.Id).FirstOrDefault();
}

using System.Collections.Immutable;

namespace JobBoard.Domain.Plans.Faults;

/// <summary>The chain of tasks that change an item, from take-in to the road.</summary>
internal static class ChangeFaults
{
    public static IEnumerable<Found> Order(PlanCheck check) =>
        from i in check.Items
        let changers = check.Index.Changers(i.Item.Id)
        from pair in changers.Zip(changers.Skip(1))
        let first = pair.First.Task.Id
        let second = pair.Second.Task.Id
        where first != second && !check.AreOrdered(first, second)
        let isFirst = IsFirst(check, pair.First, pair.Second)
        select Found.Linked(
            check,
            PathTo(check, i.Item, second),
            $"{check.Say(first)} and {check.Say(second)} both change {i.Item.Name}, and neither comes after the other.",
            isFirst ? second : first,
            isFirst ? first : second);

    /// <summary>Only between changes whose order is settled; the others are told by <see cref="Order"/>.</summary>
    public static IEnumerable<Found> Chain(PlanCheck check)
    {
        foreach (var (item, _) in check.Items)
        {
            var changers = check.Index.Changers(item.Id);
            for (var n = 0; n < changers.Length; n++)
                if (IsSettled(check, changers, n) && (n == 0 || IsSettled(check, changers, n - 1)) && Broken(check, item, changers, n) is { } found)
                    yield return found;
        }
    }

    public static IEnumerable<Found> LeftOff(PlanCheck check) =>
        from i in check.Items
        let changers = check.Index.Changers(i.Item.Id)
        where !changers.IsEmpty && IsSettled(check, changers, changers.Length - 1)
        let last = changers[^1]
        where last.Change.To != i.Item.AsForTheRoad
        select new Found(
            PathTo(check, i.Item, last.Task.Id),
            $"{check.Say(last.Task.Id)} is the last to change {i.Item.Name} and leaves it {last.Change.To}, not {i.Item.AsForTheRoad} as for the road.",
            $"add a task after {check.Say(last.Task.Id)} that changes {i.Item.Name} from {last.Change.To} to {i.Item.AsForTheRoad}");

    public static IEnumerable<Found> NeverChanged(PlanCheck check) =>
        from i in check.Items
        where i.Item.AtTakeIn != i.Item.AsForTheRoad && check.Index.Changers(i.Item.Id).IsEmpty
        select new Found(
            i.At,
            $"{i.Item.Name} comes in {i.Item.AtTakeIn}, is {i.Item.AsForTheRoad} as for the road, and no task changes it.",
            $"add a task that changes {i.Item.Name} from {i.Item.AtTakeIn} to {i.Item.AsForTheRoad}");

    private static Found? Broken(PlanCheck check, Item item, ImmutableArray<(PlanTask Task, Change Change)> changers, int n)
    {
        var (task, change) = changers[n];
        var left = n == 0 ? item.AtTakeIn : changers[n - 1].Change.To;
        var by = n == 0 ? "it comes in" : $"{check.Say(changers[n - 1].Task.Id)} leaves it";
        return change.From == left
            ? null
            : new Found(
                PathTo(check, item, task.Id),
                $"{check.Say(task.Id)} changes {item.Name} from {change.From}, but {by} {left}.",
                $"let {check.Say(task.Id)} change {item.Name} from {left}");
    }

    /// <summary>Whether the order puts it before or after every other change of the item.</summary>
    private static bool IsSettled(PlanCheck check, ImmutableArray<(PlanTask Task, Change Change)> changers, int n) =>
        changers.Where((_, other) => other != n).All(c => c.Task.Id == changers[n].Task.Id || check.AreOrdered(c.Task.Id, changers[n].Task.Id));

    /// <summary>Which of the two suggests itself as the first: the one whose end is the other's beginning, else the one earlier in the plan.</summary>
    private static bool IsFirst(PlanCheck check, (PlanTask Task, Change Change) a, (PlanTask Task, Change Change) b)
    {
        var (fits, turned) = (a.Change.To == b.Change.From, b.Change.To == a.Change.From);
        return fits == turned ? check.IsListedBefore(a.Task.Id, b.Task.Id) : fits;
    }

    private static string PathTo(PlanCheck check, Item item, string task) =>
        check.Tasks.Where(t => t.Task.Id == task)
            .SelectMany(t => PlanCheck.Each(t.Task.Changes, t.At + ".changes"))
            .First(c => c.Value.Item == item.Id).At;
}

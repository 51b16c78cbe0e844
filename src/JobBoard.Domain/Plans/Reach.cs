using System.Collections.Immutable;

namespace JobBoard.Domain.Plans;

/// <summary>A task and the condition of an item that it needs.</summary>
/// <param name="Task">The task.</param>
/// <param name="Item">The item.</param>
/// <param name="Conditions">Any of these will do for it.</param>
/// <param name="IsBefore">Whether it comes before the task asked about: then there is still a way to it until that one starts.</param>
public sealed record Reached(string Task, string Item, ImmutableArray<string> Conditions, bool IsBefore);

/// <summary>What can no longer be reached once something is in: tasks that need a condition which a change ends for good.</summary>
public static class Reach
{
    /// <summary>
    /// Tasks that need a condition which <paramref name="task"/> ends and which nothing after it restores. Those before it have
    /// to be done until then; for the others, after it or in no order with it, there is no way at all.
    /// </summary>
    public static ImmutableArray<Reached> Once(Plan plan, string task)
    {
        var index = PlanIndex.Of(plan);
        if (index.Task(task) is not { } asked) return [];
        return
        [
            .. from change in asked.Changes
               from other in plan.Tasks
               where other.Id != task
               from need in NeedsOf(other).Where(n => n.Item == change.Item)
               where Ends(index, task, change, other.Id, need)
               select new Reached(other.Id, need.Item, need.Conditions, index.IsAfter(task, other.Id)),
        ];
    }

    /// <summary>
    /// Of the tasks that are still to do, those that need a condition their item is no longer in, and which nothing that is
    /// still to do, and does not come after them, brings about.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="present">The conditions the items are in, by id; an item that is not there is as at take-in.</param>
    /// <param name="isToDo">Whether a task has not been begun.</param>
    /// <param name="isOpen">Whether a task is not signed off.</param>
    public static ImmutableArray<Reached> Lost(Plan plan, Func<string, string?> present, Func<string, bool> isToDo, Func<string, bool> isOpen)
    {
        var index = PlanIndex.Of(plan);
        return
        [
            .. from task in plan.Tasks
               where isToDo(task.Id)
               from need in NeedsOf(task)
               let item = index.Item(need.Item)
               where item is not null && !need.Conditions.Contains(present(need.Item) ?? item.AtTakeIn)
               where !index.Changers(need.Item).Any(c => c.Task.Id != task.Id && isOpen(c.Task.Id) && need.Conditions.Contains(c.Change.To) && !index.IsAfter(c.Task.Id, task.Id))
               select new Reached(task.Id, need.Item, need.Conditions, false),
        ];
    }

    /// <summary>What it needs, and the condition each of its own changes begins with.</summary>
    private static IEnumerable<Need> NeedsOf(PlanTask task) =>
        task.Needs.Where(n => !n.Conditions.IsEmpty && task.Changes.All(c => c.Item != n.Item)).Concat(task.Changes.Select(c => new Need(c.Item, [c.From])));

    /// <summary>Whether the change ends what the other task needs and nothing restores it in time.</summary>
    private static bool Ends(PlanIndex index, string task, Change change, string other, Need need) =>
        !need.Conditions.Contains(change.To)
        && change.Path.Any(need.Conditions.Contains)
        && !index.Changers(change.Item).Any(c => c.Task.Id != task && c.Task.Id != other && index.IsAfter(c.Task.Id, task) && !index.IsAfter(c.Task.Id, other) && need.Conditions.Contains(c.Change.To));
}

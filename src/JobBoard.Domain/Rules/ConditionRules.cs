using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>Conditions a task needs, items in work, parts, and what its start would take away from work in hand.</summary>
internal static class ConditionRules
{
    public static IEnumerable<WaitingOn> Of(TaskQuestion q) =>
        Needs(q, q.Task.Id).Concat(Froms(q)).Concat(Parts(q)).Concat(TakesAway(q));

    /// <summary>Needs that are not met now.</summary>
    public static IEnumerable<WaitingOn> Needs(TaskQuestion q, string self)
    {
        foreach (var need in q.Task.Needs)
        {
            foreach (var waiting in Need(q, need.Item, need.Conditions, self)) yield return waiting;
        }
    }

    /// <summary>A change wants its item where it begins; when gone on with or done again, anywhere on the way.</summary>
    private static IEnumerable<WaitingOn> Froms(TaskQuestion q)
    {
        var fresh = q.State.StartedAt is null;
        foreach (var change in q.Task.Changes)
        {
            ImmutableArray<string> allowed = fresh ? [change.From] : [.. change.Path.Distinct()];
            foreach (var waiting in Need(q, change.Item, allowed, q.Task.Id)) yield return waiting;
        }
    }

    private static IEnumerable<WaitingOn> Need(TaskQuestion q, string item, ImmutableArray<string> conditions, string self)
    {
        if (item.StartsWith("shop/", StringComparison.Ordinal))
        {
            if (q.Has(RuleBook.Ids.Condition) && q.Shop.Items.TryGetValue(item[5..], out var ofShop) && !conditions.Contains(ofShop.Condition))
                yield return new(RuleBook.Ids.Condition, $"{ofShop.Name} has to be {Either(conditions)}; it is {ofShop.Condition}.", About: item);
            yield break;
        }

        if (!q.Car.Items.TryGetValue(item, out var state)) yield break;
        var name = q.Index.Item(item)!.Name;
        if (InWorkBy(q, item, self) is { } worker)
        {
            if (q.Has(RuleBook.Ids.InWork))
                yield return new(RuleBook.Ids.InWork, $"{name} is being worked on: {worker.Task.Name}.", [.. worker.State.Crew.Select(m => m.Person)], About: item);
            if (conditions.Contains(state.Condition)) yield break;
        }

        if (q.Has(RuleBook.Ids.Condition) && !conditions.Contains(state.Condition))
            yield return new(RuleBook.Ids.Condition, $"{name} has to be {Either(conditions)}; it is {state.Condition}{Since(state)}.", Changers(q, item, conditions), About: item);
    }

    /// <summary>Who has the task in hand that will bring the condition about.</summary>
    private static ImmutableArray<string> Changers(TaskQuestion q, string item, ImmutableArray<string> conditions) =>
    [
        .. q.Index.ChangersInPlan(item).Where(t => conditions.Contains(t.Change.To))
            .SelectMany(t => q.Car.Tasks[t.Task.Id].Crew).Select(m => m.Person).Distinct(StringComparer.Ordinal),
    ];

    private static string Since(ItemState state) => state.Task is null ? "" : $" since {{{state.By}}} left it so";

    private static string Either(ImmutableArray<string> conditions) => string.Join(" or ", conditions);

    /// <summary>The other task in hand that changes the item.</summary>
    public static (PlanTask Task, TaskState State)? InWorkBy(TaskQuestion q, string item, string self)
    {
        foreach (var worker in Going.On(q.Car).InWork(item))
        {
            if (worker.Task.Id != self) return worker;
        }

        return null;
    }

    /// <summary>Parts that are not checked right.</summary>
    public static IEnumerable<WaitingOn> Parts(TaskQuestion q)
    {
        if (!q.Has(RuleBook.Ids.PartRight)) yield break;
        foreach (var id in q.Task.Parts)
        {
            if (!q.Car.Parts.TryGetValue(id, out var part) || part.Status == PartStatus.CheckedRight) continue;
            var name = q.Car.Plan.Parts.First(p => p.Id == id).Name;
            var overdue = part.Expected < q.Now;
            yield return new(RuleBook.Ids.PartRight, $"{name} {Words(part, overdue)}.", q.Foremen, overdue ? null : part.Expected, id);
        }
    }

    private static string Words(PartState part, bool overdue) => part.Status switch
    {
        PartStatus.NotOrdered => "is not ordered",
        PartStatus.Ordered when overdue => "is overdue, no new time given",
        PartStatus.Ordered => "is ordered and not here",
        PartStatus.Arrived => "is here and not checked",
        _ => $"is wrong{(part.Why is null ? "" : ": " + part.Why)}",
    };

    /// <summary>What work in hand on the same car would lose by this start.</summary>
    private static IEnumerable<WaitingOn> TakesAway(TaskQuestion q)
    {
        if (!q.Has(RuleBook.Ids.TakesAway)) yield break;
        foreach (var state in Going.On(q.Car).InHand)
        {
            var id = state.Id;
            if (id == q.Task.Id || q.Index.Task(id) is not { } other) continue;
            var item = other.Needs.Select(n => n.Item).FirstOrDefault(n => q.Task.Changes.Any(c => c.Item == n));
            if (item is not null)
                yield return new(RuleBook.Ids.TakesAway, $"{other.Name} is in hand and needs {q.Index.Item(item)?.Name ?? item} as it is.", [.. state.Crew.Select(m => m.Person)], About: id);
            else if (q.State.Status is (WorkStatus.SignedOff or WorkStatus.ForSecondCheck) && RestsOn(q, id))
                yield return new(RuleBook.Ids.TakesAway, $"{other.Name} is in hand and comes after this: it cannot be done again meanwhile.", [.. state.Crew.Select(m => m.Person)], About: id);
            else if (LosesEvidence(q, id) is { } node)
                yield return new(RuleBook.Ids.TakesAway, $"{other.Name} is in hand and rests on {q.NameOf(node)}, which this would make lapse.", [.. state.Crew.Select(m => m.Person)], About: id);
        }
    }

    /// <summary>Whether a task waits for this one to be done, by a chain of links or by one with a lead.</summary>
    private static bool RestsOn(TaskQuestion q, string later) =>
        q.Index.IsAfter(later, q.Task.Id) || q.Index.LinksInto(later).Any(l => l.After == q.Task.Id && l.Kind == LinkKind.FinishStart);

    private static string? LosesEvidence(TaskQuestion q, string inHand)
    {
        foreach (var node in q.Index.LapsesUnplanned(q.Task.Id))
        {
            if (q.Index.IsAfter(inHand, node) && Stands(q, node)) return node;
        }

        return null;
    }

    private static bool Stands(TaskQuestion q, string node) =>
        q.Car.Tasks.TryGetValue(node, out var task) ? task.Counts : q.Car.Holds.TryGetValue(node, out var hold) && hold.Counts;
}

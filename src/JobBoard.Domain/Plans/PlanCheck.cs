using System.Collections.Immutable;
using JobBoard.Domain.Plans.Faults;

namespace JobBoard.Domain.Plans;

/// <summary>A plan and the shop it is checked against, with what several rules ask.</summary>
public sealed class PlanCheck
{
    private readonly Lazy<Dictionary<string, int>> numbers;

    internal PlanCheck(Plan plan, ShopFacts shop)
    {
        (Plan, Shop, Index) = (plan, shop, PlanIndex.Of(plan));
        HasCircle = CircleFaults.Find(this).Any();
        Crews = new CrewFit(shop);
        numbers = new(() => Index.Nodes.Select((id, n) => (id, n)).ToDictionary(p => p.id, p => p.n, StringComparer.Ordinal));
    }

    /// <summary>What is checked.</summary>
    public Plan Plan { get; }

    /// <summary>Where it is to run.</summary>
    public ShopFacts Shop { get; }

    /// <summary>Who comes after whom.</summary>
    public PlanIndex Index { get; }

    /// <summary>Whether links of any kinds go round in a circle.</summary>
    public bool HasCircle { get; }

    /// <summary>Who can fill which crew.</summary>
    internal CrewFit Crews { get; }

    /// <summary>Tasks with their places in the JSON.</summary>
    internal IEnumerable<(PlanTask Task, string At)> Tasks => Each(Plan.Tasks, "tasks");

    /// <summary>Hold points with their places in the JSON.</summary>
    internal IEnumerable<(HoldPoint Hold, string At)> Holds => Each(Plan.Holds, "holds");

    /// <summary>Items with their places in the JSON.</summary>
    internal IEnumerable<(Item Item, string At)> Items => Each(Plan.Items, "items");

    /// <summary>Links with their places in the JSON.</summary>
    internal IEnumerable<(Link Link, string At)> Links => Each(Plan.Links, "links");

    /// <summary>Entries of a list with their places in the JSON.</summary>
    internal static IEnumerable<(T Value, string At)> Each<T>(ImmutableArray<T> list, string at) =>
        list.Select((value, n) => (value, $"{at}[{n}]"));

    /// <summary>A node as people call it, in quotation marks.</summary>
    internal string Say(string node) => $"“{Index.NameOf(node)}”";

    /// <summary>An item as people call it.</summary>
    internal string SayItem(string item) => Index.Item(item)?.Name ?? item;

    /// <summary>The words of the commonest repair.</summary>
    internal string AddLink(string later, string earlier) => $"add a link: {Say(later)} after {Say(earlier)}";

    /// <summary>Whether one node stands before another in the plan's own list.</summary>
    internal bool IsListedBefore(string a, string b) => numbers.Value[a] < numbers.Value[b];

    /// <summary>Whether one of the two comes after the other.</summary>
    internal bool AreOrdered(string a, string b) => Index.IsAfter(a, b) || Index.IsAfter(b, a);

    /// <summary>
    /// The condition an item is in all through a task that does not change it, left so by <c>By</c> (nothing at take-in);
    /// nothing where the order does not settle it.
    /// </summary>
    internal (string Condition, string? By)? Over(Item item, string task)
    {
        var changers = Index.Changers(item.Id);
        if (!changers.All(c => AreOrdered(c.Task.Id, task)))
            return null;
        var before = changers.LastOrDefault(c => Index.IsAfter(task, c.Task.Id));
        return before.Task is null ? (item.AtTakeIn, null) : (before.Change.To, before.Task.Id);
    }
}

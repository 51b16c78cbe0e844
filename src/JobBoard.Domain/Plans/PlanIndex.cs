using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace JobBoard.Domain.Plans;

/// <summary>
/// A plan made ready for questions: who comes after whom, who changes and disturbs what, what evidence stands on what.
/// Made once per plan and kept as long as the plan lives. Never fails on a faulty plan: of nodes or items with the same
/// id the first counts, links to nodes that do not exist are left out, and in a circle everything comes after everything.
/// </summary>
public sealed class PlanIndex
{
    private static readonly ConditionalWeakTable<Plan, PlanIndex> Made = [];

    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);
    private readonly List<string> ids = [];
    private readonly Dictionary<string, PlanTask> tasks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HoldPoint> holds = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Item> items = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> stages = new(StringComparer.Ordinal);
    private readonly ImmutableArray<Link>[] into;
    private readonly ImmutableArray<Link>[] from;
    private readonly Closure closure;
    private readonly Dictionary<string, ImmutableArray<string>> takenAgainBy;
    private readonly Dictionary<string, ImmutableArray<(string Node, string? Reading)>> evidence;
    private readonly Dictionary<string, ImmutableArray<(PlanTask Task, Change Change)>> changers;
    private readonly Dictionary<string, ImmutableArray<(PlanTask Task, Change Change)>> bringers;
    private readonly Dictionary<string, string> crews;
    private readonly ImmutableArray<string>[] holdsBefore;
    private readonly ImmutableArray<string>[] lapsesUnplanned;
    private readonly Dictionary<string, ImmutableArray<string>> disturbs;
    private readonly Dictionary<string, ImmutableArray<string>> disturbers;

    private PlanIndex(Plan plan)
    {
        Plan = plan;
        Name(plan);
        var known = plan.Links.Where(l => IsNode(l.Task) && IsNode(l.After)).ToLookup(l => numbers[l.Task]);
        var leaving = known.SelectMany(g => g).ToLookup(l => numbers[l.After]);
        into = [.. ids.Select((_, n) => known[n].ToImmutableArray())];
        from = [.. ids.Select((_, n) => leaving[n].ToImmutableArray())];
        closure = new Closure(ids.Count, Ordering(plan));
        takenAgainBy = Group(Evidences.TakesAgain(plan));
        evidence = Group(Evidences.Of(plan));
        changers = Group(Changes());
        bringers = Group(plan.Tasks.Where(t => Task(t.Id) == t).SelectMany(t => t.Changes.Select(c => (c.Item, (t, c)))));
        crews = tasks.Values.ToDictionary(t => t.Id, CrewText, StringComparer.Ordinal);
        lapsesUnplanned = new ImmutableArray<string>[ids.Count];
        holdsBefore = [.. ids.Select((_, n) => plan.Holds.Select(h => h.Id).Where(h => closure.IsAfter(n, numbers[h])).ToImmutableArray())];
        disturbs = tasks.Values.ToDictionary(t => t.Id, DisturbedBy, StringComparer.Ordinal);
        disturbers = Group(tasks.Values.SelectMany(t => disturbs[t.Id].Select(key => (key, t.Id))));
    }

    /// <summary>The plan this is of.</summary>
    public Plan Plan { get; }

    /// <summary>Ids of all nodes, tasks first, each in the order of the plan.</summary>
    public IReadOnlyList<string> Nodes => ids;

    /// <summary>Ids of all nodes so that each comes after all that it is after; in a circle the order of the plan.</summary>
    public IEnumerable<string> InOrder => closure.InOrder.Select(n => ids[n]);

    /// <summary>The index of a plan; made at the first question.</summary>
    public static PlanIndex Of(Plan plan) => Made.GetValue(plan, p => new PlanIndex(p));

    /// <summary>The task of this id, or nothing.</summary>
    public PlanTask? Task(string id) => tasks.GetValueOrDefault(id);

    /// <summary>The hold point of this id, or nothing.</summary>
    public HoldPoint? Hold(string id) => holds.GetValueOrDefault(id);

    /// <summary>The item of this id, or nothing.</summary>
    public Item? Item(string id) => items.GetValueOrDefault(id);

    /// <summary>Whether this is the id of a task or a hold point.</summary>
    public bool IsNode(string id) => numbers.ContainsKey(id);

    /// <summary>The place of a stage in the plan's order from 0, or -1.</summary>
    public int StageOrder(string stage) => stages.GetValueOrDefault(stage, -1);

    /// <summary>Name of a task or hold point for sentences; the id where there is none.</summary>
    public string NameOf(string node) => Task(node)?.Name ?? Hold(node)?.Name ?? node;

    /// <summary>
    /// Whether <paramref name="later"/> comes after <paramref name="earlier"/> by finish-start links without leads, over
    /// any number of nodes. False for unknown nodes, and for a node and itself unless it is in a circle.
    /// </summary>
    public bool IsAfter(string later, string earlier) =>
        numbers.TryGetValue(later, out var l) && numbers.TryGetValue(earlier, out var e) && closure.IsAfter(l, e);

    /// <summary>All nodes that come after this one, in the order of <see cref="Nodes"/>.</summary>
    public IEnumerable<string> AllAfter(string node) =>
        numbers.TryGetValue(node, out var n) ? closure.After(n).Select(i => ids[i]) : [];

    /// <summary>All nodes that this one comes after, in the order of <see cref="Nodes"/>.</summary>
    public IEnumerable<string> AllBefore(string node) =>
        numbers.TryGetValue(node, out var n) ? closure.Before(n).Select(i => ids[i]) : [];

    /// <summary>Links of all kinds in which this is the later node.</summary>
    public ImmutableArray<Link> LinksInto(string node) => numbers.TryGetValue(node, out var n) ? into[n] : [];

    /// <summary>Links of all kinds in which this is the earlier node.</summary>
    public ImmutableArray<Link> LinksFrom(string node) => numbers.TryGetValue(node, out var n) ? from[n] : [];

    /// <summary>Nodes that take the evidence of this one again.</summary>
    public ImmutableArray<string> TakenAgainBy(string node) => takenAgainBy.GetValueOrDefault(node, []);

    /// <summary>
    /// What stands on an aspect (<c>item/aspect</c>): readings by node and reading, sign-offs and releases by node alone.
    /// A sign-off stands on all that its readings stand on.
    /// </summary>
    public ImmutableArray<(string Node, string? Reading)> EvidenceOn(string aspectKey) => evidence.GetValueOrDefault(aspectKey, []);

    /// <summary>Tasks that change an item, with the change, in order.</summary>
    public ImmutableArray<(PlanTask Task, Change Change)> Changers(string item) => changers.GetValueOrDefault(item, []);

    /// <summary>Tasks that change an item, with the change, in the order of the plan.</summary>
    public ImmutableArray<(PlanTask Task, Change Change)> ChangersInPlan(string item) => bringers.GetValueOrDefault(item, []);

    /// <summary>The crew a task asks for as one text: the same for tasks that ask for the same.</summary>
    public string CrewOf(PlanTask task) => crews.GetValueOrDefault(task.Id) ?? CrewText(task);

    /// <summary>Hold points that a node comes after, in the order of the plan.</summary>
    public ImmutableArray<string> HoldsBefore(string node) => numbers.TryGetValue(node, out var n) ? holdsBefore[n] : [];

    /// <summary>Keys of the aspects a task disturbs when it starts: all of the items it changes, and those it touches.</summary>
    public ImmutableArray<string> Disturbs(string task) => disturbs.GetValueOrDefault(task, []);

    /// <summary>Tasks that disturb an aspect (<c>item/aspect</c>).</summary>
    public ImmutableArray<string> DisturbedBy(string aspectKey) => disturbers.GetValueOrDefault(aspectKey, []);

    /// <summary>
    /// Whether the evidence of a node lapses by plan when a task starts: the task comes after it, and it is taken again
    /// after the task or by the task itself (whose own evidence is taken at its end).
    /// </summary>
    public bool LapsesByPlan(string evidenceNode, string disturbingTask) =>
        IsAfter(disturbingTask, evidenceNode)
        && TakenAgainBy(evidenceNode).Any(again => again == disturbingTask || IsAfter(again, disturbingTask));

    /// <summary>Other nodes whose evidence a task makes lapse when it starts, and not by plan; made at the first question.</summary>
    public ImmutableArray<string> LapsesUnplanned(string task)
    {
        if (!numbers.TryGetValue(task, out var n)) return [];
        if (lapsesUnplanned[n].IsDefault)
            lapsesUnplanned[n] = [.. Disturbs(task).SelectMany(aspect => EvidenceOn(aspect), (_, e) => e.Node).Distinct(StringComparer.Ordinal).Where(e => e != task && !LapsesByPlan(e, task))];
        return lapsesUnplanned[n];
    }

    private void Name(Plan plan)
    {
        foreach (var task in plan.Tasks)
            if (tasks.TryAdd(task.Id, task))
                Number(task.Id);
        foreach (var hold in plan.Holds)
            if (!tasks.ContainsKey(hold.Id) && holds.TryAdd(hold.Id, hold))
                Number(hold.Id);
        foreach (var item in plan.Items)
            items.TryAdd(item.Id, item);
        foreach (var stage in plan.Stages)
            stages.TryAdd(stage.Id, stages.Count);
    }

    private void Number(string id)
    {
        numbers.Add(id, ids.Count);
        ids.Add(id);
    }

    private IEnumerable<(int Earlier, int Later)> Ordering(Plan plan) =>
        from link in plan.Links
        where link is { Kind: LinkKind.FinishStart, Lag: >= 0 } && IsNode(link.Task) && IsNode(link.After)
        select (numbers[link.After], numbers[link.Task]);

    private IEnumerable<(string Item, (PlanTask, Change))> Changes() =>
        from id in InOrder
        let task = Task(id)
        where task is not null
        from change in task.Changes
        select (change.Item, (task, change));

    private ImmutableArray<string> DisturbedBy(PlanTask task) =>
        [.. task.Changes.Select(c => Item(c.Item)).OfType<Item>()
            .SelectMany(item => item.Aspects.Select(name => new Aspect(item.Id, name)))
            .Concat(task.Touches).Select(a => a.Key).Distinct()];

    private static string CrewText(PlanTask task) => string.Join('\n', task.Crew.Select(c => $"{c.Count} {c.Duty}\t{c.Qualification}"));

    private static Dictionary<string, ImmutableArray<T>> Group<T>(IEnumerable<(string Key, T Value)> pairs) =>
        pairs.GroupBy(p => p.Key, p => p.Value, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Distinct().ToImmutableArray(), StringComparer.Ordinal);
}

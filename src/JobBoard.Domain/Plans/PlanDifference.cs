using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace JobBoard.Domain.Plans;

/// <summary>What differs between two plans, by ids. A node, item or part of the same id in both is altered where anything of it differs.</summary>
public sealed record PlanDifference
{
    /// <summary>Tasks and hold points that are new.</summary>
    public ImmutableArray<string> NodesAdded { get; init; } = [];

    /// <summary>Tasks and hold points that are otherwise than before.</summary>
    public ImmutableArray<string> NodesAltered { get; init; } = [];

    /// <summary>Tasks and hold points that are gone.</summary>
    public ImmutableArray<string> NodesTakenOut { get; init; } = [];

    /// <summary>Items that are new.</summary>
    public ImmutableArray<string> ItemsAdded { get; init; } = [];

    /// <summary>Items that are otherwise than before.</summary>
    public ImmutableArray<string> ItemsAltered { get; init; } = [];

    /// <summary>Items that are gone.</summary>
    public ImmutableArray<string> ItemsTakenOut { get; init; } = [];

    /// <summary>Parts that are new.</summary>
    public ImmutableArray<string> PartsAdded { get; init; } = [];

    /// <summary>Parts that are otherwise than before.</summary>
    public ImmutableArray<string> PartsAltered { get; init; } = [];

    /// <summary>Parts that are gone.</summary>
    public ImmutableArray<string> PartsTakenOut { get; init; } = [];

    /// <summary>Links that are new.</summary>
    public ImmutableArray<Link> LinksAdded { get; init; } = [];

    /// <summary>Links that are gone.</summary>
    public ImmutableArray<Link> LinksTakenOut { get; init; } = [];

    /// <summary>Whether the stages, the name, the note or the order of the lists differ.</summary>
    public bool Otherwise { get; init; }

    /// <summary>Whether nothing differs.</summary>
    [JsonIgnore]
    public bool IsNothing => this is
    {
        NodesAdded.IsEmpty: true, NodesAltered.IsEmpty: true, NodesTakenOut.IsEmpty: true,
        ItemsAdded.IsEmpty: true, ItemsAltered.IsEmpty: true, ItemsTakenOut.IsEmpty: true,
        PartsAdded.IsEmpty: true, PartsAltered.IsEmpty: true, PartsTakenOut.IsEmpty: true,
        LinksAdded.IsEmpty: true, LinksTakenOut.IsEmpty: true, Otherwise: false,
    };

    /// <summary>What differs; never fails on a faulty plan, where of the same id the first counts.</summary>
    public static PlanDifference Between(Plan before, Plan after)
    {
        var nodes = Lists(Nodes(before), Nodes(after));
        var items = Lists(before.Items.Select(i => (i.Id, Text(i))), after.Items.Select(i => (i.Id, Text(i))));
        var parts = Lists(before.Parts.Select(p => (p.Id, Text(p))), after.Parts.Select(p => (p.Id, Text(p))));
        var differs = new PlanDifference
        {
            NodesAdded = nodes.Added,
            NodesAltered = nodes.Altered,
            NodesTakenOut = nodes.TakenOut,
            ItemsAdded = items.Added,
            ItemsAltered = items.Altered,
            ItemsTakenOut = items.TakenOut,
            PartsAdded = parts.Added,
            PartsAltered = parts.Altered,
            PartsTakenOut = parts.TakenOut,
            LinksAdded = [.. after.Links.Except(before.Links)],
            LinksTakenOut = [.. before.Links.Except(after.Links)],
        };
        return differs with { Otherwise = Frame(before) != Frame(after) || (differs.IsNothing && Text(before) != Text(after)) };
    }

    /// <summary>What differs in sentences, with the names people use.</summary>
    public IEnumerable<string> Words(Plan before, Plan after)
    {
        var (was, now) = (PlanIndex.Of(before), PlanIndex.Of(after));
        return
        [
            .. NodesAdded.Select(n => $"“{now.NameOf(n)}” is added."),
            .. NodesAltered.Select(n => $"“{now.NameOf(n)}” is altered."),
            .. NodesTakenOut.Select(n => $"“{was.NameOf(n)}” is taken out."),
            .. ItemsAdded.Select(i => $"The item {now.Item(i)?.Name ?? i} is added."),
            .. ItemsAltered.Select(i => $"The item {now.Item(i)?.Name ?? i} is altered."),
            .. ItemsTakenOut.Select(i => $"The item {was.Item(i)?.Name ?? i} is taken out."),
            .. PartsAdded.Select(p => $"The part {Part(after, p)} is added."),
            .. PartsAltered.Select(p => $"The part {Part(after, p)} is altered."),
            .. PartsTakenOut.Select(p => $"The part {Part(before, p)} is taken out."),
            .. LinksAdded.Select(l => $"“{now.NameOf(l.Task)}” comes after “{now.NameOf(l.After)}”."),
            .. LinksTakenOut.Where(l => now.IsNode(l.Task) && now.IsNode(l.After)).Select(l => $"“{was.NameOf(l.Task)}” no longer comes after “{was.NameOf(l.After)}” in that way."),
            .. Otherwise ? ["Stages, names or their order are changed."] : Array.Empty<string>(),
        ];
    }

    private static string Part(Plan plan, string id) => plan.Parts.FirstOrDefault(p => p.Id == id)?.Name ?? id;

    private static IEnumerable<(string, string)> Nodes(Plan plan) =>
        plan.Tasks.Select(t => (t.Id, Text(t))).Concat(plan.Holds.Select(h => (h.Id, Text(h))));

    private static (ImmutableArray<string> Added, ImmutableArray<string> Altered, ImmutableArray<string> TakenOut) Lists(IEnumerable<(string Id, string Text)> before, IEnumerable<(string Id, string Text)> after)
    {
        var (was, now) = (First(before), First(after));
        return (
            [.. now.Keys.Where(id => !was.ContainsKey(id))],
            [.. now.Where(n => was.TryGetValue(n.Key, out var text) && text != n.Value).Select(n => n.Key)],
            [.. was.Keys.Where(id => !now.ContainsKey(id))]);
    }

    private static Dictionary<string, string> First(IEnumerable<(string Id, string Text)> list)
    {
        var first = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (id, text) in list) first.TryAdd(id, text);
        return first;
    }

    private static string Frame(Plan plan) => Text(plan with { Items = [], Parts = [], Tasks = [], Holds = [], Links = [] });

    /// <summary>Records with lists in them are not equal by value; their texts are.</summary>
    internal static string Text<T>(T value) => JsonSerializer.Serialize(value, PlanJson.Options);
}

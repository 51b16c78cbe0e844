using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace JobBoard.Domain.Plans.Repairs;

/// <summary>A place in a plan's JSON, such as <c>tasks[12].needs[0].item</c>, and what can be done there.</summary>
internal sealed partial class Place
{
    private readonly Plan plan;
    private readonly string[] steps;

    private Place(Plan plan, string at) => (this.plan, steps) = (plan, [.. Steps().Matches(at).Select(m => m.Value)]);

    public static Place Of(Plan plan, string at) => new(plan, at);

    /// <summary>The text that stands there, or nothing.</summary>
    public string? Text => Find(Root()) is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;

    /// <summary>The plan with another text there.</summary>
    public Plan Written(string text)
    {
        var root = Root();
        if (Find(root)?.Parent is JsonArray list) list[Last] = text;
        else if (Find(root)?.Parent is JsonObject of) of[steps[^1]] = text;
        return Read(root);
    }

    /// <summary>The plan without the entry of a list there.</summary>
    public IEnumerable<PlanRepair> TakenOut(string words)
    {
        var root = Root();
        if (Find(root)?.Parent is not JsonArray list) yield break;
        list.RemoveAt(Last);
        yield return new(words, Read(root));
    }

    /// <summary>The plan with another id for the entry there; what names the id goes on naming the first that has it.</summary>
    public IEnumerable<PlanRepair> Renamed()
    {
        var root = Root();
        if (Find(root) is not JsonObject entry || entry["id"] is not { } id || entry.Parent is not JsonArray list) yield break;
        var taken = list.Select(e => (string?)e?["id"]).Concat(steps.Length > 2 ? [] : PlanIndex.Of(plan).Nodes).ToHashSet(StringComparer.Ordinal);
        var free = Enumerable.Range(2, taken.Count + 1).Select(n => $"{id}-{n}").First(n => !taken.Contains(n));
        entry["id"] = free;
        yield return new($"Call its id {free}", Read(root));
    }

    private int Last => int.Parse(steps[^1], CultureInfo.InvariantCulture);

    private JsonNode Root() => JsonSerializer.SerializeToNode(plan, PlanJson.Options)!;

    private static Plan Read(JsonNode root) => root.Deserialize<Plan>(PlanJson.Options)!;

    private JsonNode? Find(JsonNode root)
    {
        JsonNode? node = root;
        foreach (var step in steps)
        {
            node = node switch
            {
                JsonArray list when int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n < list.Count => list[n],
                JsonObject of => of[step],
                _ => null,
            };
        }

        return node;
    }

    [GeneratedRegex("[^.\\[\\]]+")]
    private static partial Regex Steps();
}

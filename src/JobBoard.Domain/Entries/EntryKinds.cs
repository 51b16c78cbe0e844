using System.Collections.Frozen;
using System.Text.Json;
using System.Text.Json.Nodes;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Entries;

/// <summary>
/// All kinds of entries by name. A kind's body may change its shape over the years: its schema number goes up and an
/// upcaster (JSON to JSON) from the one before is added; the golden lines in the tests keep every old shape readable.
/// </summary>
public static class EntryKinds
{
    private static readonly FrozenDictionary<string, Type> Types = typeof(Fact).Assembly.GetTypes()
        .Where(t => t.IsSubclassOf(typeof(Fact)) && !t.IsAbstract)
        .ToFrozenDictionary(t => Kebab(t.Name), StringComparer.Ordinal);

    /// <summary>Upcasters by (kind, schema they read): each gives the body of the next schema.</summary>
    private static readonly FrozenDictionary<(string Kind, int Schema), Func<JsonObject, JsonObject>> Upcasters =
        new Dictionary<(string, int), Func<JsonObject, JsonObject>>
        {
            [("task-left-part-done", 1)] = GearToLoads,
            [("task-said-finished", 1)] = GearToLoads,
            [("task-signed-off", 1)] = GearToLoads,
            [("item-changed", 1)] = GearToLoads,
            [("hazard-set", 1)] = LoadsHang,
            [("date-was-given", 1)] = body => body,
            [("note-written", 1)] = NotChosen,
        }.ToFrozenDictionary();

    /// <summary>Kinds whose body has changed, with their present schema; all others are at 1.</summary>
    private static readonly FrozenDictionary<string, int> Schemas = new Dictionary<string, int>
    {
        ["task-left-part-done"] = 2,
        ["task-said-finished"] = 2,
        ["task-signed-off"] = 2,
        ["item-changed"] = 2,
        ["hazard-set"] = 2,
        ["date-was-given"] = 2,
        ["note-written"] = 2,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>All kinds, in order.</summary>
    public static IEnumerable<string> All => Types.Keys.Order(StringComparer.Ordinal);

    /// <summary>The kind of a fact.</summary>
    public static string KindOf(Fact fact) => Kebab(fact.GetType().Name);

    /// <summary>The present schema of a kind.</summary>
    public static int SchemaOf(string kind) => Schemas.GetValueOrDefault(kind, 1);

    /// <summary>The body as JSON, at the present schema.</summary>
    public static string Write(Fact fact) => JsonSerializer.Serialize(fact, fact.GetType(), PlanJson.Options);

    /// <summary>Reads a body of any schema this program knows.</summary>
    /// <exception cref="UnknownEntryException">The kind or schema is newer than this program.</exception>
    public static Fact Read(string kind, int schema, string body)
    {
        if (!Types.TryGetValue(kind, out var type) || schema > SchemaOf(kind)) throw new UnknownEntryException(kind, schema);
        if (schema == SchemaOf(kind)) return (Fact)JsonSerializer.Deserialize(body, type, PlanJson.Options)!;
        var json = JsonNode.Parse(body)!.AsObject();
        for (var s = schema; s < SchemaOf(kind); s++) json = Upcasters[(kind, s)](json);
        return (Fact)json.Deserialize(type, PlanJson.Options)!;
    }

    /// <summary>Schema 1 kept gear with a task that was left with a load; since then it is kept with each item that hangs.</summary>
    private static JsonObject GearToLoads(JsonObject body)
    {
        var hangs = new JsonObject();
        if (body["gear"] is JsonArray { Count: > 0 } gear && body["items"] is JsonObject items)
        {
            foreach (var (item, _) in items) hangs[item] = gear.DeepClone();
        }

        body.Remove("gear");
        body["hangsIn"] = hangs;
        return body;
    }

    /// <summary>Schema 1 did not say whether a danger is a load in gear; one with the sign of a suspended load (ISO 7010 W015) was.</summary>
    private static JsonObject LoadsHang(JsonObject body)
    {
        var hazard = body["hazard"]!.AsObject();
        hazard["hangsInGear"] = (string?)hazard["sign"] == "W015" && (string?)hazard["ends"] == "with-the-condition";
        return body;
    }

    /// <summary>Schema 1 had no choice of the foreman: a note that may be shown is shown once it is chosen.</summary>
    private static JsonObject NotChosen(JsonObject body)
    {
        body["chosen"] = false;
        return body;
    }

    private static string Kebab(string name) => JsonNamingPolicy.KebabCaseLower.ConvertName(name);
}

/// <summary>The day book holds an entry this program does not know: it was written by a newer one.</summary>
public sealed class UnknownEntryException(string kind, int schema)
    : Exception($"The day book holds an entry '{kind}' of schema {schema}, which this program does not know. Start the newer program that wrote it.");

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
        new Dictionary<(string, int), Func<JsonObject, JsonObject>>().ToFrozenDictionary();

    /// <summary>Kinds whose body has changed, with their present schema; all others are at 1.</summary>
    private static readonly FrozenDictionary<string, int> Schemas = new Dictionary<string, int>().ToFrozenDictionary(StringComparer.Ordinal);

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

    private static string Kebab(string name) => JsonNamingPolicy.KebabCaseLower.ConvertName(name);
}

/// <summary>The day book holds an entry this program does not know: it was written by a newer one.</summary>
public sealed class UnknownEntryException(string kind, int schema)
    : Exception($"The day book holds an entry '{kind}' of schema {schema}, which this program does not know. Start the newer program that wrote it.");

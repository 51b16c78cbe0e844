using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Commands;

namespace JobBoard.Shop.Demo;

/// <summary>One command of a seed file: when, who, and the command's members with times and plans not yet read.</summary>
internal sealed record DemoCommand(string Place, string At, string Actor, string Kind, JsonObject Members)
{
    /// <summary>What the file calls it, so that others can name the stop it raises; its place where it is not called anything.</summary>
    public string Called { get; init; } = Place;

    /// <summary>The same at every loading.</summary>
    public Guid Id => IdOf(Called);

    /// <summary>
    /// Reads <c>{ "at": "-45m", "actor": "inga", "kind": "start-task", ...members }</c>; a command without a time happens at
    /// <paramref name="usually"/>. <c>called</c> gives it a name: <c>"stop": "@stop NAME"</c> is the stop it raised.
    /// </summary>
    public static DemoCommand Read(string place, JsonNode? node, string usually)
    {
        var members = (node as JsonObject ?? throw new DemoException($"{place} is no object.")).DeepClone().AsObject();
        return new(place, Take("at") ?? usually, Take("actor") ?? Missing("actor"), Take("kind") ?? Missing("kind"), members) { Called = Take("called") ?? place };

        string? Take(string name)
        {
            var value = members[name]?.GetValue<string>();
            members.Remove(name);
            return value;
        }

        string Missing(string name) => throw new DemoException($"{place}: '{name}' is missing.");
    }

    /// <summary>The command itself.</summary>
    /// <exception cref="DemoException">It cannot be read.</exception>
    public Command ToCommand(DemoTimes times, Func<string, Plan?> plans)
    {
        try
        {
            return CommandJson.Read(Kind, (JsonObject)Resolved(Members, times, plans)!);
        }
        catch (Exception e) when (e is CommandFormatException or FormatException)
        {
            throw new DemoException($"{Place} ({Kind}): {e.Message}", e);
        }
    }

    private static Guid IdOf(string called) => new(SHA256.HashData(Encoding.UTF8.GetBytes("demo " + called)).AsSpan(0, 16));

    /// <summary>Text that begins with <c>@</c> is a time, a day or a stop; the plan of a car is the id of a template.</summary>
    private static JsonNode? Resolved(JsonNode? node, DemoTimes times, Func<string, Plan?> plans) => node switch
    {
        JsonObject o => new JsonObject(o.Select(p => KeyValuePair.Create(p.Key, p is { Key: "plan", Value: JsonValue id } ? Plan(id.GetValue<string>(), plans) : Resolved(p.Value, times, plans)))),
        JsonArray a => new JsonArray([.. a.Select(n => Resolved(n, times, plans))]),
        JsonValue v when v.TryGetValue<string>(out var text) && text.StartsWith('@') => JsonValue.Create(Named(text[1..], times)),
        null => null,
        _ => node.DeepClone(),
    };

    private static string Named(string text, DemoTimes times) => text.Split(' ', 2) switch
    {
        ["stop", var called] => $"stop-{IdOf(called):N}",
        ["day", var day] => times.ReadDay(day).ToString("O", CultureInfo.InvariantCulture),
        _ => times.Read(text).ToString("O", CultureInfo.InvariantCulture),
    };

    private static JsonNode? Plan(string id, Func<string, Plan?> plans) =>
        JsonSerializer.SerializeToNode(plans(id) ?? throw new CommandFormatException($"There is no template '{id}'."), PlanJson.Options);
}

/// <summary>The cars of the demo, how far they are carried, and what happens beside that.</summary>
/// <param name="Seed">The luck of the scripted crew.</param>
/// <param name="WorkUntil">When the scripted crew stops and the scene begins.</param>
/// <param name="Cars">The cars.</param>
/// <param name="Meanwhile">Commands while the crew works, by time.</param>
/// <param name="Scene">Commands of the last hour, in order.</param>
internal sealed record DemoCars(int Seed, string WorkUntil, ImmutableArray<DemoCar> Cars, ImmutableArray<JsonNode> Meanwhile, ImmutableArray<JsonNode> Scene)
{
    /// <summary>How far which car is carried on while people look on; the first is what it is about.</summary>
    public ImmutableArray<DemoGoal> CarriedOn { get; init; } = [];
}

/// <summary>Where a car of the demo is carried to.</summary>
internal sealed record DemoGoal(string Car, ImmutableArray<string> Reach);

/// <summary>One car of the demo.</summary>
internal sealed record DemoCar(string Car, string Name, string Plan, string Place, string TakenIn, string By)
{
    public ImmutableArray<string> Reach { get; init; } = [];

    public ImmutableArray<string> Short { get; init; } = [];

    /// <summary>What is read, by <c>task/reading</c>, in order.</summary>
    public ImmutableSortedDictionary<string, ImmutableArray<string>> Readings { get; init; } = ImmutableSortedDictionary<string, ImmutableArray<string>>.Empty;
}

/// <summary>Reads the seed files.</summary>
internal static class DemoFiles
{
    private static readonly JsonDocumentOptions Lenient = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

    public static JsonNode Node(string path) => Reading(path, text => JsonNode.Parse(text, null, Lenient)!);

    public static T Read<T>(string path) => Reading(path, text => JsonSerializer.Deserialize<T>(text, PlanJson.Options)!);

    private static T Reading<T>(string path, Func<string, T> read)
    {
        try
        {
            return read(File.ReadAllText(path));
        }
        catch (Exception e) when (e is IOException or JsonException or InvalidOperationException)
        {
            throw new DemoException($"{path}: {e.Message}", e);
        }
    }
}

/// <summary>The seed files could not be loaded; the message names file, command and cause.</summary>
public sealed class DemoException(string message, Exception? inner = null) : Exception(message, inner);

using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;

namespace JobBoard.Shop.Commands;

/// <summary>
/// Commands by kind: <c>start-task</c> is <see cref="StartTask"/>. As JSON a command is an object of its members in camelCase;
/// a member that is missing, unknown or of the wrong kind is refused by name, nothing is guessed.
/// </summary>
public static class CommandJson
{
    private static readonly FrozenDictionary<string, Type> Types = typeof(Command).Assembly.GetTypes()
        .Where(t => t.IsSubclassOf(typeof(Command)) && !t.IsAbstract)
        .ToFrozenDictionary(t => Kebab(t.Name), StringComparer.Ordinal);

    private static readonly JsonSerializerOptions Options = new(PlanJson.Options)
    {
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    /// <summary>All kinds, in order.</summary>
    public static ImmutableArray<string> All { get; } = [.. Types.Keys.Order(StringComparer.Ordinal)];

    /// <summary>The kind of a command.</summary>
    public static string KindOf(Command command) => Kebab(command.GetType().Name);

    /// <summary>The kind of a type of command.</summary>
    public static string KindOf(Type command) => Kebab(command.Name);

    /// <summary>The type of a kind, or nothing when there is no such kind.</summary>
    public static Type? TypeOf(string kind) => Types.GetValueOrDefault(kind);

    /// <summary>Reads the members of a command.</summary>
    /// <exception cref="CommandFormatException">There is no such kind, or a member is missing, unknown or wrong.</exception>
    public static Command Read(string kind, JsonObject members)
    {
        var type = TypeOf(kind) ?? throw new CommandFormatException($"There is no command '{kind}'. Known are: {string.Join(", ", All)}.");
        AddAbsent(type, members);
        if (EmptyEntry(members) is { } path) throw new CommandFormatException($"'{kind}': there is nothing at {path}; a list has no empty entries.");
        try
        {
            return (Command)members.Deserialize(type, Options)!;
        }
        catch (JsonException e)
        {
            throw new CommandFormatException($"'{kind}': {e.Message}", e);
        }
    }

    /// <summary>The command's members, without its kind.</summary>
    public static JsonObject Write(Command command) =>
        JsonSerializer.SerializeToNode(command, command.GetType(), Options)!.AsObject();

    /// <summary>One text per meaning: members in ordinal order at every level, nothing absent written.</summary>
    public static string Canonical(Command command) => Sorted(Write(command))!.ToJsonString(Options);

    // No list of a command or a plan may hold nothing, and the reader would let it through.
    private static string? EmptyEntry(JsonNode? node) => node switch
    {
        JsonArray list when list.IndexOf(null) is >= 0 and var n => $"{list.GetPath()}[{n}]",
        JsonArray list => list.Select(EmptyEntry).FirstOrDefault(path => path is not null),
        JsonObject members => members.Select(m => EmptyEntry(m.Value)).FirstOrDefault(path => path is not null),
        _ => null,
    };

    // A nullable member without a default may be left out: it is then nothing.
    private static void AddAbsent(Type type, JsonObject members)
    {
        var nullability = new NullabilityInfoContext();
        foreach (var parameter in type.GetConstructors()[0].GetParameters())
        {
            var name = JsonNamingPolicy.CamelCase.ConvertName(parameter.Name!);
            if (!members.ContainsKey(name) && nullability.Create(parameter).WriteState == NullabilityState.Nullable) members[name] = null;
        }
    }

    private static JsonNode? Sorted(JsonNode? node) => node switch
    {
        JsonObject o => new JsonObject(o.OrderBy(p => p.Key, StringComparer.Ordinal).Select(p => KeyValuePair.Create(p.Key, Sorted(p.Value)))),
        JsonArray a => new JsonArray([.. a.Select(Sorted)]),
        null => null,
        _ => node.DeepClone(),
    };

    private static string Kebab(string name) => JsonNamingPolicy.KebabCaseLower.ConvertName(name);
}

/// <summary>A command could not be read; the message names the member.</summary>
public sealed class CommandFormatException(string message, Exception? inner = null) : Exception(message, inner);

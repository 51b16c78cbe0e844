using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace JobBoard.Shop.Demo;

/// <summary>
/// One seed file: an array of commands, or an object with <c>commands</c> and, in the first file, <c>now</c> (the shop's time
/// the demo stands at; the real one when left out), <c>zone</c> (IANA) and <c>pins</c> (person to PIN).
/// Each command is <c>{ "at": "-3d 08:10", "actor": "inga", "kind": "start-task", ...members }</c>; <c>occurred</c> may say
/// that it happened before it was sent. A car's <c>plan</c> may be the id of a template.
/// </summary>
internal sealed record DemoFile(string Name, string? Now, string? Zone, ImmutableDictionary<string, string> Pins, ImmutableArray<DemoCommand> Commands)
{
    private static readonly JsonDocumentOptions Lenient = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

    public static DemoFile Read(string path)
    {
        var name = Path.GetFileName(path);
        try
        {
            var root = JsonNode.Parse(File.ReadAllText(path), null, Lenient);
            var head = root as JsonObject ?? [];
            var pins = (head["pins"] as JsonObject ?? []).ToImmutableDictionary(p => p.Key, p => p.Value!.GetValue<string>());
            var commands = root as JsonArray ?? head["commands"] as JsonArray ?? [];
            return new(name, head["now"]?.GetValue<string>(), head["zone"]?.GetValue<string>(), pins, [.. commands.Select((c, i) => Command(name, i, c))]);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            throw new DemoException($"{path}: {e.Message}", e);
        }
    }

    private static DemoCommand Command(string file, int index, JsonNode? node)
    {
        var members = (node as JsonObject ?? throw new DemoException($"{file}, command {index + 1} is no object.")).DeepClone().AsObject();
        return new(string.Create(CultureInfo.InvariantCulture, $"{file}, command {index + 1}"), Take("at")!, Take("occurred", needed: false), Take("actor")!, Take("kind")!, members);

        string? Take(string name, bool needed = true)
        {
            var value = members[name]?.GetValue<string>();
            if (value is null && needed) throw new DemoException($"{file}, command {index + 1}: '{name}' is missing.");
            members.Remove(name);
            return value;
        }
    }
}

/// <summary>One command of a seed file, not yet read.</summary>
internal sealed record DemoCommand(string Place, string At, string? Occurred, string Actor, string Kind, JsonObject Members)
{
    /// <summary>The same at every loading.</summary>
    public Guid Id => new(SHA256.HashData(Encoding.UTF8.GetBytes("demo " + Place)).AsSpan(0, 16));
}

/// <summary>The seed files could not be loaded; the message names file, command and cause.</summary>
public sealed class DemoException(string message, Exception? inner = null) : Exception(message, inner);

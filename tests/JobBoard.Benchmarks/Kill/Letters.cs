using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using JobBoard.Domain.Commands;
using JobBoard.Shop.Commands;
using JobBoard.Shop.Running;

namespace JobBoard.Benchmarks.Kill;

/// <summary>A command as one line of JSON on its way to a shop in another process.</summary>
/// <param name="Id">From the sender; sent twice it is done once.</param>
/// <param name="Actor">Who sends it.</param>
/// <param name="Command">What.</param>
/// <param name="At">The shop's time it is decided at; the shop's own clock when not said.</param>
internal sealed record Letter(Guid Id, string Actor, Command Command, DateTimeOffset? At = null)
{
    public string ToLine() => new JsonObject
    {
        ["id"] = Id,
        ["actor"] = Actor,
        ["at"] = At?.ToString("O", CultureInfo.InvariantCulture),
        ["kind"] = CommandJson.KindOf(Command),
        ["members"] = CommandJson.Write(Command),
    }.ToJsonString();

    public static Letter Read(string line)
    {
        var letter = JsonNode.Parse(line)!.AsObject();
        var members = letter["members"]!.DeepClone().AsObject();
        DateTimeOffset? at = letter["at"] is { } time ? DateTimeOffset.Parse(time.GetValue<string>(), CultureInfo.InvariantCulture) : null;
        return new(letter["id"]!.GetValue<Guid>(), letter["actor"]!.GetValue<string>(), CommandJson.Read(letter["kind"]!.GetValue<string>(), members), at);
    }
}

/// <summary>The answer to a letter.</summary>
/// <param name="Kept">The outcome as it is kept beside the day book, or nothing when none was reached.</param>
/// <param name="Failed">Why none was reached.</param>
/// <param name="Groups">Groups the process has committed so far.</param>
/// <param name="Synchronous">What the connection that appends last said of itself, on its own thread; nothing before its first commit.</param>
internal sealed record Reply(string? Kept, string? Failed, long Groups, string? Synchronous)
{
    public static Reply Of(Outcome outcome, long groups, string? synchronous) => outcome is Outcome.Accepted or Outcome.Refused
        ? new(outcome.ToJson(), null, groups, synchronous)
        : new(null, outcome.ToString(), groups, synchronous);

    public string ToLine() => JsonSerializer.Serialize(this);

    public static Reply Read(string line) => JsonSerializer.Deserialize<Reply>(line)!;
}

using System.Collections.Immutable;
using System.Text;
using System.Text.Json;

namespace JobBoard.Domain.Plans;

/// <summary>A plan that could be read, or everything that kept it from being read.</summary>
/// <param name="Plan">Nothing where there are faults.</param>
/// <param name="Faults">Empty where there is a plan.</param>
public sealed record PlanReading(Plan? Plan, ImmutableArray<PlanFault> Faults);

/// <summary>
/// Reads plans from JSON (<see cref="PlanJson"/>). Whatever is wrong becomes a fault with its place, never an exception;
/// what the plan says is not looked at here (<see cref="PlanFaults"/>).
/// </summary>
public static class PlanReader
{
    /// <summary>Longest text in bytes of UTF-8.</summary>
    public const int LongestText = 2 * 1024 * 1024;

    /// <summary>Most entries in any one list, so that reading stays cheap; plans keep to less (<see cref="PlanFaults"/>).</summary>
    private const int LongestList = 20_000;

    private const int MostFaults = 200;

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private static readonly JsonDocumentOptions Reading = new()
    {
        AllowTrailingCommas = true,
        CommentHandling = JsonCommentHandling.Skip,
        MaxDepth = 16,
    };

    private static readonly JsonSerializerOptions Strict = new(PlanJson.Options)
    {
        PropertyNameCaseInsensitive = false,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    /// <summary>The plan, or its faults: <c>too-large</c>, <c>json</c> (with the line), <c>shape</c> (with the path), <c>format</c>.</summary>
    public static PlanReading Read(string json)
    {
        if (json.Length > LongestText || Encoding.UTF8.GetByteCount(json) > LongestText)
            return Not("too-large", "line 1", $"The text is longer than the {LongestText / (1024 * 1024)} MB a plan may have.");
        try
        {
            using var document = JsonDocument.Parse(Utf8.GetBytes(json.TrimStart('\uFEFF')), Reading);
            return Read(document.RootElement);
        }
        catch (EncoderFallbackException fault)
        {
            return Not("json", $"line {json.AsSpan(0, fault.Index).Count('\n') + 1}", "There is half a character in the text.");
        }
        catch (JsonException fault)
        {
            return Not("json", Line(fault), "This is not JSON: " + Plain(fault.Message));
        }
    }

    /// <summary>The plan as people can read it.</summary>
    public static string Write(Plan plan) => JsonSerializer.Serialize(plan, PlanJson.Indented);

    private static PlanReading Read(JsonElement root)
    {
        var faults = JsonShape.Faults(root, typeof(Plan), Strict, LongestList).Take(MostFaults).ToImmutableArray();
        if (!faults.IsEmpty)
            return new PlanReading(null, [.. faults.Select(f => new PlanFault("shape", f.At, f.Words, f.Repair))]);
        var plan = root.Deserialize<Plan>(Strict)!;
        return plan.Format == PlanJson.Format && plan.Tasks.Length <= Faults.ContentFaults.MostTasks
            ? new PlanReading(plan, [])
            : Refused(plan);
    }

    private static PlanReading Refused(Plan plan) => plan.Format == PlanJson.Format
        ? Not("too-many", "tasks", $"{plan.Tasks.Length} tasks are more than the {Faults.ContentFaults.MostTasks} a plan may have.")
        : Not("format", "format", $"The format is \"{plan.Format}\"; this program reads \"{PlanJson.Format}\".");

    private static PlanReading Not(string code, string at, string words) => new(null, [new PlanFault(code, at, words)]);

    private static string Line(JsonException fault) =>
        $"line {(fault.LineNumber ?? 0) + 1}, position {(fault.BytePositionInLine ?? 0) + 1}";

    /// <summary>Without the reader's own account of the place, which counts from 0.</summary>
    private static string Plain(string message) => message.Split(" LineNumber:")[0].Split(" Path:")[0];
}

using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace JobBoard.Domain.Plans;

/// <summary>How plans, commands and entries are written as JSON: camelCase names, kebab-case enums, unknown members refused.</summary>
public static class PlanJson
{
    /// <summary>The format's name and version.</summary>
    public const string Format = "jobboard-plan/1";

    /// <summary>One set of options for everything the Domain writes.</summary>
    public static JsonSerializerOptions Options { get; } = Make(indented: false);

    /// <summary>The same, for people to read.</summary>
    public static JsonSerializerOptions Indented { get; } = Make(indented: true);

    private static JsonSerializerOptions Make(bool indented)
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.Web)
        {
            WriteIndented = indented,
            IgnoreReadOnlyProperties = true,
            NumberHandling = JsonNumberHandling.Strict,
            UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
            ReadCommentHandling = JsonCommentHandling.Skip,
            AllowTrailingCommas = true,
        };
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false));
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }
}

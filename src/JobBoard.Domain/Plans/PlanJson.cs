using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

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
            TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { DropComputed } },
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

    /// <summary>What can be worked out from the rest is not written: properties without a setter.</summary>
    private static void DropComputed(JsonTypeInfo type)
    {
        if (type.Kind != JsonTypeInfoKind.Object) return;
        for (var i = type.Properties.Count - 1; i >= 0; i--)
        {
            if (type.Properties[i].AttributeProvider is PropertyInfo { SetMethod: null }) type.Properties.RemoveAt(i);
        }
    }
}

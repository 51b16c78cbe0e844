using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using JobBoard.Domain.Plans.Faults;

namespace JobBoard.Domain.Plans;

/// <summary>
/// Compares JSON with the type it is to become, and finds every member that is unknown, missing or of the wrong kind,
/// where reading it at once would stop at the first.
/// </summary>
internal static class JsonShape
{
    /// <summary>All that would keep <paramref name="json"/> from becoming a <paramref name="type"/>; nothing else would.</summary>
    public static IEnumerable<Found> Faults(JsonElement json, Type type, JsonSerializerOptions options, int longestList) =>
        new Walk(options, longestList).Value(json, type, "");

    private sealed record Walk(JsonSerializerOptions Options, int LongestList)
    {
        public IEnumerable<Found> Value(JsonElement json, Type type, string at)
        {
            var bare = Nullable.GetUnderlyingType(type) ?? type;
            if (bare.IsGenericType && bare.GetGenericTypeDefinition() == typeof(ImmutableArray<>))
                return json.ValueKind == JsonValueKind.Array ? List(json, bare.GenericTypeArguments[0], at) : Wrong(at, "a list", json);
            if (Options.GetTypeInfo(bare) is { Kind: JsonTypeInfoKind.Object } info)
                return json.ValueKind == JsonValueKind.Object ? Members(json, info, at) : Wrong(at, "an object", json);
            return Simple(json, bare) is { } expected ? Wrong(at, expected, json) : [];
        }

        private IEnumerable<Found> List(JsonElement json, Type type, string at) =>
            json.GetArrayLength() > LongestList
                ? [new Found(at, $"{json.GetArrayLength()} entries are more than the {LongestList} a list may have.")]
                : json.EnumerateArray().SelectMany((entry, n) => Value(entry, type, $"{at}[{n}]"));

        private IEnumerable<Found> Members(JsonElement json, JsonTypeInfo info, string at)
        {
            var seen = new HashSet<string>(StringComparer.Ordinal);
            var missing = info.Properties.Where(p => p.IsRequired).Select(p => p.Name).ToHashSet(StringComparer.Ordinal);
            foreach (var member in json.EnumerateObject())
            {
                if (Name(member) is not { } name)
                {
                    yield return new Found(Here(at), "A name here has half a character in it.");
                    continue;
                }

                missing.Remove(name);
                if (!seen.Add(name))
                    yield return new Found(Path(at, name), $"\"{name}\" stands twice.");
                foreach (var found in Member(member.Value, info, name, at))
                    yield return found;
            }

            foreach (var name in missing)
                yield return new Found(Here(at), $"\"{name}\" is missing.");
        }

        private IEnumerable<Found> Member(JsonElement value, JsonTypeInfo info, string name, string at)
        {
            var path = Path(at, name);
            if (info.Properties.FirstOrDefault(p => p.Name == name) is not { } property)
                return [new Found(path, $"\"{name}\" is not known here.", $"write one of {string.Join(", ", info.Properties.Where(IsRead).Select(p => p.Name))}")];
            if (!IsRead(property) || (value.ValueKind == JsonValueKind.Null && property.IsSetNullable))
                return [];
            return Value(value, property.PropertyType, path);
        }

        /// <summary>Members that are only written (such as an aspect's key) are overlooked when read.</summary>
        private static bool IsRead(JsonPropertyInfo property) => property.Set is not null || property.AssociatedParameter is not null;

        /// <summary>Nothing where the value fits, else what was expected.</summary>
        private static string? Simple(JsonElement json, Type type)
        {
            if (type == typeof(string))
                return json.ValueKind == JsonValueKind.String && Text(json) is not null ? null : "a text";
            if (type == typeof(bool))
                return json.ValueKind is JsonValueKind.True or JsonValueKind.False ? null : "true or false";
            if (type == typeof(int))
                return json.ValueKind == JsonValueKind.Number && json.TryGetInt32(out _) ? null : "a whole number";
            if (type == typeof(decimal))
                return json.ValueKind == JsonValueKind.Number && json.TryGetDecimal(out _) ? null : "a number";
            if (!type.IsEnum)
                throw new NotSupportedException($"Plans hold no {type.Name}.");
            var names = Enum.GetNames(type).Select(JsonNamingPolicy.KebabCaseLower.ConvertName).ToArray();
            return json.ValueKind == JsonValueKind.String && names.Contains(Text(json)) ? null : $"one of {string.Join(", ", names)}";
        }

        private static IEnumerable<Found> Wrong(string at, string expected, JsonElement json) =>
            [new Found(Here(at), $"This is {Kind(json)}; it has to be {expected}.")];

        private static string Path(string at, string name) => at.Length == 0 ? name : $"{at}.{name}";

        private static string Here(string at) => at.Length == 0 ? "line 1" : at;

        private static string Kind(JsonElement json) => json.ValueKind switch
        {
            JsonValueKind.Object => "an object",
            JsonValueKind.Array => "a list",
            JsonValueKind.String => Text(json) is { } text ? $"the text \"{(text.Length <= 40 ? text : text[..40] + "…")}\"" : "a text with half a character in it",
            JsonValueKind.Number => "the number " + (json.GetRawText() is { Length: > 40 } raw ? raw[..40] + "…" : json.GetRawText()),
            _ => json.GetRawText(),
        };

        private static string? Name(JsonProperty member)
        {
            try
            {
                return member.Name;
            }
            catch (InvalidOperationException)
            {
                return null;
            }
        }

        /// <summary>The text, or nothing where an escape in it is half a character.</summary>
        private static string? Text(JsonElement json)
        {
            try
            {
                return json.GetString();
            }
            catch (InvalidOperationException)
            {
                return null;
            }
        }
    }
}

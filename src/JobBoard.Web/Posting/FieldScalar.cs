using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace JobBoard.Web.Posting;

/// <summary>One typed value: text to JSON, or the fix in words.</summary>
internal static class FieldScalar
{
    private static readonly string[] LocalTimes = ["yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd'T'HH:mm:ss", "yyyy-MM-dd HH:mm", "yyyy-MM-dd"];
    private static readonly string[] Times = ["HH:mm", "H:mm", "HH:mm:ss"];

    public static bool IsScalar(Type type) =>
        type.IsEnum || type.IsPrimitive || type == typeof(string) || type == typeof(decimal) || type == typeof(Guid)
        || type == typeof(DateTimeOffset) || type == typeof(DateOnly) || type == typeof(TimeOnly);

    public static (JsonNode? Value, string? Fix) Read(Type type, string text, TimeZoneInfo zone)
    {
        if (type.IsEnum) return Enum(type, text);
        if (type == typeof(string)) return (text, null);
        if (type == typeof(bool)) return Bool(text);
        if (type == typeof(int) || type == typeof(long)) return Whole(text);
        if (type == typeof(decimal)) return Number(text);
        if (type == typeof(Guid)) return Guid.TryParse(text, out var id) ? (id, null) : (null, "this is no id. Load the page again.");
        if (type == typeof(DateOnly)) return Day(text);
        if (type == typeof(TimeOnly)) return Time(text);
        if (type == typeof(DateTimeOffset)) return Instant(text, zone);
        throw new InvalidOperationException($"Forms cannot fill a {type.Name}.");
    }

    private static (JsonNode?, string?) Enum(Type type, string text)
    {
        var words = System.Enum.GetNames(type).Select(JsonNamingPolicy.KebabCaseLower.ConvertName).ToList();
        return words.Contains(text) ? (text, null) : (null, $"'{text}' is not one of {string.Join(", ", words)}. Choose one of them.");
    }

    private static (JsonNode?, string?) Bool(string text) => text switch
    {
        "true" or "on" or "yes" => (true, null),
        "false" or "off" or "no" => (false, null),
        _ => (null, $"'{text}' is neither yes nor no. Choose one."),
    };

    private static (JsonNode?, string?) Whole(string text) =>
        int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
            ? (number, null)
            : (null, $"'{text}' is not a whole number. Type digits only, such as 90.");

    private static (JsonNode?, string?) Number(string text) =>
        decimal.TryParse(text.Replace(',', '.'), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            ? (number, null)
            : (null, $"'{text}' is not a number. Type it such as 12.5.");

    private static (JsonNode?, string?) Day(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _)
            ? (text, null)
            : (null, $"'{text}' is not a day. Type it as 2026-11-24.");

    private static (JsonNode?, string?) Time(string text) =>
        TimeOnly.TryParseExact(text, Times, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)
            ? (time.ToString("HH:mm:ss", CultureInfo.InvariantCulture), null)
            : (null, $"'{text}' is not a time of day. Type it as 08:00.");

    private static (JsonNode?, string?) Instant(string text, TimeZoneInfo zone)
    {
        if (Parse(text, zone) is { } at) return (at.ToString("yyyy-MM-dd'T'HH:mm:ss.fffzzz", CultureInfo.InvariantCulture), null);
        return (null, $"'{text}' is not a day and time. Type it as 2026-11-24T14:07, the shop's time.");
    }

    /// <summary>An instant with its offset, or a local time of the shop; of an hour that comes twice, the earlier.</summary>
    public static DateTimeOffset? Parse(string text, TimeZoneInfo zone)
    {
        if (DateTime.TryParseExact(text, LocalTimes, CultureInfo.InvariantCulture, DateTimeStyles.None, out var local)) return ToInstant(local, zone);
        var withOffset = text.EndsWith('Z') || text.LastIndexOfAny(['+', '-']) > text.IndexOf('T', StringComparison.Ordinal);
        return withOffset && DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.None, out var at) ? at : null;
    }

    private static DateTimeOffset ToInstant(DateTime local, TimeZoneInfo zone)
    {
        if (zone.IsInvalidTime(local)) local = local.AddHours(1);
        var offset = zone.IsAmbiguousTime(local) ? zone.GetAmbiguousTimeOffsets(local).Max() : zone.GetUtcOffset(local);
        return new DateTimeOffset(local, offset);
    }
}

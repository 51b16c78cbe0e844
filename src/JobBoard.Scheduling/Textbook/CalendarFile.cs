using System.Globalization;
using System.Text.Json;

namespace JobBoard.Scheduling;

/// <summary>
/// Reads a shop's hours from JSON: <c>zone</c> (IANA name); <c>week</c>, per day a list of openings such as
/// <c>"08:00-12:00"</c> (24:00 and beyond for hours over midnight); <c>closed</c>, a list of dates; <c>extra</c>, per date a list
/// of openings in place of the weekly ones; <c>hoursInADay</c> and <c>daysInAWeek</c>, what a day and a week of work are (8 and 5).
/// </summary>
internal sealed class CalendarFile(string path, List<InputFault> faults)
{
    private readonly List<WeeklyOpening> week = [];
    private readonly List<DateOnly> closed = [];
    private readonly List<DateOpening> extra = [];
    private TimeZoneInfo? zone;

    public WorkCalendar? Calendar { get; private set; }

    /// <summary>Seconds of work in a working day.</summary>
    public long Day { get; private set; } = 8 * 3600;

    /// <summary>Seconds of work in a working week.</summary>
    public long Week { get; private set; } = 40 * 3600;

    public bool Read()
    {
        var known = faults.Count;
        try
        {
            using var document = JsonDocument.Parse(File.ReadAllText(path));
            ReadAll(document.RootElement);
            if (faults.Count == known)
                Calendar = new WorkCalendar(zone!, week, closed, extra);
        }
        catch (JsonException e)
        {
            Fault("", $"is not JSON: {e.Message}");
        }
        catch (ArgumentException e)
        {
            Fault("", e.Message);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Fault("", $"cannot be read: {e.Message}");
        }

        return Calendar is not null;
    }

    private void ReadAll(JsonElement root)
    {
        var (hours, days) = (8m, 5m);
        foreach (var member in Members(root, ""))
        {
            Action read = member.Name switch
            {
                "zone" => () => ReadZone(member.Value),
                "week" => () => ReadWeek(member.Value),
                "closed" => () => closed.AddRange(Items(member.Value, "closed").Select(d => Date(d, "closed")).OfType<DateOnly>()),
                "extra" => () => ReadExtra(member.Value),
                "hoursInADay" => () => hours = Number(member, 24),
                "daysInAWeek" => () => days = Number(member, 7),
                _ => () => Fault(member.Name, "is not known. Use: zone, week, closed, extra, hoursInADay, daysInAWeek."),
            };
            read();
        }

        (Day, Week) = ((long)(hours * 3600), (long)(hours * days * 3600));
        if (zone is null && !faults.Exists(f => f.Field == "zone"))
            Fault("zone", "is missing. Write an IANA name such as Europe/Berlin.");
    }

    private void ReadZone(JsonElement value)
    {
        var name = value.ValueKind == JsonValueKind.String ? value.GetString()! : value.ToString();
        if (!TimeZoneInfo.TryFindSystemTimeZoneById(name, out zone))
            Fault("zone", $"'{name}' is not known on this computer. Write an IANA name such as Europe/Berlin.");
    }

    private void ReadWeek(JsonElement value)
    {
        foreach (var day in Members(value, "week"))
        {
            if (Enum.TryParse<DayOfWeek>(day.Name, ignoreCase: true, out var which) && !char.IsAsciiDigit(day.Name[0]))
                week.AddRange(Spans(day.Value, $"week, {day.Name}").Select(span => new WeeklyOpening(which, span)));
            else
                Fault($"week, {day.Name}", "is no day. Write monday to sunday.");
        }
    }

    private void ReadExtra(JsonElement value)
    {
        foreach (var date in Members(value, "extra"))
        {
            if (Date(date.Name, "extra") is { } on)
                extra.AddRange(Spans(date.Value, $"extra, {date.Name}").Select(span => new DateOpening(on, span)));
        }
    }

    private IEnumerable<OpenSpan> Spans(JsonElement value, string field)
    {
        foreach (var text in Items(value, field))
        {
            if (text.Split('-') is [var from, var to] && Time(from) is { } open && Time(to) is { } close && new OpenSpan(open, close) is { IsValid: true } span)
                yield return span;
            else
                Fault(field, $"'{text}' is no opening. Write it such as 08:00-12:00, over midnight 22:00-30:00.");
        }
    }

    private static TimeSpan? Time(string text) =>
        text.Trim().Split(':') is [{ Length: 2 } h, { Length: 2 } m]
        && int.TryParse(h, NumberStyles.None, CultureInfo.InvariantCulture, out var hours)
        && int.TryParse(m, NumberStyles.None, CultureInfo.InvariantCulture, out var minutes) && minutes < 60
            ? new TimeSpan(hours, minutes, 0)
            : null;

    private DateOnly? Date(string text, string field)
    {
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
            return date;
        Fault(field, $"'{text}' is no date. Write it such as 2026-12-24.");
        return null;
    }

    private decimal Number(JsonProperty member, decimal most)
    {
        if (member.Value.ValueKind == JsonValueKind.Number && member.Value.TryGetDecimal(out var number) && number > 0 && number <= most)
            return number;
        Fault(member.Name, $"must be a number above 0 and at most {most}.");
        return 1;
    }

    private IEnumerable<JsonProperty> Members(JsonElement value, string field)
    {
        if (value.ValueKind == JsonValueKind.Object)
            return value.EnumerateObject();
        Fault(field, "must be an object in braces.");
        return [];
    }

    private IEnumerable<string> Items(JsonElement value, string field)
    {
        if (value.ValueKind == JsonValueKind.Array && value.EnumerateArray().All(i => i.ValueKind == JsonValueKind.String))
            return value.EnumerateArray().Select(i => i.GetString()!);
        Fault(field, "must be a list of texts in square brackets.");
        return [];
    }

    private void Fault(string field, string words) => faults.Add(new InputFault(Path.GetFileName(path), 0, field, words));
}

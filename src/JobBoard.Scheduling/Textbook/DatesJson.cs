using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace JobBoard.Scheduling;

/// <summary>
/// Prints dates as one JSON object: <c>unit</c>, <c>end</c>, <c>chain</c> (names), <c>tasks</c>; with estimates also
/// <c>variance</c> and <c>standardDeviation</c> along the chain. Times are numbers in the unit without a calendar, else ISO 8601.
/// </summary>
internal static class DatesJson
{
    private static readonly JsonWriterOptions Readable = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static void Write(DatesReport report, TextWriter output)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Readable))
            Write(report, json);
        output.WriteLine(Encoding.UTF8.GetString(bytes.ToArray()));
    }

    private static void Write(DatesReport report, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("unit", report.Scale.UnitWord);
        Time(json, report.Scale, "end", report.Dates.End!.Value);
        json.WriteStartArray("chain");
        foreach (var step in report.Chain)
            json.WriteStringValue(report.Network.Tasks[step.Task].Name);
        json.WriteEndArray();
        if (report.Network.HasEstimates)
        {
            Number(json, "variance", report.ChainVariance);
            Number(json, "standardDeviation", (decimal)Math.Sqrt((double)report.ChainVariance));
        }

        json.WriteStartArray("tasks");
        for (var task = 0; task < report.Network.Tasks.Count; task++)
            Task(report, json, task);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Task(DatesReport report, Utf8JsonWriter json, int task)
    {
        var (dates, scale) = (report.Dates[task], report.Scale);
        json.WriteStartObject();
        json.WriteString("task", report.Network.Tasks[task].Name);
        if (report.Variance(task) is { } variance)
        {
            Number(json, "expected", report.Expected(task));
            Number(json, "variance", variance);
        }

        Time(json, scale, "earlyStart", dates.EarlyStart!.Value);
        Time(json, scale, "earlyFinish", dates.EarlyFinish!.Value);
        Time(json, scale, "lateStart", dates.LateStart!.Value);
        Time(json, scale, "lateFinish", dates.LateFinish!.Value);
        Number(json, "totalFloat", scale.Amount(dates.TotalFloat!.Value));
        Number(json, "freeFloat", scale.Amount(dates.FreeFloat!.Value));
        json.WriteBoolean("setsTheDate", dates.SetsTheDate);
        json.WriteEndObject();
    }

    private static void Time(Utf8JsonWriter json, TimeScale scale, string name, long instant)
    {
        if (scale is UnitScale)
            Number(json, name, scale.Amount(instant));
        else
            json.WriteString(name, scale.Calendar.Local(instant).ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture));
    }

    /// <summary>Ten decimals and no trailing zeros.</summary>
    private static void Number(Utf8JsonWriter json, string name, decimal number)
    {
        json.WritePropertyName(name);
        json.WriteRawValue(Math.Round(number, 10).ToString("0.##########", CultureInfo.InvariantCulture));
    }
}

namespace JobBoard.Scheduling;

/// <summary>Prints dates as a table.</summary>
internal static class DatesTable
{
    private static readonly string[] Heads =
        ["task", "early start", "early finish", "late start", "late finish", "total float", "free float", "sets the date"];

    public static void Write(DatesReport report, TextWriter output)
    {
        List<string[]> rows = [Head(report)];
        for (var task = 0; task < report.Network.Tasks.Count; task++)
            rows.Add(Row(report, task));
        var widths = Enumerable.Range(0, rows[0].Length).Select(column => rows.Max(row => row[column].Length)).ToArray();
        foreach (var row in rows)
            output.WriteLine(string.Join("  ", row.Select((cell, column) => column == 0 ? cell.PadRight(widths[0]) : cell.PadLeft(widths[column]))));
        output.WriteLine();
        output.WriteLine(report.Scale.Note);
        output.WriteLine($"Ends: {report.Scale.Instant(report.Dates.End!.Value)}");
        output.WriteLine($"Sets the date: {string.Join(", then ", report.Chain.Select(step => report.Network.Tasks[step.Task].Name))}");
        if (report.Network.HasEstimates)
            output.WriteLine($"Variance along it: {TimeScale.Plain(report.ChainVariance)}, standard deviation {TimeScale.Plain((decimal)Math.Sqrt((double)report.ChainVariance))} {report.Scale.UnitWord}");
    }

    private static string[] Head(DatesReport report) => report.Network.HasEstimates ? [.. Heads, "expected", "variance"] : Heads;

    private static string[] Row(DatesReport report, int task)
    {
        var (dates, scale) = (report.Dates[task], report.Scale);
        string[] row =
        [
            report.Network.Tasks[task].Name,
            scale.Instant(dates.EarlyStart!.Value),
            scale.Instant(dates.EarlyFinish!.Value),
            scale.Instant(dates.LateStart!.Value),
            scale.Instant(dates.LateFinish!.Value),
            TimeScale.Plain(scale.Amount(dates.TotalFloat!.Value)),
            TimeScale.Plain(scale.Amount(dates.FreeFloat!.Value)),
            dates.SetsTheDate ? "yes" : "",
        ];
        if (!report.Network.HasEstimates)
            return row;
        return [.. row, TimeScale.Plain(report.Expected(task)), report.Variance(task) is { } variance ? TimeScale.Plain(variance) : ""];
    }
}

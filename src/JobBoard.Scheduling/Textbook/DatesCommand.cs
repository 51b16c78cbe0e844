namespace JobBoard.Scheduling;

/// <summary>
/// <c>dates FOLDER</c>: the critical path of a network written as plain CSV, so that anybody can check it against a textbook of
/// their own. Reads nothing but the files named and changes nothing.
/// </summary>
/// <remarks>
/// <para><c>tasks.csv</c> has one row per task. <c>task</c>: its name. <c>duration</c>: a number, a point before decimals (at most
/// six), 0 for a milestone. Instead of a duration a row may have <c>low</c>, <c>usual</c>, <c>high</c>: the dates then rest on
/// (low + 4 usual + high) / 6, and the variance ((high - low) / 6) squared is printed. <c>unit</c> (optional): minutes, hours,
/// days or weeks; what has none is in <c>--unit</c>, days if that is not given.</para>
/// <para><c>links.csv</c> has one row per link. <c>task</c>: the task that waits. <c>after</c>: the task it waits on. Optional:
/// <c>kind</c>: finish-start (if empty), start-start, finish-finish or start-finish, the end of <c>after</c> first.
/// <c>lag</c>: a number, 0 if empty, negative for a lead. <c>unit</c>: as above. <c>clock</c>: working (if empty) or elapsed.</para>
/// <para>Both are UTF-8 as RFC 4180 has it, with a header; columns may stand in any order. Without <c>--calendar</c> times count
/// from 0, and working and elapsed are the same. With it, a working day and week are as long as the calendar says.</para>
/// </remarks>
public static class DatesCommand
{
    /// <summary>Exit code for files or arguments that are not right.</summary>
    public const int BadInput = 2;

    /// <summary>Runs the command.</summary>
    /// <param name="args">What stands after the verb.</param>
    /// <param name="output">Takes the table or the JSON.</param>
    /// <param name="error">Takes everything that is wrong, one fault on each line.</param>
    /// <returns>0, or <see cref="BadInput"/> if there was any fault; then nothing is put out.</returns>
    public static int Run(string[] args, TextWriter output, TextWriter error)
    {
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(error);
        if (args is ["--help"] or ["-h"])
        {
            output.WriteLine(DatesOptions.Usage);
            return 0;
        }

        var wrong = new List<string>();
        var options = DatesOptions.Read(args, wrong);
        if (wrong.Count == 0)
            return Run(options, output, error);
        wrong.ForEach(error.WriteLine);
        error.WriteLine();
        error.WriteLine(DatesOptions.Usage);
        return BadInput;
    }

    private static int Run(DatesOptions options, TextWriter output, TextWriter error)
    {
        var faults = new List<InputFault>();
        var network = new PlainNetworkFiles(options.Folder, options.Unit ?? TimeUnit.Days, faults).Read();
        var calendar = options.Calendar is { } path ? new CalendarFile(path, faults) : null;
        calendar?.Read();
        var report = faults.Count == 0 ? Reckon(options, network, calendar, faults) : null;
        if (report is null)
            return Refuse(faults, error);
        if (options.Json)
            DatesJson.Write(report, output);
        else
            DatesTable.Write(report, output);
        return 0;
    }

    private static DatesReport? Reckon(DatesOptions options, PlainNetwork network, CalendarFile? calendar, List<InputFault> faults)
    {
        if (Scale(options, network, calendar, faults) is not { } scale)
            return null;
        long? given = null;
        if (options.DateGiven is { } text && (given = scale.Parse(text)) is null)
            faults.Add(new InputFault("--date-given", 0, "", $"'{text}' is not a time. {TimeHint(calendar)}"));
        return DatesReport.Make(network, scale, given, faults);
    }

    private static TimeScale? Scale(DatesOptions options, PlainNetwork network, CalendarFile? calendar, List<InputFault> faults)
    {
        var unit = options.Unit ?? network.CommonUnit ?? TimeUnit.Days;
        if (calendar is null)
            return new UnitScale(network, unit);
        if (ShopScale.ParseLocal(options.Start!, calendar.Calendar!.Zone) is { } start)
            return new ShopScale(calendar, unit, start);
        faults.Add(new InputFault("--start", 0, "", $"'{options.Start}' is not a time. {TimeHint(calendar)}"));
        return null;
    }

    private static string TimeHint(CalendarFile? calendar) =>
        calendar is null ? "Write a number, counted from 0." : "Write it such as 2026-03-02T08:00.";

    private static int Refuse(List<InputFault> faults, TextWriter error)
    {
        error.WriteLine(faults.Count == 1 ? "One thing to put right:" : $"{faults.Count} things to put right:");
        foreach (var fault in faults)
            error.WriteLine(fault);
        return BadInput;
    }
}

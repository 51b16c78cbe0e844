namespace JobBoard.Scheduling;

/// <summary>What was asked of <see cref="DatesCommand"/>.</summary>
internal sealed record DatesOptions
{
    public const string Usage = """
        Works out earliest and latest dates, floats and what sets the date of a network in two CSV files.

          dates FOLDER [--json] [--unit minutes|hours|days|weeks] [--date-given TIME]
                       [--calendar FILE --start TIME]

        FOLDER holds tasks.csv (task,duration - or task,low,usual,high; optionally unit) and links.csv
        (task,after - optionally kind,lag,unit,clock). --unit is the unit of durations and lags that have none
        (days). Without --calendar times count from 0; with it, TIME is local, such as 2026-03-02T08:00.
        """;

    public string Folder { get; init; } = "";

    public bool Json { get; init; }

    /// <summary>Unit of amounts without one; nothing if not said.</summary>
    public TimeUnit? Unit { get; init; }

    public string? Calendar { get; init; }

    public string? Start { get; init; }

    public string? DateGiven { get; init; }

    /// <summary>Reads the arguments; what is wrong with them is added to the list.</summary>
    public static DatesOptions Read(IReadOnlyList<string> args, List<string> wrong)
    {
        var options = new DatesOptions();
        for (var at = 0; at < args.Count; at++)
        {
            if (args[at] == "--json")
                options = options with { Json = true };
            else if (!args[at].StartsWith("--", StringComparison.Ordinal))
                options = options.WithFolder(args[at], wrong);
            else if (at + 1 < args.Count)
                options = options.With(args[at], args[++at], wrong);
            else
                wrong.Add($"{args[at]} is not known, or needs a value after it.");
        }

        if (options.Folder.Length == 0)
            wrong.Add("FOLDER is missing: name the folder with tasks.csv and links.csv.");
        if (options.Calendar is null != options.Start is null)
            wrong.Add("--calendar and --start go together: give both or neither.");
        return options;
    }

    private DatesOptions WithFolder(string folder, List<string> wrong)
    {
        if (Folder.Length > 0)
            wrong.Add($"{folder} is a second folder: name one.");
        return this with { Folder = folder };
    }

    private DatesOptions With(string name, string value, List<string> wrong)
    {
        switch (name)
        {
            case "--calendar": return this with { Calendar = value };
            case "--start": return this with { Start = value };
            case "--date-given": return this with { DateGiven = value };
            case "--unit" when PlainNetworkFiles.UnitOf(value) is { } unit: return this with { Unit = unit };
            case "--unit":
                wrong.Add($"--unit {value} is not known: use one of {string.Join(", ", PlainNetworkFiles.UnitWords)}.");
                return this;
            default:
                wrong.Add($"{name} is not known.");
                return this;
        }
    }
}

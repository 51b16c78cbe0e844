using System.Text.Json;

namespace JobBoard.Scheduling.Tests;

/// <summary>The command as a person uses it: files in a folder, what is printed, what is refused.</summary>
public sealed class DatesCommandTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("jobboard-dates-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Table_shows_dates_floats_and_what_sets_the_date()
    {
        Write("task,duration\nA,4\nB,3\nC,8\n", "task,after\nC,A\nC,B\n");

        var (code, output, _) = Run();

        Assert.Equal(0, code);
        var lines = output.Split('\n').Select(line => string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries))).ToArray();
        Assert.Equal("task early start early finish late start late finish total float free float sets the date", lines[0]);
        Assert.Equal(["A 0 4 0 4 0 0 yes", "B 0 3 1 4 1 1", "C 4 12 4 12 0 0 yes"], lines[1..4]);
        Assert.Contains("Ends: 12", output, StringComparison.Ordinal);
        Assert.Contains("Sets the date: A, then C", output, StringComparison.Ordinal);
    }

    /// <summary>All four kinds spelled out; made for this check and computed by hand, not published.</summary>
    [Fact]
    public void Json_gives_all_four_kinds_with_lags()
    {
        Write(
            "task,duration\nA,6\nB,8\nC,5\nD,4\nE,3\nF,2\n",
            """
            task,after,kind,lag,unit,clock
            B,A,start-start,2,days,working
            C,B,finish-finish,3,days,working
            D,C,finish-start,1,days,working
            E,B,start-finish,12,days,working
            F,D,finish-start,0,days,working
            F,E,,,,
            """);

        var (_, output, _) = Run("--json");

        var root = JsonDocument.Parse(output).RootElement;
        Assert.Equal(20, root.GetProperty("end").GetDecimal());
        Assert.Equal("A 0-6 B 2-10 C 8-13 D 14-18 E 11-14 F 18-20", string.Join(' ', root.GetProperty("tasks").EnumerateArray().Select(t =>
            $"{t.GetProperty("task")} {t.GetProperty("earlyStart")}-{t.GetProperty("earlyFinish")}")));
        var e = root.GetProperty("tasks")[4];
        Assert.Equal((15m, 18m, 4m), (e.GetProperty("lateStart").GetDecimal(), e.GetProperty("lateFinish").GetDecimal(), e.GetProperty("totalFloat").GetDecimal()));
    }

    /// <summary>
    /// C. Hendrickson, Project Management for Construction, chapter 10, nine-activity project, read at
    /// scribd.com/document/705201264: 30 days, A-C-F-I. The folder stands beside the demo for anybody to try.
    /// </summary>
    [Fact]
    public void Example_folder_gives_the_published_answer()
    {
        var (code, output, _) = RunIn(Repository("seed-data/networks/construction"), "--json");

        var root = JsonDocument.Parse(output).RootElement;
        Assert.Equal(0, code);
        Assert.Equal(30, root.GetProperty("end").GetInt32());
        Assert.Equal("ACFI", string.Concat(root.GetProperty("chain").EnumerateArray().Select(c => c.GetString())));
    }

    [Fact]
    public void Decimals_and_units_are_kept_exactly()
    {
        Write("task,duration,unit\nA,0.1,days\nB,0.2,days\nC,7.2,hours\nD,432,minutes\n", "task,after\nB,A\n");

        var (_, output, _) = Run("--json", "--unit", "days");

        var tasks = JsonDocument.Parse(output).RootElement.GetProperty("tasks");
        Assert.All(tasks.EnumerateArray(), task => Assert.Equal(0, task.GetProperty("totalFloat").GetDecimal()));
        Assert.Equal(0.3m, tasks[3].GetProperty("earlyFinish").GetDecimal());
    }

    [Fact]
    public void Quotes_hold_commas_and_line_ends_as_in_RFC_4180()
    {
        Write("task,duration\r\n\"Lift, lower\",4\r\n\"say \"\"go\"\"\r\nthen lift\",3\r\n", "task,after\r\n\"say \"\"go\"\"\r\nthen lift\",\"Lift, lower\"\r\n");

        var (code, output, _) = Run("--json");

        Assert.Equal(0, code);
        var chain = JsonDocument.Parse(output).RootElement.GetProperty("chain");
        Assert.Equal(["Lift, lower", "say \"go\"\r\nthen lift"], chain.EnumerateArray().Select(c => c.GetString()));
    }

    [Fact]
    public void Calendar_gives_local_dates_and_both_clocks()
    {
        Write("task,duration,unit\nglue,1,days\nfit,4,hours\n", "task,after,kind,lag,unit,clock\nfit,glue,finish-start,24,hours,elapsed\n");
        var calendar = WriteCalendar("""{"zone":"Europe/Berlin","week":{"thursday":["08:00-16:00"],"friday":["08:00-16:00"],"monday":["08:00-16:00"]}}""");

        var (code, output, _) = Run("--json", "--calendar", calendar, "--start", "2026-03-26T08:00", "--unit", "hours");

        var root = JsonDocument.Parse(output).RootElement;
        Assert.Equal(0, code);
        Assert.Equal("2026-03-26T16:00:00+01:00", root.GetProperty("tasks")[0].GetProperty("earlyFinish").GetString());
        Assert.Equal("2026-03-30T08:00:00+02:00", root.GetProperty("tasks")[1].GetProperty("earlyStart").GetString());
        Assert.Equal(8, root.GetProperty("tasks")[0].GetProperty("totalFloat").GetDecimal());
    }

    [Fact]
    public void Date_given_too_early_makes_float_negative()
    {
        Write("task,duration\nA,4\nB,3\n", "task,after\nB,A\n");

        var (_, output, _) = Run("--json", "--date-given", "5");

        Assert.Equal(-2, JsonDocument.Parse(output).RootElement.GetProperty("tasks")[0].GetProperty("totalFloat").GetDecimal());
    }

    [Fact]
    public void Every_fault_is_listed_with_file_line_field_and_fix()
    {
        Write(
            "task,duration,unit\nA,four,days\nA,2,days\nB,-1,days\nC,1,fortnights\n,1,days\nD,,days\n",
            "task,after,kind,lag,unit,clock\nA,Z,finish-start,0,days,working\nB,A,FS,0,days,working\nC,A,finish-start,1,days,wall\nC,B\n");

        var (code, output, error) = Run();

        Assert.Equal(2, code);
        Assert.Empty(output);
        string[] wanted =
        [
            "tasks.csv, line 2, duration: 'four' is not a number. Write digits, with a point before decimals, such as 2 or 2.5.",
            "tasks.csv, line 3, task: 'A' stands already on line 2. Give each task a name of its own.",
            "tasks.csv, line 4, duration: -1 is below 0. Write 0 or more.",
            "tasks.csv, line 5, unit: 'fortnights' is not known. Write one of: minutes, hours, days, weeks.",
            "tasks.csv, line 6, task: is empty. Write the task's name.",
            "tasks.csv, line 7, duration: is empty. Write how long the task takes, 0 for a milestone.",
            "links.csv, line 5: has 2 fields where the first line has 6. Give each column one, empty if need be.",
        ];
        Assert.Equal(["7 things to put right:", .. wanted], error.TrimEnd().Split('\n'));
    }

    [Fact]
    public void Every_fault_of_the_links_is_listed()
    {
        Write(
            "task,duration\nA,4\nB,2\n",
            "task,after,kind,lag,unit,clock\nA,Z,finish-start,0,days,working\nB,A,FS,0,days,working\nB,A,start-start,x,days,wall\nB,A,finish-start,1,,\n");

        var (code, _, error) = Run();

        Assert.Equal(2, code);
        Assert.Equal(
            [
                "5 things to put right:",
                "links.csv, line 2, after: 'Z' is no task of tasks.csv. Write a name as it stands there, or add the task.",
                "links.csv, line 3, kind: 'FS' is not known. Write one of: finish-start, start-start, finish-finish, start-finish.",
                "links.csv, line 4, lag: 'x' is not a number. Write digits, with a point before decimals, such as 2 or 2.5.",
                "links.csv, line 4, clock: 'wall' is not known. Write one of: working, elapsed.",
                "links.csv, line 5: says the same link as line 3. Keep one of them.",
            ],
            error.TrimEnd().Split('\n'));
    }

    [Theory]
    [InlineData("task,length\nA,1\n", "tasks.csv, line 1, length: is not a column of this file. Use: task, duration, unit, low, usual, high.")]
    [InlineData("task,duration\n\"A,1\n", "tasks.csv, line 2: a field in quotes is never closed. Put a quote at its end.")]
    [InlineData("task,duration\nA\"x,1\n", "tasks.csv, line 2: a quote stands inside a field that does not begin with one. Put the whole field in quotes and double the ones inside.")]
    [InlineData("task,duration\n\"A\"x,1\n", "tasks.csv, line 2: 'x' stands after a closing quote. Put it inside the quotes or take it out.")]
    [InlineData("task,task,duration\nA,A,1\n", "tasks.csv, line 1, task: stands twice. Take one out.")]
    [InlineData("task,duration\nA,1.1234567\n", "tasks.csv, line 2, duration: 1.1234567 has more than 6 decimals. Round it, or use a smaller unit.")]
    [InlineData("task,duration\nA,2000000000\n", "tasks.csv, line 2, duration: 2000000000 is beyond 1000000000. Use a greater unit.")]
    [InlineData("task,duration\n", "tasks.csv, line 1: there are no tasks. Write one on each line after the first.")]
    [InlineData("", "tasks.csv, line 1: is empty. Begin with the line task.")]
    [InlineData("task,low,usual,high\nA,3,2,9\n", "tasks.csv, line 2, low: 3 is above usual, 2. The three go from low to high.")]
    [InlineData("task,low,usual,high\nA,3,4,\n", "tasks.csv, line 2, high: is empty. Write all three estimates: low, usual and high.")]
    [InlineData("task,duration,low,usual,high\nA,3,1,2,3\n", "tasks.csv, line 2, duration: stands beside low, usual and high. Give either the duration or the three estimates.")]
    public void Fault_in_the_tasks_is_named(string tasks, string fault)
    {
        Write(tasks, "task,after\n");

        var (code, _, error) = Run();

        Assert.Equal(2, code);
        Assert.Contains(fault, error.Split('\n'));
    }

    [Fact]
    public void Ring_of_links_is_named_with_its_lines()
    {
        Write("task,duration\nA,1\nB,1\nC,1\n", "task,after\nB,A\nC,B\nA,C\n");

        var (code, _, error) = Run();

        Assert.Equal(2, code);
        Assert.Contains("links.csv, line 2: tasks wait on one another in a ring:", error, StringComparison.Ordinal);
        Assert.Contains("(lines 2, 3, 4). Take out one of these links.", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Missing_files_are_named()
    {
        var (code, _, error) = Run();

        Assert.Equal(2, code);
        Assert.Contains("tasks.csv: there is no such file", error, StringComparison.Ordinal);
        Assert.Contains("links.csv: there is no such file", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Faults_of_the_calendar_are_named()
    {
        Write("task,duration\nA,1\n", "task,after\n");
        var calendar = WriteCalendar("""{"zone":"Moon/Base","week":{"someday":["08:00-16:00"],"monday":["16:00-08:00"]},"closed":["24.12."],"hour":1}""");

        var (code, _, error) = Run("--calendar", calendar, "--start", "soon");

        Assert.Equal(2, code);
        Assert.Equal(5, error.TrimEnd().Split('\n').Count(line => line.StartsWith("calendar.json, ", StringComparison.Ordinal)));
        Assert.Contains("calendar.json, week, monday: '16:00-08:00' is no opening. Write it such as 08:00-12:00, over midnight 22:00-30:00.", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--unit fortnights", "--unit fortnights is not known: use one of minutes, hours, days, weeks.")]
    [InlineData("--fast yes", "--fast is not known.")]
    [InlineData("--start 2026-03-26", "--calendar and --start go together: give both or neither.")]
    [InlineData("--date-given soon", "--date-given: 'soon' is not a time. Write a number, counted from 0.")]
    public void Fault_in_the_arguments_is_named(string args, string fault)
    {
        Write("task,duration\nA,1\n", "task,after\n");

        var (code, output, error) = Run(args.Split(' '));

        Assert.Equal((2, ""), (code, output));
        Assert.Contains(fault, error.Split('\n'));
    }

    private static string Repository(string path)
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(at.FullName, "JobBoard.sln")))
            at = at.Parent ?? throw new DirectoryNotFoundException("The tests run inside the repository.");
        return Path.Combine(at.FullName, path);
    }

    private void Write(string tasks, string links)
    {
        File.WriteAllText(Path.Combine(folder, "tasks.csv"), tasks);
        File.WriteAllText(Path.Combine(folder, "links.csv"), links);
    }

    private string WriteCalendar(string json)
    {
        var path = Path.Combine(folder, "calendar.json");
        File.WriteAllText(path, json);
        return path;
    }

    private (int Code, string Output, string Error) Run(params string[] args) => RunIn(folder, args);

    private static (int Code, string Output, string Error) RunIn(string folder, params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var code = DatesCommand.Run([folder, .. args], output, error);
        return (code, output.ToString(), error.ToString());
    }
}

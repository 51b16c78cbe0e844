using JobBoard.Domain.Plans;
using JobBoard.Shop.Plans;

namespace JobBoard.Shop.Tests.Plans;

public class PlanTableTests
{
    private static readonly Plan Empty = new() { Id = "p", Name = "P" };

    private static readonly Plan Some = new()
    {
        Id = "p",
        Name = "P",
        Stages = [new("s1", "Strip"), new("s2", "Fit")],
        Tasks = [new() { Id = "strip", Name = "Strip it", Stage = "s1", Estimate = new(1, 2, 3) }],
    };

    private static PlanTable Read(string text, Plan? plan = null) => PlanTable.Read(text, plan ?? Some, dayMinutes: 480);

    private static PlanTask Task(PlanTable table, string id) => table.Plan.Tasks.Single(t => t.Id == id);

    [Fact]
    public void Cells_as_a_spreadsheet_copies_them_become_tasks_with_links()
    {
        var table = Read("Task\tStage\tAfter\tLow\tUsual\tHigh\tUnit\tPeople\r\n1/4\" bolts out\tStrip\tStrip it\t1\t1,5\t2\th\t2\r\n\"Wash\tand dry\"\t\t1/4\" bolts out + 12 h\t\t30\t\t\t\r\n");

        Assert.Empty(table.Faults);
        Assert.All(table.Rows, r => Assert.Empty(r.Faults));
        Assert.Equal(("", 3), (table.Rest, table.Plan.Tasks.Length));
        Assert.Equal(new Estimate(60, 90, 120), Task(table, "1-4-bolts-out").Estimate);
        Assert.Equal(2, Task(table, "1-4-bolts-out").Crew[0].Count);
        Assert.Equal(("Wash\tand dry", "s1", new Estimate(30, 30, 30)), (Task(table, "wash-and-dry").Name, Task(table, "wash-and-dry").Stage, Task(table, "wash-and-dry").Estimate));
        Assert.Equal([new Link("1-4-bolts-out", "strip"), new Link("wash-and-dry", "1-4-bolts-out", Lag: 720)], table.Plan.Links);
        Assert.Equal("in “Strip”, 60, 90, 120 min, 2 people, after “Strip it”", table.Rows[0].Becomes);
    }

    [Fact]
    public void Rows_go_by_their_numbers_too_and_stages_are_made()
    {
        var table = Read("no;what;section;usual (h);predecessors;parts\n1;Pump in;Fuel;2;;Pump; \n2;Pump on;;1:30;1;\n", Empty);

        Assert.All(table.Rows, r => Assert.Empty(r.Faults.Where(f => f.Column != "")));
        var comma = Read("no,task,stage,usual (h),after\n1,Pump in,Fuel,2,\n2,Pump on,,1:30,1\n", Empty);
        Assert.Equal([new Link("pump-on", "pump-in")], comma.Plan.Links);
        Assert.Equal(["fuel"], comma.Plan.Stages.Select(s => s.Id));
        Assert.Equal(90, Task(comma, "pump-on").Estimate.Usual);
    }

    [Fact]
    public void Each_fault_names_its_row_and_column_and_the_row_waits()
    {
        var table = Read("task\tusual\tunit\tpeople\tafter\nWeld\tsoon\t\t\t\nPaint\t2\tfurlongs\t\t\nLook\t20\t\tmany\tNothing\n\t20\t\t\t\nSweep\t20\t\t\t\nDry\t5\t\t\tWeld\n");

        Assert.Equal([(2, "usual"), (3, "unit"), (4, "people"), (4, "after"), (5, "task"), (7, "after")], table.Rows.SelectMany(r => r.Faults).Select(f => (f.Line, f.Column)));
        Assert.Equal(["strip", "sweep"], table.Plan.Tasks.Select(t => t.Id));
        Assert.Empty(table.Plan.Links);
        Assert.Equal(6, table.Rest.Split('\n').Length);
        Assert.Contains("Weld\tsoon", table.Rest, StringComparison.Ordinal);
        Assert.DoesNotContain("Sweep", table.Rest, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "Nothing is pasted")]
    [InlineData("Weld\t2\nPaint\t3", "called “task”")]
    public void What_is_no_table_is_told_and_kept(string text, string words)
    {
        var table = Read(text);

        Assert.Contains(words, Assert.Single(table.Faults).Words, StringComparison.Ordinal);
        Assert.Equal(text, table.Rest);
        Assert.Same(Some, table.Plan);
    }

    [Fact]
    public void A_column_nobody_knows_is_told_and_the_rest_read()
    {
        var table = Read("task\tcolour\nWeld\tred\n");

        Assert.Equal("colour", Assert.Single(table.Faults).Column);
        Assert.Equal("30, 60, 120", string.Join(", ", new[] { Task(table, "weld").Estimate.Low, Task(table, "weld").Estimate.Usual, Task(table, "weld").Estimate.High }));
    }

    [Theory]
    [InlineData("90", null, 90)]
    [InlineData("1.5", "h", 90)]
    [InlineData("1,5 h", null, 90)]
    [InlineData("1 h 30", null, 90)]
    [InlineData("1:30", null, 90)]
    [InlineData("2", "days", 960)]
    [InlineData("2 d", "h", 960)]
    [InlineData("soon", null, null)]
    [InlineData("-5", null, null)]
    [InlineData("5", "weeks", null)]
    public void Times_are_read_as_people_write_them(string text, string? unit, int? minutes) => Assert.Equal(minutes, WorkAmount.Minutes(text, unit, 480));
}

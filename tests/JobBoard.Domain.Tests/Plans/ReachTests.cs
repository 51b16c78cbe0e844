using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Plans;

public class ReachTests
{
    private static readonly Item Engine = new() { Id = "engine", Name = "Engine", Conditions = ["out", "hanging", "in"], AtTakeIn = "out", AsForTheRoad = "in" };

    private static PlanTask Task(string id, params string[] needs) =>
        new() { Id = id, Name = id, Stage = "s", Estimate = new(1, 2, 3), Needs = needs.Length == 0 ? [] : [new("engine", [.. needs])] };

    private static PlanTask Lift(string id = "lift", string from = "out", string to = "in") =>
        Task(id) with { Changes = [new("engine", from, to) { Through = ["hanging"] }] };

    private static Plan Plan(PlanTask[] tasks, params Link[] links) =>
        new() { Id = "p", Name = "p", Stages = [new("s", "S")], Items = [Engine], Tasks = [.. tasks], Links = [.. links] };

    private static (string, bool)[] Once(Plan plan, string task = "lift") => [.. Reach.Once(plan, task).Select(r => (r.Task, r.IsBefore))];

    [Fact]
    public void What_needs_it_out_has_to_be_done_before_it_is_in() =>
        Assert.Equal([("bulkhead", true)], Once(Plan([Task("bulkhead", "out"), Lift()], new Link("lift", "bulkhead"))));

    [Fact]
    public void What_needs_it_out_and_is_not_before_cannot_be_reached()
    {
        Assert.Equal([("bulkhead", false)], Once(Plan([Task("bulkhead", "out"), Lift()])));
        Assert.Equal([("bulkhead", false)], Once(Plan([Task("bulkhead", "out"), Lift()], new Link("bulkhead", "lift"))));
    }

    [Fact]
    public void What_can_be_done_either_way_or_only_with_it_in_is_not_told()
    {
        Assert.Empty(Once(Plan([Task("wash", "out", "in"), Task("mounts", "in"), Task("sweep"), Lift()])));
        Assert.Empty(Once(Plan([Task("bulkhead", "out")]), "bulkhead"));
        Assert.Empty(Once(Plan([Lift()]), "nothing"));
    }

    [Fact]
    public void What_a_later_change_restores_can_be_reached_again()
    {
        var tasks = new[] { Lift(), Lift("out-again", "in", "out"), Task("bulkhead", "out"), Lift("in-again") };
        Assert.Empty(Once(Plan(tasks, new("out-again", "lift"), new("bulkhead", "out-again"), new("in-again", "bulkhead"))));
        Assert.Equal([("bulkhead", false)], Once(Plan(tasks, new("out-again", "lift"), new("out-again", "bulkhead"))).Where(r => r.Item1 == "bulkhead"));
    }

    [Fact]
    public void On_a_running_car_what_is_past_and_never_comes_again_is_lost()
    {
        var plan = Plan([Lift(), Task("bulkhead", "out"), Task("mounts", "in")], new Link("mounts", "lift"));
        string[] done = ["lift"];

        var lost = Reach.Lost(plan, _ => "in", t => !done.Contains(t), t => !done.Contains(t));

        Assert.Equal(["bulkhead"], lost.Select(l => l.Task));
        Assert.Empty(Reach.Lost(plan, _ => "out", _ => true, _ => true));
    }
}

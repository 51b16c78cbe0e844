using JobBoard.Domain.Plans;
using JobBoard.Shop.Plans;

namespace JobBoard.Shop.Tests.Plans;

public class PlanMergeTests
{
    private static PlanTask Task(string id, int usual = 2) => new() { Id = id, Name = id, Stage = "s", Estimate = new(1, usual, 300), Steps = ["look"] };

    private static Plan Plan(PlanTask[] tasks, params Link[] links) => new() { Id = "p", Name = "p", Stages = [new("s", "S")], Tasks = [.. tasks], Links = [.. links] };

    [Fact]
    public void What_each_changed_alone_is_taken_from_both()
    {
        var origin = Plan([Task("a"), Task("b"), Task("c")], new Link("b", "a"));
        var mine = Plan([Task("a", 5), Task("b"), Task("c"), Task("m")], new Link("b", "a"), new Link("m", "a"));
        var theirs = Plan([Task("a"), Task("b", 9), Task("t")], new Link("t", "b"));

        var merged = PlanMerge.Of(origin, mine, theirs);

        Assert.Empty(merged.Both);
        Assert.Equal([("a", 5), ("b", 9), ("m", 2), ("t", 2)], merged.Plan.Tasks.Select(t => (t.Id, t.Estimate.Usual)));
        Assert.Equal([new Link("m", "a"), new Link("t", "b")], merged.Plan.Links);
    }

    [Fact]
    public void What_both_changed_stays_mine_and_is_told()
    {
        var origin = Plan([Task("a"), Task("b")]);

        var merged = PlanMerge.Of(origin, Plan([Task("a", 5)]), Plan([Task("a", 6), Task("b", 7)]));

        Assert.Equal(["a", "b"], merged.Both);
        Assert.Equal([("a", 5)], merged.Plan.Tasks.Select(t => (t.Id, t.Estimate.Usual)));
    }

    [Fact]
    public void Nothing_changed_by_them_leaves_mine()
    {
        var (origin, mine) = (Plan([Task("a")]), Plan([Task("a", 5), Task("b")]));

        Assert.Equal(PlanReader.Write(mine), PlanReader.Write(PlanMerge.Of(origin, mine, origin).Plan));
        Assert.Equal(PlanReader.Write(mine), PlanReader.Write(PlanMerge.Of(origin, origin, mine).Plan));
    }
}

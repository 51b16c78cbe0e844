using JobBoard.Domain.Plans;
using JobBoard.Domain.Plans.Repairs;
using static JobBoard.Domain.Tests.Plans.SmallJob;

namespace JobBoard.Domain.Tests.Plans;

public class PlanRepairsTests
{
    private static Plan P => SmallJob.Plan;

    public static TheoryData<string> Names => [.. FaultCases.All.Select(c => c.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_repair_takes_its_fault_away(string name)
    {
        var c = FaultCases.All.Single(f => f.Name == name);
        var fault = PlanFaults.Find(c.Plan, c.Shop)[0];

        foreach (var repair in PlanRepairs.For(c.Plan, fault, c.Shop))
        {
            Assert.NotEmpty(repair.Words);
            Assert.DoesNotContain((fault.Code, fault.Words), PlanFaults.Find(repair.Then, c.Shop).Select(f => (f.Code, f.Words)));
        }
    }

    [Theory]
    [InlineData("changes beside each other", "Put “close” after “open”")]
    [InlineData("taken again before", "Let “test again” take “no leak” again")]
    [InlineData("unknown item needed", "Add an item “Hose”")]
    [InlineData("unknown node in a link", "Take the link out")]
    [InlineData("a link twice", "Take out the link: “open” after “weld”")]
    public void There_is_one_that_a_person_would_choose(string name, string words)
    {
        var c = FaultCases.All.Single(f => f.Name == name);

        Assert.Contains(words, PlanRepairs.For(c.Plan, PlanFaults.Find(c.Plan, c.Shop)[0], c.Shop).Select(r => r.Words));
    }

    [Fact]
    public void Most_rules_have_a_repair()
    {
        var with = FaultCases.All.Where(c => !PlanRepairs.For(c.Plan, PlanFaults.Find(c.Plan, c.Shop)[0], c.Shop).IsEmpty).Select(c => c.Code).ToHashSet();

        Assert.Superset(new HashSet<string> { "unknown-id", "id-twice", "estimate", "circle", "lead", "hold-link", "change-order", "change-chain", "left-off", "never-changed", "need-order", "lapse-order", "hazard-unknown", "place" }, with);
    }

    [Fact]
    public void A_name_one_letter_off_is_the_nearest_one()
    {
        var plan = P.With("test", t => t with { Needs = [new Need("lin", ["closed"])] });

        var repairs = PlanRepairs.For(plan, PlanFaults.Find(plan, Shop)[0], Shop);

        Assert.Equal("line", repairs[0].Then.Tasks.Single(t => t.Id == "test").Needs[0].Item);
        Assert.Equal(2, repairs.Length);
    }
}

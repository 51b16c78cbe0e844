using System.Text.RegularExpressions;
using JobBoard.Domain.Plans;
using static JobBoard.Domain.Tests.Plans.SmallJob;

namespace JobBoard.Domain.Tests.Plans;

public partial class PlanFaultsTests
{
    public static TheoryData<string> Names => [.. FaultCases.All.Select(c => c.Name)];

    [Fact]
    public void None_when_the_plan_is_sound() => Assert.Empty(PlanFaults.Find(SmallJob.Plan, Shop));

    [Theory]
    [MemberData(nameof(Names))]
    public void Exactly_one_when_one_rule_is_broken(string name)
    {
        var c = Case(name);

        var fault = Assert.Single(PlanFaults.Find(c.Plan, c.Shop));

        Assert.Equal((c.Code, c.At), (fault.Code, fault.At));
        Assert.NotEmpty(fault.Words);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void None_when_its_rule_is_switched_off(string name)
    {
        var c = Case(name);

        Assert.Empty(PlanFaults.Find(c.Plan, c.Shop, c.Code).Where(f => c.Code != "circle"));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void None_when_the_repair_is_made(string name)
    {
        var c = Case(name);
        var fault = PlanFaults.Find(c.Plan, c.Shop)[0];
        var repaired = Link(c.Plan, fault.Repair) ?? c.Repaired;

        if (repaired is not null)
            Assert.Empty(PlanFaults.Find(repaired, c.Shop));
        else
            Assert.False(fault.Repair?.StartsWith("add a link: “", StringComparison.Ordinal) ?? false);
    }

    [Fact]
    public void Every_rule_has_a_plan_that_breaks_it() =>
        Assert.Equal(PlanFaults.Rules.Select(r => r.Code).Order(), FaultCases.All.Select(c => c.Code).Distinct().Order());

    [Fact]
    public void Repair_says_which_link_to_add() =>
        Assert.Equal("add a link: “close” after “open”", PlanFaults.Find(Case("changes beside each other").Plan, Shop)[0].Repair);

    [Fact]
    public void Repair_says_who_could_take_it_again() =>
        Assert.Equal("let “test again” take “no leak” again", PlanFaults.Find(Case("taken again before").Plan, Shop)[0].Repair);

    [Fact]
    public void All_found_when_several_rules_are_broken()
    {
        var plan = SmallJob.Plan
            .With("weld", t => t with { Estimate = new Estimate(0, 0, 0), Stage = "s9" })
            .With("test", t => t with { Needs = [new Need("line", ["open"])] })
            .With("move", t => t with { Place = "paint booth" });

        Assert.Equal(["unknown-id", "estimate", "need-unmet", "place"], PlanFaults.Find(plan, Shop).Select(f => f.Code));
    }

    [Fact]
    public void Each_circle_told_when_there_are_two()
    {
        var plan = SmallJob.Plan.Linked(new Link("weld", "open"), new Link("move", "handover"));

        Assert.Equal(["circle", "circle"], PlanFaults.Find(plan, Shop).Select(f => f.Code));
    }

    [Fact]
    public void Lapse_allowed_when_the_disturber_takes_it_again_itself() =>
        Assert.Empty(PlanFaults.Find(
            SmallJob.Plan.Added(SmallJob.Task("wipe") with { Touches = [Tight], TakesAgain = ["test", "no-leak", "again"] }, "again"), Shop));

    [Fact]
    public void Hazard_of_its_own_item_is_no_fault() =>
        Assert.Empty(PlanFaults.Find(
            SmallJob.Plan.With("close", t => t with { Hazards = [new TaskHazard("hot-work")] }), Shop));

    [Fact]
    public void Only_added_faults_told_when_a_running_plan_changes()
    {
        var before = SmallJob.Plan.With("move", t => t with { Place = "paint booth" });
        var after = (before with { Parts = [] })
            .With("close", t => t with { Parts = [] })
            .With("weld", t => t with { Crew = [new CrewNeed("lead", "welding")] });

        Assert.Equal(["crew"], PlanFaults.Added(before, after, Shop).Select(f => f.Code));
        Assert.Empty(PlanFaults.Added(before, before, Shop));
    }

    [Theory]
    [InlineData(3, true)] // two technicians and the apprentice beside one of them, or anybody else
    [InlineData(5, true)]
    [InlineData(6, false)]
    public void Apprentice_fills_a_place_beside_their_person(int people, bool fits)
    {
        var plan = SmallJob.Plan.With("weld", t => t with { Crew = [new CrewNeed("lead"), new CrewNeed("hand", Count: people - 1)] });

        Assert.Equal(fits, PlanFaults.Find(plan, Shop).IsEmpty);
    }

    [Fact]
    public void Apprentice_does_not_count_when_their_person_has_left()
    {
        var plan = SmallJob.Plan.With("weld", t => t with { Crew = [new CrewNeed("lead"), new CrewNeed("hand", Count: 3)] });
        var shop = Shop with { People = [.. Shop.People.Where(p => p.Id != "olive")] };

        Assert.Empty(PlanFaults.Find(plan, shop));
        Assert.Contains("crew", PlanFaults.Find(plan, shop.With("tom", p => p with { Left = true })).Select(f => f.Code));
        Assert.Contains("crew", PlanFaults.Find(plan, shop.With("andy", p => p with { WorksUnder = "nobody" })).Select(f => f.Code));
    }

    [Fact]
    public void Found_in_seconds_when_the_plan_is_large()
    {
        var tasks = Enumerable.Range(0, 1_980).Select(n => SmallJob.Task($"t{n}") with { Needs = [new Need("line", ["closed"])], StandsOn = [Tight], Hazards = [new TaskHazard("hot-work")] }).ToArray();
        var plan = SmallJob.Plan with
        {
            Tasks = [.. SmallJob.Plan.Tasks, .. tasks],
            Links = [.. SmallJob.Plan.Links, .. tasks.Select((t, n) => new Link(t.Id, n == 0 ? "again" : $"t{n - 1}")), new Link("handover", "t1979")],
        };
        var clock = System.Diagnostics.Stopwatch.StartNew();

        Assert.Empty(PlanFaults.Find(plan, Shop));
        TestContext.Current.TestOutputHelper?.WriteLine($"{clock.Elapsed.TotalMilliseconds:0} ms");
        Assert.InRange(clock.Elapsed.TotalSeconds, 0, 10);
    }

    private static FaultCase Case(string name) => FaultCases.All.Single(c => c.Name == name);

    /// <summary>The plan with the link a repair asks for, where it asks for one between two named nodes.</summary>
    private static Plan? Link(Plan plan, string? repair)
    {
        var match = AddLink().Match(repair ?? "");
        return match.Success ? plan.Linked(new Link(Id(plan, match.Groups[1].Value), Id(plan, match.Groups[2].Value))) : null;
    }

    private static string Id(Plan plan, string name) =>
        plan.Tasks.Select(t => (t.Id, t.Name)).Concat(plan.Holds.Select(h => (h.Id, h.Name))).First(n => n.Name == name).Id;

    [GeneratedRegex("^add a link: “(.*)” after “(.*)”$")]
    private static partial Regex AddLink();
}

using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using static JobBoard.Domain.Tests.Deciding.TestShop;

namespace JobBoard.Domain.Tests.Deciding;

public class PlanRevisionTests
{
    private static readonly Plan Two = Plan(Task("strip"), Task("fit")) with { Links = [new("fit", "strip")] };

    private static RevisePlan Revise(TestShop shop, Plan plan) => new(plan, shop.State.Cars["heron"].PlanAt, "another engine") { Car = "heron" };

    private static Plan Now(TestShop shop) => shop.State.Cars["heron"].Plan;

    [Fact]
    public void The_whole_plan_is_put_in_place_and_what_was_begun_goes_on()
    {
        var shop = Open().With("heron", Two);
        shop.DoTask("heron", "strip", "sol");
        var plan = Two with
        {
            Items = [new() { Id = "cover", Name = "Cover", Conditions = ["on", "off"], AtTakeIn = "on", AsForTheRoad = "on" }],
            Parts = [new("clip", "Clip")],
            Tasks = [Two.Tasks[0], Two.Tasks[1] with { Estimate = new(10, 20, 30) }, Task("look")],
            Links = [.. Two.Links, new("look", "fit")],
        };

        var fact = Assert.IsType<PlanRevised>(Assert.Single(shop.Does("foreman", Revise(shop, plan))));

        Assert.Equal(["look"], fact.Differs.NodesAdded);
        Assert.Equal(["fit"], fact.Differs.NodesAltered);
        var car = shop.State.Cars["heron"];
        Assert.Equal(Work.WorkStatus.SignedOff, car.Tasks["strip"].Status);
        Assert.Equal(["fit", "look", "strip"], car.Tasks.Keys);
        Assert.Equal("on", car.Items["cover"].Condition);
        Assert.True(car.Parts.ContainsKey("clip"));
        Assert.Equal(shop.State.Seq, car.PlanAt);
    }

    [Fact]
    public void Work_that_was_begun_stays_as_it_is()
    {
        var shop = Open().With("heron", Two);
        shop.Does("sol", shop.Start("heron", "strip", "sol"));

        var altered = shop.Reasons("foreman", Revise(shop, Two with { Tasks = Two.Tasks.SetItem(0, Task("strip", 90)) }));
        var out_ = shop.Reasons("foreman", Revise(shop, Two with { Tasks = Two.Tasks.RemoveAt(0), Links = [] }));

        Assert.Equal(("strip", "strip was begun: it stays as it is."), (Assert.Single(altered).About, altered[0].Words));
        Assert.Equal(["sol"], altered[0].Who);
        Assert.Equal("strip was begun: it stays in the plan.", Assert.Single(out_).Words);
    }

    [Fact]
    public void A_task_that_only_has_a_reading_was_begun()
    {
        var plan = Plan(Task("strip") with { Readings = [new() { Id = "gap", Name = "gap", Unit = "mm", Min = 1 }] });
        var shop = Open().With("heron", plan);
        shop.Does("sol", new LogReading("gap", "2", "mm") { Car = "heron", Task = "strip" });

        Assert.Equal([RuleBook.Ids.TaskState], shop.Refused("foreman", Revise(shop, plan with { Tasks = [Task("strip")] })));
    }

    [Fact]
    public void A_change_made_since_is_told_and_not_written_over()
    {
        var shop = Open().With("heron", Two);
        var looked = Revise(shop, Two with { Tasks = Two.Tasks.Add(Task("look")) });
        shop.Does("owner", new ChangePlan("a bracket is missing") { Car = "heron", Add = [Task("bracket")], AddLinks = [new("fit", "bracket")] });

        var reason = Assert.Single(shop.Reasons("foreman", looked));

        Assert.Equal(RuleBook.Ids.Stale, reason.Rule);
        Assert.Equal("The plan was changed since you looked, by {owner} (a bracket is missing): “bracket” is added. “fit” comes after “bracket”.", reason.Words);
        Assert.Contains(Now(shop).Tasks, t => t.Id == "bracket");
    }

    [Fact]
    public void A_change_of_ones_own_elsewhere_is_no_more_written_over()
    {
        var shop = Open().With("heron", Two);
        var looked = Revise(shop, Two with { Tasks = Two.Tasks.Add(Task("look")) });
        shop.Does("foreman", new ChangePlan("a bracket is missing") { Car = "heron", Add = [Task("bracket")] });

        Assert.Equal([RuleBook.Ids.Stale], shop.Refused("foreman", looked));
    }

    [Fact]
    public void It_is_refused_whole_for_each_fault_it_adds()
    {
        var shop = Open().With("heron", Two);
        var plan = Two with { Tasks = Two.Tasks.Add(Task("look") with { Needs = [new("hose", ["on"])] }).Add(Task("tidy") with { Estimate = new(9, 5, 1) }) };

        var reasons = shop.Reasons("foreman", Revise(shop, plan));

        Assert.Equal(["tasks[2].needs[0].item", "tasks[3].estimate"], reasons.Select(r => r.About!).Order());
        Assert.Equal(2, Now(shop).Tasks.Length);
    }

    [Fact]
    public void Work_in_hand_that_would_have_to_wait_gets_a_stop()
    {
        var shop = Open().With("heron", Two with { Links = [] });
        shop.Does("sol", shop.Start("heron", "fit", "sol"));

        var facts = shop.Does("foreman", Revise(shop, Two));

        Assert.Equal(StopScope.Task, Assert.Single(facts.OfType<StopRaised>()).Scope);
    }

    [Fact]
    public void A_released_hold_and_a_worked_on_item_stay()
    {
        var plan = Two with
        {
            Items = [new() { Id = "cover", Name = "Cover", Conditions = ["on", "off"], AtTakeIn = "off", AsForTheRoad = "on" }],
            Tasks = [Task("strip") with { Changes = [new("cover", "off", "on")] }, Task("fit")],
            Holds = [new() { Id = "look", Name = "Look", Stage = "s" }],
            Links = [new("look", "strip"), new("fit", "look")],
        };
        var shop = Open().With("heron", plan);
        shop.DoTask("heron", "strip", "sol");
        shop.Does("foreman", new ReleaseHold("look", "seen", "looked at it") { Car = "heron" });

        Assert.Contains("Look was released: it stays in the plan.", shop.Reasons("foreman", Revise(shop, plan with { Holds = [], Links = [new("fit", "strip")] })).Select(r => r.Words));
        Assert.Contains("Cover was worked on: it stays in the plan.", shop.Reasons("foreman", Revise(shop, plan with { Items = [] })).Select(r => r.Words));
        Assert.Contains("Cover is on now: that stays one of its conditions.", shop.Reasons("foreman", Revise(shop, plan with { Items = [plan.Items[0] with { Conditions = ["off", "fitted"], AsForTheRoad = "fitted" }] })).Select(r => r.Words));
    }

    [Fact]
    public void A_hold_is_not_put_before_what_has_passed()
    {
        var shop = Open().With("heron", Two);
        shop.DoTask("heron", "strip", "sol");
        var plan = Two with { Tasks = Two.Tasks.Add(Task("begin")), Holds = [new() { Id = "look", Name = "Look", Stage = "s" }], Links = [.. Two.Links, new("look", "begin"), new("strip", "look")] };

        Assert.Equal("strip has passed already: Look is not released and cannot be put before it. Put it before what is still to do.", Assert.Single(shop.Reasons("foreman", Revise(shop, plan))).Words);
        shop.Does("foreman", Revise(shop, plan with { Links = [.. Two.Links, new("look", "strip"), new("fit", "look")], Tasks = Two.Tasks }));
        Assert.Equal([RuleBook.Ids.TaskState], shop.Refused("foreman", new ChangePlan("late") { Car = "heron", AddLinks = [new("strip", "look")] }).Except([RuleBook.Ids.PlanFault]));
    }

    [Fact]
    public void A_reason_and_a_change_are_asked_for_and_a_foreman()
    {
        var shop = Open().With("heron", Two);

        Assert.Equal(["why", "plan"], shop.Reasons("foreman", new RevisePlan(Two, shop.State.Cars["heron"].PlanAt, " ") { Car = "heron" }).Select(r => r.About!));
        Assert.Equal([RuleBook.Ids.Position], shop.Refused("sol", Revise(shop, Two with { Name = "other" })));
    }

    [Fact]
    public void A_new_estimate_counts_before_one_that_was_revised()
    {
        var shop = Open().With("heron", Two);
        shop.Does("sol", new ReviseEstimate(new(5, 6, 7), "easy") { Car = "heron", Task = "fit" });
        shop.Does("foreman", Revise(shop, Two with { Tasks = Two.Tasks.SetItem(1, Two.Tasks[1] with { Name = "Fit it" }) }));
        Assert.NotNull(shop.State.Cars["heron"].Tasks["fit"].Revised);

        shop.Does("foreman", Revise(shop, Now(shop) with { Tasks = Two.Tasks.SetItem(1, Task("fit", 90)) }));

        Assert.Null(shop.State.Cars["heron"].Tasks["fit"].Revised);
    }

    [Fact]
    public void A_template_is_kept_by_the_id_of_its_plan()
    {
        var shop = Open();
        shop.Does("foreman", new SaveTemplate(Two with { Name = "Small job" }));
        shop.Does("foreman", new SaveTemplate(Two with { Name = "Small job, gone over" }));

        Assert.Equal("Small job, gone over", Assert.Single(shop.State.Templates).Value.Name);
        Assert.Equal([RuleBook.Ids.Position], shop.Refused("sol", new SaveTemplate(Two)));
        Assert.Equal(["plan.tasks[2]"], shop.Reasons("foreman", new SaveTemplate(Two with { Tasks = Two.Tasks.Add(Task("fit")) })).Select(r => r.About!));
    }
}

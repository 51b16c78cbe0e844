using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using static JobBoard.Domain.Tests.Deciding.TestShop;

namespace JobBoard.Domain.Tests.Deciding;

public class StartingTests
{
    [Fact]
    public void Second_of_two_starters_is_told_by_whom()
    {
        var shop = Open().With("heron", Plan(Task("a")));
        shop.Does("inga", shop.Start("heron", "a", "inga"));

        var reason = shop.Reasons("sol", shop.Start("heron", "a", "sol")).Single(r => r.Rule == RuleBook.Ids.TaskState);

        Assert.Contains("Inga", shop.State.Say(reason.Words), StringComparison.Ordinal);
    }

    [Fact]
    public void Everything_it_waits_on_is_listed_at_once()
    {
        var plan = Plan(
            Task("a"),
            Task("b") with { Needs = [new("battery", ["isolated"])], Parts = ["pump"], Crew = [new("lead", "fuel")], Place = "fuel corner" }) with
        {
            Items = [new() { Id = "battery", Name = "Battery", Conditions = ["live", "isolated"], AtTakeIn = "live", AsForTheRoad = "live" }],
            Parts = [new("pump", "Pump")],
            Holds = [new() { Id = "h", Name = "Hold", Stage = "s" }],
            Links = [new("h", "a"), new("b", "h"), new("b", "a", LinkKind.StartStart)],
        };
        var shop = Open();
        shop.Rules = RuleBook.Full.Without(RuleBook.Ids.PlanFault);
        shop.With("heron", plan);
        shop.Rules = RuleBook.Full;
        shop.Does("tove", new RaiseStop(StopScope.Car, "wait") { Car = "heron" });

        var rules = shop.Refused("sol", shop.Start("heron", "b", "sol"));

        Assert.Equal(
            new[] { RuleBook.Ids.Condition, RuleBook.Ids.HoldPoint, RuleBook.Ids.Link, RuleBook.Ids.PartRight, RuleBook.Ids.People, RuleBook.Ids.Place, RuleBook.Ids.Stop }.Order(),
            rules.Order());
    }

    [Fact]
    public void Changed_meanwhile_is_told_with_all_it_waits_on()
    {
        var plan = Plan(Task("a"), Task("b") with { Crew = [new("lead", "fuel")] }) with { Links = [new("b", "a")] };
        var shop = Open().With("heron", plan);
        var seen = shop.State.Seq;
        shop.Does("foreman", new ReviseEstimate(new(30, 40, 50), "more to it") { Car = "heron", Task = "b" });

        var refused = Assert.IsType<Decision.Refused>(shop.Ask("sol", shop.Start("heron", "b", "sol"), seen));

        Assert.Equal(
            new[] { RuleBook.Ids.Link, RuleBook.Ids.People, RuleBook.Ids.Stale }.Order(),
            refused.Reasons.Select(r => r.Rule).Distinct().Order());
    }

    [Fact]
    public void Item_worked_on_at_the_bench_endangers_the_bench()
    {
        var plan = Plan(Task("charge") with { Place = "bench", Changes = [new("charger", "off", "off") { Through = ["on"] }] }) with
        {
            Items = [new() { Id = "charger", Name = "Charger", Conditions = ["off", "on"], AtTakeIn = "off", AsForTheRoad = "off", Dangers = [new("on", "hot-work")] }],
        };
        var shop = Open().With("heron", plan);

        shop.Does("inga", shop.Start("heron", "charge", "inga"));

        Assert.Equal("bench", Assert.Single(Dangers.Standing(shop.State), d => d.Hazard == "hot-work").Place);
    }

    [Fact]
    public void Reason_to_keep_apart_ends_in_one_full_stop()
    {
        var shop = Open();
        shop.Does("owner", new SetKeepApart(new() { Id = "hot-hot", A = new("hot-work"), B = new("under-the-car"), Scope = Scope.Car, Reason = "Sparks fall." }));
        shop.With("heron", Plan(Task("weld") with { Hazards = [new("hot-work")] }, Task("look") with { Hazards = [new("under-the-car")] }));
        shop.Does("inga", shop.Start("heron", "weld", "inga"));

        var reason = Assert.Single(shop.Reasons("sol", shop.Start("heron", "look", "sol")));

        Assert.EndsWith(": keep apart. Sparks fall.", reason.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Elapsed_lag_runs_by_the_clock_from_end_of_work()
    {
        var plan = Plan(Task("paint"), Task("fit")) with { Links = [new("fit", "paint", LinkKind.FinishStart, 60, LagClock.Elapsed)] };
        var shop = Open().With("heron", plan);
        shop.DoTask("heron", "paint", "inga");
        shop.Later(59);

        var waiting = shop.Reasons("inga", shop.Start("heron", "fit", "inga")).Single();
        shop.Later(1);
        shop.Does("inga", shop.Start("heron", "fit", "inga"));

        Assert.Equal(RuleBook.Ids.Lag, waiting.Rule);
        Assert.Equal(shop.Now, waiting.When);
    }

    [Fact]
    public void Lead_is_met_when_no_more_than_it_remains()
    {
        var plan = Plan(Task("a", 60), Task("b")) with { Links = [new("b", "a", LinkKind.FinishStart, -20)] };
        var shop = Open().With("heron", plan);
        shop.Does("inga", shop.Start("heron", "a", "inga"));
        shop.Later(39);
        Assert.Equal([RuleBook.Ids.Link], shop.Refused("sol", shop.Start("heron", "b", "sol")));

        shop.Later(1);

        shop.Does("sol", shop.Start("heron", "b", "sol"));
    }

    [Fact]
    public void Apprentice_works_only_beside_their_person()
    {
        var shop = Open().With("heron", Plan(Task("a")));

        Assert.Contains(RuleBook.Ids.ApprenticeBeside, shop.Refused("mirek", shop.Start("heron", "a", "mirek")));

        shop.Does("inga", shop.Start("heron", "a", "inga", "mirek:hand"));
    }

    [Fact]
    public void Load_in_the_sweep_keeps_people_from_under()
    {
        var lift = Task("lift") with { Gear = [new("hoist", 500)], Changes = [new("engine", "out", "in") { Through = ["hanging"] }], HowLeft = ["hanging"] };
        var under = Task("under") with { Hazards = [new("under-the-car")] };
        var engine = new Item
        {
            Id = "engine",
            Name = "Engine",
            Conditions = ["out", "hanging", "in"],
            AtTakeIn = "out",
            AsForTheRoad = "in",
            Dangers = [new("hanging", "suspended-load")],
        };
        var shop = Open().With("heron", Plan(lift, under) with { Items = [engine] });
        shop.Does("inga", shop.Start("heron", "lift", "inga"));

        Assert.Equal([RuleBook.Ids.KeepApart], shop.Refused("sol", shop.Start("heron", "under", "sol")));

        shop.Does("inga", new LeavePartDone { Car = "heron", Task = "lift", How = "hanging", Items = ImmutableSortedDictionary<string, string>.Empty.Add("engine", "hanging") });
        Assert.Equal([RuleBook.Ids.KeepApart], shop.Refused("sol", shop.Start("heron", "under", "sol")));
        Assert.Equal(["hoist"], shop.State.Cars["heron"].HangsIn["engine"]);
    }

    [Fact]
    public void An_item_in_work_meets_nobody_elses_need()
    {
        var hose = new Item { Id = "hose", Name = "Hose", Conditions = ["fitted", "off"], AtTakeIn = "fitted", AsForTheRoad = "off" };
        var plan = Plan(Task("a") with { Changes = [new("hose", "fitted", "off")] }, Task("b") with { Needs = [new("hose", ["fitted"])] }) with { Items = [hose] };
        var shop = Open();
        shop.Rules = RuleBook.Full.Without(RuleBook.Ids.PlanFault);
        shop.With("heron", plan);
        shop.Does("inga", shop.Start("heron", "a", "inga"));
        Assert.Equal([RuleBook.Ids.InWork], shop.Refused("sol", shop.Start("heron", "b", "sol")));

        shop.Rules = shop.Rules.Without(RuleBook.Ids.InWork);

        shop.Does("sol", shop.Start("heron", "b", "sol"));
    }
}

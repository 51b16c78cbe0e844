using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using static JobBoard.Domain.Tests.Deciding.TestShop;

namespace JobBoard.Domain.Tests.Deciding;

/// <summary>Gear stays with a load that hangs in it, whoever works, signs off or goes home.</summary>
public class LoadTests
{
    private static readonly Item Engine = new()
    {
        Id = "engine",
        Name = "Engine",
        Conditions = ["out", "hanging", "in"],
        AtTakeIn = "out",
        AsForTheRoad = "in",
        Dangers = [new("hanging", "suspended-load")],
    };

    private static readonly Plan Lift = Plan(
        Task("raise") with { Gear = [new("hoist", 500)], Changes = [new("engine", "out", "hanging")] },
        Task("swing-over") with { Gear = [new("hoist", 500)], Needs = [new("engine", ["hanging"])] },
        Task("let-go") with { Gear = [new("hoist", 500)], Changes = [new("engine", "hanging", "in")] },
        Task("under") with { Hazards = [new("under-the-car")] }) with
    {
        Items = [Engine],
        Links = [new("swing-over", "raise"), new("let-go", "swing-over")],
    };

    [Fact]
    public void Hoist_stays_taken_from_raised_to_let_go()
    {
        var shop = TwoCars();

        shop.DoTask("heron", "raise", "inga");
        Assert.Contains("Engine of heron hangs in it", Assert.Single(shop.Reasons("sol", shop.Start("plover", "raise", "sol"))).Words);

        shop.DoTask("heron", "swing-over", "inga");
        Assert.Equal([RuleBook.Ids.Gear], shop.Refused("sol", shop.Start("plover", "raise", "sol")));

        shop.DoTask("heron", "let-go", "inga");
        Assert.Empty(shop.State.Cars["heron"].HangsIn);
        shop.Does("sol", shop.Start("plover", "raise", "sol"));
    }

    [Fact]
    public void Work_with_the_load_takes_the_gear_it_hangs_in()
    {
        var shop = TwoCars();
        shop.Does("owner", new SetGear(new() { Id = "a-lighter-hoist", Name = "Lighter hoist", Kind = "hoist", RatedKg = 600, Sweep = new(0, 0, 9, 8) }));
        shop.Does("owner", new SetGear(shop.State.Gear["a-lighter-hoist"] with { OutOfUse = "at the inspector's" }));
        shop.DoTask("heron", "raise", "inga");
        shop.Does("owner", new SetGear(shop.State.Gear["a-lighter-hoist"] with { OutOfUse = null }));

        var started = shop.Does("inga", shop.Start("heron", "swing-over", "inga")).OfType<TaskStarted>().Single();

        Assert.Equal(["hoist"], started.Gear);
    }

    [Fact]
    public void No_other_hoist_will_do_for_a_hanging_load()
    {
        var shop = TwoCars();
        shop.DoTask("heron", "raise", "inga");
        shop.Does("owner", new SetGear(new() { Id = "second", Name = "Second hoist", Kind = "hoist", RatedKg = 1000, Sweep = new(0, 0, 9, 8) }));
        shop.Does("owner", new SetGear(shop.State.Gear["hoist"] with { OutOfUse = "hook bent" }));

        var reason = Assert.Single(shop.Reasons("inga", shop.Start("heron", "swing-over", "inga")));

        Assert.Equal(RuleBook.Ids.Gear, reason.Rule);
        Assert.Contains("hook bent", reason.Words);
        shop.Does("sol", shop.Start("plover", "raise", "sol"));
    }

    [Fact]
    public void Load_set_down_outside_a_task_frees_its_gear()
    {
        var shop = TwoCars();
        shop.DoTask("heron", "raise", "inga");

        shop.Does("foreman", new ChangeItem("engine", "out", "set down on blocks for the night") { Car = "heron" });

        Assert.Empty(shop.State.Cars["heron"].HangsIn);
        shop.Does("sol", shop.Start("plover", "raise", "sol"));
    }

    [Fact]
    public void Leaving_a_lift_asks_where_the_engine_is()
    {
        var shop = TwoCars();
        shop.Does("inga", shop.Start("heron", "raise", "inga"));

        Assert.Equal([RuleBook.Ids.Input], shop.Refused("inga", new LeavePartDone { Car = "heron", Task = "raise", How = "for lunch" }));
        Assert.Equal([RuleBook.Ids.Input], shop.Refused("inga", new KnockOff()));

        shop.Does("inga", new LeavePartDone { Car = "heron", Task = "raise", How = "on the floor again", Items = Is("engine", "out") });
        Assert.Empty(shop.State.Cars["heron"].HangsIn);
        shop.Does("inga", shop.Start("heron", "raise", "inga"));
        shop.Does("inga", new LeavePartDone { Car = "heron", Task = "raise", How = "up, roped off", Items = Is("engine", "hanging") });
        Assert.Equal(["hoist"], shop.State.Cars["heron"].HangsIn["engine"]);
        Assert.Equal([RuleBook.Ids.KeepApart], shop.Refused("sol", shop.Start("heron", "under", "sol")));
    }

    [Fact]
    public void Whoever_goes_without_a_word_leaves_it_hanging()
    {
        var shop = TwoCars();
        shop.Does("inga", shop.Start("heron", "raise", "inga"));

        shop.Does("foreman", new GoOut("inga"));

        Assert.Equal("hanging", shop.State.Cars["heron"].Items["engine"].Condition);
        Assert.Contains("Engine taken to be hanging", shop.State.Cars["heron"].Tasks["raise"].Left!.Words);
        Assert.Equal(["hoist"], shop.State.Cars["heron"].HangsIn["engine"]);
    }

    [Fact]
    public void Made_safe_asks_where_the_engine_is()
    {
        var shop = TwoCars();
        shop.Does("inga", shop.Start("heron", "raise", "inga"));
        var stop = shop.Does("sol", new RaiseStop(StopScope.Car, "rope frays") { Car = "heron" }).OfType<StopRaised>().Single().Stop;
        var danger = Assert.Single(Dangers.Standing(shop.State));

        Assert.Equal([RuleBook.Ids.Input], shop.Refused("inga", new MakeSafe(stop, "roped off") { Answers = [new(danger.Key, false)] }));
        Assert.Equal([RuleBook.Ids.Input], shop.Refused("inga", new MakeSafe(stop, "down") { Answers = [new(danger.Key, true)], Items = Is("heron/engine", "hanging") }));

        shop.Does("inga", new MakeSafe(stop, "roped off") { Answers = [new(danger.Key, false)], Items = Is("heron/engine", "hanging") });
        Assert.Equal(["hoist"], shop.State.Cars["heron"].HangsIn["engine"]);
    }

    private static ImmutableSortedDictionary<string, string> Is(string item, string condition) => ImmutableSortedDictionary<string, string>.Empty.Add(item, condition);

    /// <summary>One hoist for two bays, and the same lift to be done in both.</summary>
    private static TestShop TwoCars()
    {
        var shop = Open();
        shop.Does("owner", new SetGear(shop.State.Gear["hoist"] with { Sweep = new(0, 0, 9, 8) }));
        return shop.With("heron", Lift).With("plover", Lift, "bay-2");
    }
}

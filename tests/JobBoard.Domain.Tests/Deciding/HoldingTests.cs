using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using static JobBoard.Domain.Tests.Deciding.TestShop;

namespace JobBoard.Domain.Tests.Deciding;

public class HoldingTests
{
    private static readonly HoldPoint Hold = new() { Id = "hold", Name = "Before the lift", Stage = "s" };

    private static readonly Item Hose = new() { Id = "hose", Name = "Hose", Conditions = ["fitted", "off"], AtTakeIn = "fitted", AsForTheRoad = "fitted", Aspects = ["tight"] };

    private static ReleaseHold Release => new("hold", "seen", "looked at") { Car = "heron" };

    private static TestShop Held() =>
        Open().With("heron", Plan(Task("a"), Task("b"), Task("c")) with { Holds = [Hold], Links = [new("hold", "a"), new("b", "hold"), new("c", "b")] });

    /// <summary>A leak test that stands on the hose being tight, a hold after it, and work after that.</summary>
    private static TestShop Tested()
    {
        var test = Task("test") with { StandsOn = [new("hose", "tight")] };
        var plan = Plan(test, Task("run")) with { Items = [Hose], Holds = [Hold with { StandsOn = [new("hose", "tight")] }], Links = [new("hold", "test"), new("run", "hold")] };
        var shop = Open().With("heron", plan);
        shop.DoTask("heron", "test", "inga");
        shop.Later(1);
        shop.Does("foreman", Release);
        shop.Later(1);
        return shop;
    }

    [Fact]
    public void Hold_is_released_only_when_all_before_it_is_done()
    {
        var shop = Held();
        Assert.Equal([RuleBook.Ids.Link], shop.Refused("foreman", Release));
        shop.DoTask("heron", "a", "inga");
        Assert.Equal([RuleBook.Ids.HoldPoint], shop.Refused("inga", shop.Start("heron", "b", "inga")));

        shop.Does("foreman", Release);

        shop.Does("inga", shop.Start("heron", "b", "inga"));
    }

    [Fact]
    public void Nobody_releases_their_own_work()
    {
        var shop = Held();
        shop.DoTask("heron", "a", "foreman");

        Assert.Equal([RuleBook.Ids.OwnRelease], shop.Refused("foreman", Release));
        Assert.Equal([RuleBook.Ids.OwnRelease], shop.Refused("sol", Release));

        shop.Does("owner", Release);
    }

    [Fact]
    public void One_task_let_through_does_not_open_the_hold_for_others()
    {
        var shop = Held();
        shop.DoTask("heron", "a", "inga");
        shop.Does("foreman", new LetThrough("hold", "b", "needed to find the fault") { Car = "heron" });
        shop.DoTask("heron", "b", "inga");

        Assert.Equal([RuleBook.Ids.HoldPoint], shop.Refused("inga", shop.Start("heron", "c", "inga")));
    }

    [Fact]
    public void A_hose_moved_makes_test_and_release_lapse()
    {
        var shop = Tested();

        var facts = shop.Does("sol", new ChangeItem("hose", "fitted", "moved for access") { Car = "heron" });

        Assert.Equal(["test", "hold"], facts.OfType<EvidenceLapsed>().Select(f => f.Id));
        Assert.Equal([RuleBook.Ids.Lapsed], shop.Refused("inga", shop.Start("heron", "run", "inga")));
        shop.Later(1);
        shop.DoTask("heron", "test", "inga");
        Assert.Equal([RuleBook.Ids.Lapsed], shop.Refused("inga", shop.Start("heron", "run", "inga")));
        shop.Later(1);
        shop.Does("foreman", Release);
        shop.Does("inga", shop.Start("heron", "run", "inga"));
    }

    [Fact]
    public void What_work_in_hand_rests_on_taken_away_raises_a_stop()
    {
        var shop = Tested();
        shop.Does("inga", shop.Start("heron", "run", "inga"));
        shop.Later(1);

        var facts = shop.Does("sol", new ChangeItem("hose", "fitted", "moved for access") { Car = "heron" });

        Assert.All(facts.OfType<StopRaised>(), s => Assert.Equal(("run", true), (s.Task, s.Told.SequenceEqual(["inga"]))));
        Assert.NotEmpty(facts.OfType<StopRaised>());
    }

    [Fact]
    public void Not_what_I_meant_restores_what_it_lapsed()
    {
        var shop = Tested();
        shop.Does("sol", new ChangeItem("hose", "fitted", "wrong car") { Car = "heron" });
        var command = shop.LastCommand;

        shop.Does("sol", new TakeBack(command));

        shop.Does("inga", shop.Start("heron", "run", "inga"));
    }

    [Fact]
    public void Taking_back_is_refused_after_a_minute_and_for_others()
    {
        var shop = Tested();
        shop.Does("sol", new ChangeItem("hose", "fitted", "moved") { Car = "heron" });
        var command = shop.LastCommand;

        Assert.Equal([RuleBook.Ids.TakeBack], shop.Refused("inga", new TakeBack(command)));
        shop.Later(2);
        Assert.Equal([RuleBook.Ids.Input], shop.Refused("sol", new TakeBack(command)));
    }

    [Fact]
    public void Taking_back_is_refused_when_work_was_begun_on_it()
    {
        var shop = Open().With("heron", Plan(Task("a"), Task("b")) with { Links = [new("b", "a")] });
        shop.Does("inga", shop.Start("heron", "a", "inga"));
        shop.Does("inga", new SignOffTask { Car = "heron", Task = "a" });
        var command = shop.LastCommand;
        shop.Does("sol", shop.Start("heron", "b", "sol"));

        Assert.Equal([RuleBook.Ids.TakeBack], shop.Refused("inga", new TakeBack(command)));
    }

    /// <summary>What was undone was out of reach of what was disturbed since: back again it would stand although it has lapsed.</summary>
    [Fact]
    public void Undone_is_not_taken_back_once_its_evidence_was_disturbed()
    {
        var shop = Tested();
        shop.Does("foreman", new MarkUndone("leaks") { Car = "heron", Task = "test" });
        var undone = shop.LastCommand;
        shop.Does("sol", new ChangeItem("hose", "fitted", "moved for access") { Car = "heron" });

        Assert.Equal([RuleBook.Ids.TakeBack], shop.Refused("foreman", new TakeBack(undone)));
    }

    [Fact]
    public void After_undone_everything_later_waits_on_again_or_not()
    {
        var plan = Plan(Task("a"), Task("b"), Task("c")) with { Links = [new("b", "a"), new("c", "b")] };
        var shop = Open().With("heron", plan);
        shop.DoTask("heron", "a", "inga");
        shop.DoTask("heron", "b", "inga");

        shop.Does("inga", new MarkUndone("wrong gasket") { Car = "heron", Task = "a" });

        Assert.Equal(WorkStatus.SignedOff, shop.State.Cars["heron"].Tasks["b"].Status);
        Assert.Equal([RuleBook.Ids.AgainOrNot, RuleBook.Ids.Link], shop.Refused("sol", shop.Start("heron", "c", "sol")).Order());
        shop.Does("foreman", new AnswerAgain(false, "not touched") { Car = "heron", Task = "b" });
        shop.DoTask("heron", "a", "inga");
        shop.Does("sol", shop.Start("heron", "c", "sol"));
    }

    [Fact]
    public void A_stop_is_heard_made_safe_and_released_in_that_order()
    {
        var shop = Open().With("heron", Plan(Task("a") with { HowLeft = ["hanging"] }));
        shop.Does("inga", shop.Start("heron", "a", "inga"));
        var stop = shop.Does("mirek", new RaiseStop(StopScope.Car, "sling slips") { Car = "heron" }).OfType<StopRaised>().Single();
        Assert.Equal(["inga"], stop.Told);
        Assert.Contains(RuleBook.Ids.MadeSafeFirst, shop.Refused("foreman", new ReleaseStop(stop.Stop, "sling changed", "looked")));

        shop.Does("inga", new HearStop(stop.Stop));
        shop.Does("inga", new MakeSafe(stop.Stop, "set down"));
        Assert.Equal(WorkStatus.PartDone, shop.State.Cars["heron"].Tasks["a"].Status);
        Assert.Contains(RuleBook.Ids.Stop, shop.Refused("sol", shop.Start("heron", "a", "sol")));
        Assert.Equal([RuleBook.Ids.Position], shop.Refused("inga", new ReleaseStop(stop.Stop, "sling changed", "looked")));

        shop.Does("foreman", new ReleaseStop(stop.Stop, "sling changed", "looked at it"));

        Assert.Empty(shop.State.Stops);
        Assert.Equal([RuleBook.Ids.HowLeft], shop.Refused("sol", shop.Start("heron", "a", "sol")));
    }

    [Fact]
    public void Evidence_taken_again_does_not_lapse_by_an_older_change()
    {
        var test = Task("test") with { StandsOn = [new("hose", "tight")] };
        var again = Task("again") with { StandsOn = [new("hose", "tight")], TakesAgain = ["test"] };
        var move = Task("move") with { Touches = [new("hose", "tight")] };
        var shop = Open().With("heron", Plan(test, move, again) with { Items = [Hose], Links = [new("move", "test"), new("again", "move")] });
        shop.DoTask("heron", "test", "inga");
        shop.Later(1);
        shop.DoTask("heron", "move", "inga");
        var between = shop.Now;
        shop.Later(1);
        shop.DoTask("heron", "again", "inga");
        shop.Later(1);

        var facts = shop.Does("sol", new ChangeItem("hose", "fitted", "pushed aside") { Car = "heron" }, at: between);

        Assert.Empty(facts.OfType<EvidenceLapsed>());
    }
}

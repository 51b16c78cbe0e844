using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using static JobBoard.Domain.Tests.Deciding.TestShop;

namespace JobBoard.Domain.Tests.Deciding;

public class FinishingTests
{
    private static readonly ReadingNeed Torque = new() { Id = "torque", Name = "Torque", Unit = "N·m", Min = 40, Max = 50 };

    private static TestShop InHand(PlanTask task)
    {
        var shop = Open().With("heron", Plan(task));
        shop.Does("inga", shop.Start("heron", task.Id, "inga"));
        return shop;
    }

    private static LogReading Log(string text) => new("torque", text, "N·m") { Car = "heron", Task = "a" };

    private static SignOffTask SignOff(string task = "a") => new() { Car = "heron", Task = task };

    [Fact]
    public void Sign_off_wants_its_readings_in_limits()
    {
        var shop = InHand(Task("a") with { Readings = [Torque] });
        Assert.Equal([RuleBook.Ids.Evidence], shop.Refused("inga", SignOff()));
        shop.Does("inga", Log("60"));
        Assert.Equal([RuleBook.Ids.Evidence], shop.Refused("inga", SignOff()));

        shop.Later(1);
        shop.Does("inga", Log("45"));

        shop.Does("inga", SignOff());
        Assert.Equal(WorkStatus.SignedOff, shop.State.Cars["heron"].Tasks["a"].Status);
        Assert.Equal(2, shop.State.Cars["heron"].Readings["a/torque"].Count);
    }

    [Fact]
    public void Said_finished_late_is_kept_as_part_done_with_what_is_missing()
    {
        var shop = InHand(Task("a") with { Readings = [Torque] });

        var facts = shop.Does("inga", SignOff() with { Late = true });

        Assert.Contains("Torque", Assert.IsType<TaskSaidFinished>(facts[0]).Missing.Single(), StringComparison.Ordinal);
        Assert.IsType<DeviationNoted>(facts[1]);
        Assert.Equal(WorkStatus.PartDone, shop.State.Cars["heron"].Tasks["a"].Status);
    }

    [Fact]
    public void Apprentice_and_strangers_sign_nothing_off()
    {
        var shop = Open().With("heron", Plan(Task("a")));
        shop.Does("inga", shop.Start("heron", "a", "inga", "mirek:hand"));

        Assert.Contains(RuleBook.Ids.ApprenticeSigns, shop.Refused("mirek", SignOff()));
        Assert.Equal([RuleBook.Ids.OwnSignOff], shop.Refused("sol", SignOff()));
        shop.Does("foreman", SignOff());
    }

    [Fact]
    public void Second_check_is_by_another_person()
    {
        var shop = InHand(Task("a") with { SecondCheck = true });
        shop.Does("inga", SignOff());

        Assert.Equal([RuleBook.Ids.OwnCheck], shop.Refused("inga", new SecondCheck(true, "") { Car = "heron", Task = "a" }));
        shop.Does("sol", new SecondCheck(true, "") { Car = "heron", Task = "a" });

        Assert.True(shop.State.Cars["heron"].Tasks["a"].Counts);
    }

    [Fact]
    public void For_second_check_frees_people_but_not_what_follows()
    {
        var plan = Plan(Task("a") with { SecondCheck = true }, Task("b"), Task("c")) with { Links = [new("b", "a")] };
        var shop = Open().With("heron", plan);
        shop.DoTask("heron", "a", "inga");

        Assert.Equal([RuleBook.Ids.Link], shop.Refused("inga", shop.Start("heron", "b", "inga")));
        shop.Does("inga", shop.Start("heron", "c", "inga"));
    }

    [Fact]
    public void Finish_finish_governs_sign_off_not_start()
    {
        var plan = Plan(Task("a"), Task("b")) with { Links = [new("b", "a", LinkKind.FinishFinish, 10)] };
        var shop = Open().With("heron", plan);
        shop.Does("sol", shop.Start("heron", "b", "sol"));
        Assert.Equal([RuleBook.Ids.FinishLink], shop.Refused("sol", SignOff("b")));
        shop.DoTask("heron", "a", "inga");
        Assert.Equal([RuleBook.Ids.FinishLink], shop.Refused("sol", SignOff("b")));

        shop.Later(10);

        shop.Does("sol", SignOff("b"));
    }

    [Fact]
    public void A_reading_out_after_sign_off_holds_and_stops_what_follows()
    {
        var plan = Plan(Task("a") with { Readings = [Torque] }, Task("b"), Task("c")) with { Links = [new("b", "a"), new("c", "b")] };
        var shop = Open().With("heron", plan);
        shop.Does("inga", shop.Start("heron", "a", "inga"));
        shop.Does("inga", Log("45"));
        shop.Does("inga", SignOff());
        shop.Does("inga", shop.Start("heron", "b", "inga"));
        shop.Later(5);

        var facts = shop.Does("sol", Log("60"));

        var stop = facts.OfType<StopRaised>().Single();
        Assert.Equal("b", stop.Task);
        Assert.Equal(["inga"], stop.Told);
        Assert.Contains(RuleBook.Ids.ReadingHold, shop.Refused("tove", shop.Start("heron", "c", "tove")));
    }

    [Theory]
    [InlineData("40", Verdict.InLimits)]
    [InlineData("50", Verdict.InLimits)]
    [InlineData("39.9", Verdict.Out)]
    [InlineData("29.502", Verdict.Out)]
    public void Without_an_instrument_equality_conforms(string text, Verdict verdict)
    {
        var shop = InHand(Task("a") with { Readings = [Torque] });

        var logged = Assert.IsType<ReadingLogged>(shop.Does("inga", Log(text))[0]);

        Assert.Equal(verdict, logged.Verdict);
    }
}

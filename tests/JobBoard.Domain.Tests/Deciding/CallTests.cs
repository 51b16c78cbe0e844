using JobBoard.Domain.Commands;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using static JobBoard.Domain.Tests.Deciding.TestShop;

namespace JobBoard.Domain.Tests.Deciding;

/// <summary>The call before the key is turned, the foreman's word, and a start that failed.</summary>
public class CallTests
{
    private static readonly Plan FirstStart = Plan(Task("prime"), Task("wires"), Task("start"), Task("beside")) with
    {
        Holds = [new() { Id = "key", Name = "Key check", Stage = "s", KeyCheck = true }],
        Links = [new("wires", "prime"), new("key", "wires"), new("start", "key")],
    };

    private static ReleaseHold Word => new("key", "all go", "call") { Car = "heron" };

    private static string[] Everybody => ["owner", "foreman", "inga", "sol", "tove", "mirek"];

    [Fact]
    public void Word_waits_for_everybody_who_is_in()
    {
        var shop = Ready();

        Assert.Equal([RuleBook.Ids.Call], shop.Refused("foreman", Word));
        foreach (var person in Everybody.Except(["tove"])) shop.Does(person, Go(person));
        Assert.Contains("{tove} has not answered", Assert.Single(shop.Reasons("foreman", Word)).Words);

        shop.Does("foreman", new GoOut("tove"));
        shop.Does("foreman", Word);
    }

    [Fact]
    public void No_names_its_reason_and_stands_against_the_word()
    {
        var shop = Ready();
        foreach (var person in Everybody.Except(["sol"])) shop.Does(person, Go(person));

        Assert.Equal([RuleBook.Ids.Input], shop.Refused("sol", new AnswerCall("key", "sol", false, " ") { Car = "heron" }));
        shop.Does("sol", new AnswerCall("key", "sol", false, "no extinguisher") { Car = "heron" });
        Assert.Contains("{sol} says no go: no extinguisher", Assert.Single(shop.Reasons("foreman", Word)).Words);

        shop.Does("sol", Go("sol"));
        shop.Does("foreman", Word);
    }

    [Fact]
    public void Only_the_foreman_taps_for_others_and_only_for_who_is_in()
    {
        var shop = Ready();

        Assert.Equal([RuleBook.Ids.Position], shop.Refused("inga", Go("sol")));
        shop.Does("foreman", Go("sol"));
        Assert.Equal("foreman", shop.State.Cars["heron"].Call[CallAnswer.Key("key", "sol")].By);
        shop.Does("foreman", new GoOut("sol"));
        Assert.Equal([RuleBook.Ids.Input], shop.Refused("foreman", Go("sol")));
    }

    [Fact]
    public void Answers_lapse_when_something_behind_them_changes()
    {
        var shop = Ready();
        foreach (var person in Everybody) shop.Does(person, Go(person));
        shop.Does("foreman", Word);
        shop.Does("foreman", new MarkUndone("a wire came off") { Car = "heron", Task = "wires" });
        shop.DoTask("heron", "wires", "inga");

        Assert.Equal([RuleBook.Ids.Call], shop.Refused("inga", shop.Start("heron", "start", "inga")));
        Assert.All(shop.State.Cars["heron"].Call.Values, answer => Assert.Equal("task-undone", answer.Lapsed!.Kind));

        foreach (var person in Everybody) shop.Does(person, Go(person));
        shop.Does("inga", shop.Start("heron", "start", "inga"));
    }

    [Fact]
    public void Work_beside_the_key_check_leaves_the_call_as_it_is()
    {
        var shop = Ready();
        foreach (var person in Everybody) shop.Does(person, Go(person));

        shop.DoTask("heron", "beside", "sol");

        Assert.All(shop.State.Cars["heron"].Call.Values, answer => Assert.True(answer.Counts));
    }

    [Theory]
    [InlineData(StopScope.Shop)]
    [InlineData(StopScope.Place)]
    [InlineData(StopScope.Car)]
    public void A_stop_that_reaches_the_car_makes_the_call_lapse(StopScope scope)
    {
        var shop = Ready();
        shop.Does("tove", Go("tove"));

        shop.Does("sol", new RaiseStop(scope, "smoke") { Car = scope == StopScope.Car ? "heron" : null, Place = scope == StopScope.Place ? "bay-1" : null });

        Assert.Equal("stop-raised", shop.State.Cars["heron"].Call[CallAnswer.Key("key", "tove")].Lapsed!.Kind);
    }

    [Fact]
    public void Failed_start_takes_the_word_back_and_undoes_what_it_names()
    {
        var shop = Ready();
        foreach (var person in Everybody) shop.Does(person, Go(person));
        shop.Does("foreman", Word);
        shop.Does("inga", shop.Start("heron", "start", "inga"));

        shop.Does("inga", new FailStart("key", "no oil pressure on the gauge, stopped") { Car = "heron", Undo = ["prime", "wires"] });

        var car = shop.State.Cars["heron"];
        Assert.Null(car.Holds["key"].Released);
        Assert.Empty(car.Call);
        Assert.Equal((WorkStatus.PartDone, WorkStatus.Undone, WorkStatus.Undone), (car.Tasks["start"].Status, car.Tasks["prime"].Status, car.Tasks["wires"].Status));
        Assert.Empty(car.Questions);
        Assert.Contains(RuleBook.Ids.HoldPoint, shop.Refused("inga", shop.Start("heron", "start", "inga")));
    }

    [Fact]
    public void Nothing_fails_that_nobody_started()
    {
        var shop = Ready();

        Assert.Equal([RuleBook.Ids.TaskState], shop.Refused("inga", new FailStart("key", "did not turn") { Car = "heron" }));
        Assert.Contains(RuleBook.Ids.Input, shop.Refused("inga", new FailStart("key", "x") { Car = "heron", Undo = ["beside"] }));
    }

    private static AnswerCall Go(string person) => new("key", person, true, null) { Car = "heron" };

    private static TestShop Ready()
    {
        var shop = Open().With("heron", FirstStart);
        shop.DoTask("heron", "prime", "inga");
        shop.DoTask("heron", "wires", "inga");
        return shop;
    }
}

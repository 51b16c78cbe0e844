using JobBoard.Domain.Commands;
using JobBoard.Domain.Rules;

namespace JobBoard.Domain.Tests.Deciding;

/// <summary>What the customer is told and asked.</summary>
public class CustomerTests
{
    private static TestShop Shop => TestShop.Open().With("heron", TestShop.Plan(TestShop.Task("a")));

    [Fact]
    public void A_note_stays_in_the_shop_until_it_is_chosen()
    {
        var shop = Shop;
        shop.Does("inga", new WriteNote("seal torn") { Car = "heron" });
        shop.Does("inga", new WriteNote("engine is in") { Car = "heron", ForCustomer = true });
        Assert.DoesNotContain(shop.State.Cars["heron"].Notes, n => n.Chosen);

        var proposed = shop.State.Cars["heron"].Notes[1].Seq;
        shop.Does("foreman", new ChooseNote(proposed, true) { Car = "heron" });
        Assert.Equal([proposed], shop.State.Cars["heron"].Notes.Where(n => n.Chosen).Select(n => n.Seq));

        shop.Does("foreman", new ChooseNote(proposed, false) { Car = "heron" });
        Assert.DoesNotContain(shop.State.Cars["heron"].Notes, n => n.Chosen);
    }

    [Fact]
    public void The_foremans_note_for_the_customer_is_chosen_already()
    {
        var shop = Shop;

        shop.Does("foreman", new WriteNote("engine is in") { Car = "heron", ForCustomer = true });
        shop.Does("foreman", new WriteNote("call the supplier") { Car = "heron" });

        Assert.Equal([true, false], shop.State.Cars["heron"].Notes.Select(n => n.Chosen));
    }

    [Fact]
    public void Technicians_neither_ask_the_customer_nor_choose_notes()
    {
        var shop = Shop;
        shop.Does("inga", new WriteNote("engine is in") { Car = "heron", ForCustomer = true });

        Assert.Equal([RuleBook.Ids.Position], shop.Refused("inga", new ChooseNote(shop.State.Cars["heron"].Notes[0].Seq, true) { Car = "heron" }));
        Assert.Equal([RuleBook.Ids.Position], shop.Refused("inga", new AskCustomer("silencer", "Which silencer?") { Car = "heron" }));
        Assert.Equal([RuleBook.Ids.Position], shop.Refused("foreman", new SetContact("030 123456", "")));
    }

    [Fact]
    public void A_question_is_open_until_somebody_takes_the_answer()
    {
        var shop = Shop;
        shop.Does("foreman", new AskCustomer("silencer", "Which silencer?") { Car = "heron", By = new(2026, 3, 6) });
        Assert.True(shop.State.Cars["heron"].Asks["silencer"].IsOpen);

        shop.Does("inga", new TakeAnswer("silencer", "the quiet one") { Car = "heron" });

        var asked = shop.State.Cars["heron"].Asks["silencer"];
        Assert.Equal((false, "the quiet one", "inga"), (asked.IsOpen, asked.Answer, asked.AnsweredBy));
        Assert.Equal([RuleBook.Ids.TaskState], shop.Refused("sol", new TakeAnswer("silencer", "the loud one") { Car = "heron" }));
    }

    [Fact]
    public void What_makes_no_sense_is_sent_back_with_its_field()
    {
        var shop = Shop;
        for (var i = 0; i < 6; i++) shop.Does("foreman", new AskCustomer($"q-{i}", "Which?") { Car = "heron" });

        Assert.Equal("words", Field(new AskCustomer("q-7", "One more?") { Car = "heron" }));
        shop.Does("sol", new TakeAnswer("q-0", "that one") { Car = "heron" });
        Assert.Equal("words", Field(new AskCustomer("q-7", new string('x', 241)) { Car = "heron" }));
        Assert.Equal("words", Field(new AskCustomer("q-7", " ") { Car = "heron" }));
        Assert.Equal("ask", Field(new AskCustomer("q-0", "Which?") { Car = "heron" }));
        Assert.Equal("by", Field(new AskCustomer("q-7", "Which?") { Car = "heron", By = new(2026, 3, 1) }));
        Assert.Equal("answer", Field(new TakeAnswer("q-1", "") { Car = "heron" }));
        Assert.Equal("ask", Field(new TakeAnswer("q-9", "yes") { Car = "heron" }));
        Assert.Equal("note", Field(new ChooseNote(99999, true) { Car = "heron" }));
        Assert.Equal("words", Field(new WriteNote(new string('x', 2001)) { Car = "heron", ForCustomer = true }));
        Assert.Equal("wordsForCustomer", Field(new GiveDate(shop.Now.AddDays(3), "") { Car = "heron", WordsForCustomer = new string('x', 241) }));
        Assert.Equal("phone", Field(new SetContact("call us", "")));
        Assert.Equal("mail", Field(new SetContact("", "shop at example")));

        string? Field(Command command) => shop.Reasons(command is SetContact ? "owner" : "foreman", command).Single().About;
    }

    [Fact]
    public void Every_date_given_is_kept_with_its_words()
    {
        var shop = Shop;
        shop.Does("foreman", new GiveDate(shop.Now.AddDays(3), "at take-in") { Car = "heron" });
        shop.Does("foreman", new GiveDate(shop.Now.AddDays(5), "welds") { Car = "heron", WordsForCustomer = " More welding. " });

        Assert.Equal([null, "More welding."], shop.State.Cars["heron"].DatesGiven.Select(d => d.WordsForCustomer));
        Assert.Equal(shop.Now.AddDays(5), shop.State.Cars["heron"].DateGiven);

        shop.Does("foreman", new GiveDate(null, "lost a part") { Car = "heron" });
        Assert.Null(shop.State.Cars["heron"].DateGiven);
    }

    [Fact]
    public void Choosing_a_note_that_was_taken_back_since_does_nothing()
    {
        var shop = Shop;
        shop.Does("foreman", new WriteNote("engine is in") { Car = "heron", ForCustomer = true });
        var written = shop.LastCommand;
        shop.Does("foreman", new ChooseNote(shop.State.Cars["heron"].Notes[0].Seq, false) { Car = "heron" });

        shop.Does("foreman", new TakeBack(written));

        Assert.Empty(shop.State.Cars["heron"].Notes);
    }
}

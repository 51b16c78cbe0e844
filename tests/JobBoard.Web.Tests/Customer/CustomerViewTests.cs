using System.Collections.Immutable;
using System.Text;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;
using JobBoard.Shop.Dates;
using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Customer;
using JobBoard.Web.SignIn;

namespace JobBoard.Web.Tests.Customer;

/// <summary>What the customer is told, from a car to words.</summary>
public class CustomerViewTests
{
    private const string Car = "heron";
    private static readonly DateTimeOffset Monday = new(2026, 11, 23, 9, 0, 0, TimeSpan.Zero);

    /// <summary>The allow-list itself: a new member of the view fails here until somebody has decided on it.</summary>
    [Fact]
    public void The_view_holds_words_marks_and_lists_of_them_alone()
    {
        Type[] ours = [typeof(CustomerView), typeof(CustomerDate), typeof(CustomerMove), typeof(CustomerNeed), typeof(CustomerStage), typeof(CustomerNote)];
        var members = ours.SelectMany(t => t.GetProperties().Where(p => p.Name != "EqualityContract").Select(p => $"{t.Name}.{p.Name}: {Name(p.PropertyType)}")).ToArray();

        Assert.Equal(
            [
                "CustomerView.Shop: String", "CustomerView.Car: String", "CustomerView.Now: String", "CustomerView.Date: CustomerDate",
                "CustomerView.Waiting: CustomerNeed[]", "CustomerView.Stages: CustomerStage[]", "CustomerView.Notes: CustomerNote[]",
                "CustomerView.HasEarlierNotes: Boolean", "CustomerView.Phone: String", "CustomerView.Mail: String",
                "CustomerDate.Lead: String", "CustomerDate.Day: String", "CustomerDate.Clock: String", "CustomerDate.Moves: CustomerMove[]",
                "CustomerMove.Moved: String", "CustomerMove.Why: String", "CustomerNeed.Words: String", "CustomerNeed.By: String",
                "CustomerStage.Name: String", "CustomerStage.Bolt: BoltState", "CustomerStage.State: String", "CustomerNote.Day: String", "CustomerNote.Words: String",
            ],
            members);

        static string Name(Type type) => type.IsGenericType ? type.GetGenericArguments()[0].Name + "[]" : type.Name;
    }

    [Fact]
    public void Stages_tell_done_now_and_next()
    {
        var view = Of(Board("done", "hand", "begun", "new", "new"));

        Assert.Equal(
            [(BoltState.SignedOff, "done Friday 20 November"), (BoltState.InHand, "in hand now"), (BoltState.NotStarted, "begun"), (BoltState.NotStarted, "next"), (BoltState.NotStarted, "")],
            view.Stages.Select(s => (s.Bolt, s.State)));
        Assert.Equal("Now: Stage 1. Next: Stage 3.", view.Now);
    }

    [Theory]
    [InlineData("The work has not begun. First: Stage 0.", "new", "new")]
    [InlineData("Now: Stage 1. Next: Stage 2.", "done", "begun", "new")]
    [InlineData("Now: Stage 0 and Stage 1.", "hand", "hand")]
    [InlineData("Every stage is done.", "done", "done")]
    public void Now_and_next_are_a_sentence(string words, params string[] stages) => Assert.Equal(words, Of(Board(stages)).Now);

    [Fact]
    public void The_date_given_is_told_with_each_move_and_why()
    {
        var (first, second) = (Monday.AddDays(10), Monday.AddDays(14));
        var board = Board("new") with
        {
            DatesGiven =
            [
                new(first, Monday.AddDays(-9), "take-in", null), new(second, Monday.AddDays(-2), "internal", null),
                new(second, Monday.AddDays(-1), "internal", "The lift needed more preparation."), new(null, Monday, "internal", "A part is late."), new(Monday.AddDays(20), Monday, "internal", null),
            ],
        };

        var date = Of(board).Date;

        Assert.Equal(("The date we gave you", "Sunday 13 December", "by 09:00"), (date.Lead, date.Day, date.Clock));
        Assert.Equal(
            [
                ("On Monday 23 November we gave you a date again.", null),
                ("On Monday 23 November we took back Monday 7 December.", "A part is late."),
                ("On Saturday 21 November we moved it from Thursday 3 December to Monday 7 December.", "The lift needed more preparation."),
            ],
            date.Moves.Select(m => (m.Moved, m.Why)));
    }

    [Fact]
    public void No_date_a_date_gone_by_and_work_that_is_done_are_told()
    {
        Assert.Equal(("No date yet. The shop will give you one.", null), (Of(Board("new")).Date.Lead, Of(Board("new")).Date.Day));

        var over = Of(Board("new") with { DatesGiven = [new(Monday.AddDays(-1), Monday.AddDays(-9), "", null)] }).Date;
        Assert.Equal(("The date we gave you is over. Ask the shop for a new one.", "Sunday 22 November"), (over.Lead, over.Day));

        var done = Of(Board("done") with { DatesGiven = [new(Monday.AddDays(4), Monday.AddDays(-9), "", null)] }).Date;
        Assert.Equal(("All the work is done. Ask the shop when to come.", null), (done.Lead, done.Day));
    }

    [Fact]
    public void Their_word_is_waited_for_once_all_before_it_is_done()
    {
        var board = Board("done", "new");
        var held = board with
        {
            Plan = board.Plan with { Holds = [new() { Id = "word", Name = "Customer's word", Stage = "s1", CustomerWords = "Please agree." }, new() { Id = "lift", Name = "Lift", Stage = "s1" }], Links = [new("word", "t0"), new("t1", "word")] },
            Holds = board.Holds.Add("word", new("word")).Add("lift", new("lift")),
        };

        Assert.Equal(["Please agree."], Of(held).Waiting.Select(w => w.Words));
        Assert.Empty(Of(held with { Plan = held.Plan with { Links = [new("word", "t1")] } }).Waiting);
        Assert.Empty(Of(held with { Holds = held.Holds.SetItem("word", new("word", new("fritz", Monday))) }).Waiting);
    }

    [Fact]
    public void What_is_needed_soonest_stands_first()
    {
        var board = Board("new") with
        {
            Asks = ShopState.ById<CustomerAsk>().Add("a", new("a", "No hurry?", null, "f", Monday)).Add("b", new("b", "Soon?", new(2026, 11, 27), "f", Monday))
                .Add("c", new("c", "Settled?", null, "f", Monday, "yes", "f", Monday)),
        };

        Assert.Equal([("Soon?", "by Friday 27 November"), ("No hurry?", null)], Of(board).Waiting.Select(w => (w.Words, w.By)));
    }

    /// <summary>The most that the rules let be written, in letters that take the most bytes.</summary>
    [Fact]
    public async Task The_fullest_page_stays_under_60_kB()
    {
        const int Most = 60 * 1024;
        await using var server = await Server.Start();
        var board = Board([.. Enumerable.Repeat("new", 30)]);
        var dates = Enumerable.Range(0, 9).Select(i => new GivenDate(Monday.AddDays(9 + i), Monday, "", new string('ж', 240)));
        var full = board with
        {
            Plan = board.Plan with { Stages = [.. board.Plan.Stages.Select(s => s with { CustomerName = new string('ж', 40) })] },
            DatesGiven = [.. dates],
            Notes = [.. Enumerable.Range(0, 40).Select(i => new Note(i, new string('ж', 2000), "f", Monday.AddMinutes(i), null, true, true))],
            Asks = Enumerable.Range(0, 6).ToImmutableSortedDictionary(i => $"a{i}", i => new CustomerAsk($"a{i}", new string('ж', 240), null, "f", Monday), StringComparer.Ordinal),
        };

        var view = Of(full);
        var html = await server.Service<Markup>().Render<CustomerScreen>(new Dictionary<string, object?> { ["View"] = view });
        using var browser = server.Open();
        var empty = await browser.Text("/customer/" + server.Service<CustomerLinks>().Make(Car, "them", server.Runner.Now.AddDays(1)));

        Assert.True(view.HasEarlierNotes);
        Assert.InRange(Encoding.UTF8.GetByteCount(html) + Encoding.UTF8.GetByteCount(empty), 20_000, Most);
    }

    private static CustomerView Of(CarBoard board)
    {
        var state = ShopState.Empty with { Name = "Tarn Lane", Cars = ShopState.ById<CarBoard>().Add(board.Id, board) };
        return CustomerMapping.Of(new Picture(state, new Head(Guid.Empty, 0, Monday), new DateBook()), board.Id)!;
    }

    /// <summary>A car with a stage of one task for each: new, begun, hand or done.</summary>
    private static CarBoard Board(params string[] stages)
    {
        var plan = new Plan
        {
            Id = "p",
            Name = "p",
            Stages = [.. stages.Select((_, i) => new Stage($"s{i}", $"Stage {i}"))],
            Tasks = [.. stages.Select((_, i) => new PlanTask { Id = $"t{i}", Name = $"Task {i}", Stage = $"s{i}", Estimate = new(30, 60, 90) })],
        };
        return new()
        {
            Id = Car,
            Name = "Heron coupe",
            Plan = plan,
            Tasks = stages.Select((s, i) => State($"t{i}", s)).ToImmutableSortedDictionary(t => t.Id, t => t, StringComparer.Ordinal),
        };
    }

    private static TaskState State(string id, string state) => state switch
    {
        "done" => new() { Id = id, Status = WorkStatus.SignedOff, SignedOff = new("inga", Monday.AddDays(-3)), WorkEndedAt = Monday.AddDays(-3) },
        "hand" => new() { Id = id, Status = WorkStatus.InHand },
        "begun" => new() { Id = id, Status = WorkStatus.PartDone },
        _ => new() { Id = id },
    };
}

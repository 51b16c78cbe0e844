using System.Net;
using System.Text.RegularExpressions;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Holds;
using JobBoard.Shop.Dates;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Cars.WhenReady;

namespace JobBoard.Web.Tests.Pages.WhenReady;

/// <summary>The page of one car: words, picture and table. The shop has no hours, so it is always open.</summary>
public class WhenReadyTests
{
    private const string Path = "/cars/plover/when-ready";

    [Theory]
    [InlineData("fritz")]
    [InlineData("inga")]
    [InlineData("mirek")]
    public async Task The_page_has_words_picture_and_table(string person)
    {
        await using var server = await Workshop.Closing();
        using var browser = await server.SignIn(person);

        var html = await browser.Text(Path);

        Assert.Contains("Plover saloon: ready ", html, StringComparison.Ordinal);
        Assert.Contains("id=\"ready-svg\"", html, StringComparison.Ordinal);
        Assert.Contains("id=\"row-pump-on\"", html, StringComparison.Ordinal);
        Assert.DoesNotContain("style=", html, StringComparison.Ordinal);
        var ids = Regex.Matches(html, " id=\"([^\"]+)\"").Select(m => m.Groups[1].Value).ToArray();
        Assert.Equal(ids.Distinct(), ids);
    }

    [Fact]
    public async Task Every_bolt_leads_to_its_row()
    {
        await using var server = await Workshop.Closing();
        using var browser = await server.SignIn("fritz");

        var html = await browser.Text(Path);

        var (steps, rows) = (Keys(html, "href=\"#row-([^\"]+)\" id=\"step-"), Keys(html, "<tr id=\"row-([^\"]+)\""));
        Assert.Equal(rows.Order(), steps.Order());
        Assert.All(Keys(html, "data-to=\"([^\"]+)\""), to => Assert.Contains(to, rows));
    }

    [Theory]
    [InlineData("/cars/plover", Path)]
    [InlineData("/cars", "/cars/heron/when-ready")]
    public async Task The_cars_lead_to_it(string from, string to)
    {
        await using var server = await Workshop.Open();
        using var browser = await server.SignIn("fritz");

        Assert.Contains($"href=\"{to}\"", await browser.Text(from), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_car_that_is_not_there_is_not_found()
    {
        await using var server = await Workshop.Open();
        using var browser = await server.SignIn("fritz");

        Assert.Equal(HttpStatusCode.NotFound, (await browser.Get("/cars/nightjar/when-ready")).StatusCode);
    }

    [Fact]
    public async Task What_sets_the_date_and_who_shortens_it_is_said()
    {
        await using var server = await Workshop.Closing();

        var words = Words(server);

        Assert.Equal("Line closed, then No leak seen, then Pump on set the date", words.SetBy);
        var best = words.Best!;
        Assert.Equal(("Line closed", "in hand: Inga"), (best.Name, best.Who));
        Assert.Matches("^done in (30|29) min instead of (1 h|59 min)$", best.If);
        Assert.Contains("would shorten it too", words.Rest, StringComparison.Ordinal);
        Assert.Equal(["Line closed", "Pump on"], words.Levers.Select(l => l.Name).Order());
    }

    [Fact]
    public async Task A_part_overdue_says_that_nothing_is_known()
    {
        await using var server = await Workshop.Open();
        await server.Does("fritz", new OrderPart("seal", server.Runner.Now.AddDays(-1)) { Car = Workshop.Car });

        var words = Words(server);

        Assert.Contains("not known, rests on Seal ring", words.Answer, StringComparison.Ordinal);
        Assert.StartsWith("Somebody has to say when Seal ring comes. Here now, it would make it ", words.SetBy, StringComparison.Ordinal);
        Assert.Empty(words.Levers);
        Assert.Contains("No longer known since when it was taken in: Seal ring is expected", words.Moved, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_moved_it_is_named_with_its_cause()
    {
        await using var server = await Workshop.Open();
        await server.Does("fritz", new OrderPart("seal", server.Runner.Now.AddDays(4)) { Car = Workshop.Car });
        await server.Does("fritz", new ReviseEstimate(new(60, 180, 240), "old pump") { Car = Workshop.Car, Task = "pump-on" });

        var words = Words(server);

        Assert.Contains("of shop hours later than when it was taken in", words.Moved, StringComparison.Ordinal);
        Assert.Equal(["Seal ring is expected", "the estimate of Pump on was revised"], words.Moves.Select(m => Regex.Replace(m.What, " expected .*", " expected")));
        Assert.Equal("2 h later", words.Moves[1].By);
    }

    [Fact]
    public async Task Finished_stages_fold_and_unfold()
    {
        await using var server = await Workshop.AtTheHold();
        await server.Does("fritz", new ReleaseHold("leak-seen", "dry", "looked at it") { Car = Workshop.Car });
        var (picture, car) = (Picture(server), server.Runner.State.Cars[Workshop.Car]);

        var (folded, unfolded) = (ReadyUnits.Of(picture, car, unfolded: false), ReadyUnits.Of(picture, car, unfolded: true));

        Assert.Equal(["stage:s1", "pump-on", "handover"], folded.All.Select(u => u.Id));
        Assert.Equal(["stage:s1", "pump-on", "handover"], folded.Line);
        Assert.Equal(5, unfolded.All.Length);
        Assert.Contains(("pump-on", "stage:s1"), folded.Links);
        Assert.DoesNotContain(folded.Links, l => l.Task == l.After);
    }

    [Fact]
    public async Task Tags_stops_and_bolts_follow_the_board()
    {
        await using var server = await Workshop.Closing();
        await server.Does("inga", new LogReading("fall", "80", "kPa") { Car = Workshop.Car, Task = "close-line" });
        var held = Unit(server, "close-line");
        await server.Does("sol", new RaiseStop(StopScope.Task, "smell of fuel") { Car = Workshop.Car, Task = "close-line" });
        var stopped = Unit(server, "close-line");

        Assert.Equal((ReadyMark.Tag, "reading holds", true, true), (held.Mark, held.Note, held.InHand, held.OnLine));
        Assert.Equal((ReadyMark.Stop, "stop"), (stopped.Mark, stopped.Note));
        Assert.Null(Unit(server, "leak-seen").Bolt);
        Assert.Equal(Marks.BoltState.SignedOff, Unit(server, "open-line").Bolt);
        Assert.Contains(Unit(server, "pump-on").WaitsOn, w => w.What.Contains("No leak seen", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(7, "5 min")]
    [InlineData(100, "1 h 30")]
    [InlineData(290, "4 h")]
    public void Slack_is_rounded_down_in_the_picture(int minutes, string words) => Assert.Equal(words, ReadyPictureView.Rough(TimeSpan.FromMinutes(minutes)));

    [Fact]
    public async Task A_car_that_is_gone_leaves_empty_views()
    {
        await using var server = await Workshop.Open();
        var picture = Picture(server);

        Assert.Null(ReadyWords.Of(picture, server.Service<MovedBook>(), "nightjar").Car);
        Assert.Null(ReadyPictureView.Of(picture, "nightjar", false).Drawing);
        Assert.Empty(ReadyTableView.Of(picture, "nightjar", false).Rows);
    }

    private static string[] Keys(string html, string pattern) => [.. Regex.Matches(html, pattern).Select(m => m.Groups[1].Value)];

    private static Picture Picture(Server server) => server.Service<Fragments>().Picture();

    private static ReadyUnit Unit(Server server, string id) =>
        ReadyUnits.Of(Picture(server), server.Runner.State.Cars[Workshop.Car], unfolded: false).All.Single(u => u.Id == id);

    private static ReadyWordsView Words(Server server) => ReadyWords.Of(Picture(server), server.Service<MovedBook>(), Workshop.Car);
}

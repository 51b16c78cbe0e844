using System.Text.RegularExpressions;
using JobBoard.Domain.Commands;
using JobBoard.Web.Tests.Pages;

namespace JobBoard.Web.Tests.Live;

/// <summary>Fragments that are about something: the page shows them and the feed pushes them.</summary>
public class SubjectTests
{
    [Fact]
    public async Task A_stage_is_pushed_to_those_who_look_at_it()
    {
        await using var server = await Workshop.Open();
        using var browser = await server.SignIn("inga");
        await using var feed = await Feed.Of(server, browser);
        var first = Assert.Single((await feed.Join("car/plover/technician/car-stage:s1")).Fragments);

        await server.Does("inga", new StartTask([new("inga")]) { Car = Workshop.Car, Task = "open-line" });
        var push = await feed.Next();

        Assert.Equal(first.Id, push.Id);
        Assert.Contains("in hand, Inga", push.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_task_looks_the_same_in_page_and_feed()
    {
        await using var server = await Workshop.Closing();
        using var browser = await server.SignIn("inga");
        await using var feed = await Feed.Of(server, browser);

        var joined = Assert.Single((await feed.Join("person/inga/car-task:plover:close-line")).Fragments);
        var page = await browser.Text("/cars/plover/task/close-line");

        var shown = Regex.Replace(page, "<span class=\"seal\" hidden>.*?</span>", JobBoard.Web.Posting.FormSeal.Blank);
        Assert.Contains(joined.Html, shown, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_not_there_gives_an_empty_view()
    {
        await using var server = await Workshop.Open();
        using var browser = await server.SignIn("inga");
        await using var feed = await Feed.Of(server, browser);

        var answer = await feed.Join("car/plover/technician/car-stage:nothing", "person/inga/car-task:nothing", "person/inga/car-task", "car/plover/technician/car-head:x");

        Assert.Equal(["car/plover/technician/car-stage:nothing", "person/inga/car-task:nothing"], answer.Fragments.Select(f => f.Id).Order());
    }
}

using System.Diagnostics;
using System.Net;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Holds;
using JobBoard.Web.Live;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.SignalR.Client;

namespace JobBoard.Web.Tests.Live;

/// <summary>The live protocol, as it is written down.</summary>
public class LiveFeedTests
{
    [Fact]
    public async Task Joining_gives_the_picture_as_it_is()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");
        await using var feed = await Feed.Of(server, browser);

        var answer = await feed.Join("person/inga/alarm");

        var now = Assert.Single(answer.Fragments);
        Assert.Equal((server.Runner.JournalId, server.Runner.State.Seq), (now.JournalId, now.Seq));
        Assert.Equal((server.Runner.JournalId, LivePublisher.Build), (answer.Beat.JournalId, answer.Beat.Build));
    }

    [Fact]
    public async Task A_change_is_pushed_and_its_end_too()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");
        await using var feed = await Feed.Of(server, browser);
        await server.Does("inga", new StartTask([new("inga")]) { Car = "heron", Task = "a" });
        var first = Assert.Single((await feed.Join("person/inga/alarm")).Fragments);

        await server.Does("sol", new RaiseStop(StopScope.Car, "fuel weep at the filter") { Car = "heron" });
        var push = await feed.Next();
        await server.Does("inga", new HearStop(Assert.Single(server.Runner.State.Stops).Key));
        var end = await feed.Next();

        Assert.Contains("fuel weep at the filter", push.Html, StringComparison.Ordinal);
        Assert.Contains("data-alarm", push.Html, StringComparison.Ordinal);
        Assert.True(push.Seq > first.Seq);
        Assert.Equal(first.Turn + 1, push.Turn);
        Assert.Equal((push.Turn + 1, false), (end.Turn, end.Html.Contains("data-alarm", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task What_is_pushed_is_what_a_page_shows()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("ada");
        await using var feed = await Feed.Of(server, browser);
        await feed.Join("person/ada/alarm");
        await server.Does("ada", new StartTask([new("ada")]) { Car = "heron", Task = "a" });

        await server.Does("sol", new RaiseStop(StopScope.Car, "fuel weep") { Car = "heron" });
        var push = await feed.Next();
        var page = await browser.Text("/access");

        Assert.DoesNotContain("RequestVerificationToken", push.Html, StringComparison.Ordinal);
        var shown = System.Text.RegularExpressions.Regex.Replace(page, "<span class=\"seal\" hidden>.*?</span>", JobBoard.Web.Posting.FormSeal.Blank);
        Assert.Contains(push.Html, shown, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_looks_the_same_is_not_pushed()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");
        await using var feed = await Feed.Of(server, browser);
        await feed.Join("person/inga/alarm");

        await server.Does("sol", new GoOut("sol"));
        var beat = await feed.BeatAt(server.Runner.State.Seq);

        Assert.Equal(server.Runner.State.Seq, beat.Seq);
        Assert.False(feed.HasPush);
    }

    [Fact]
    public async Task A_beat_follows_every_change_shown_or_not()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");
        await using var feed = await Feed.Of(server, browser);
        await feed.Join("person/inga/alarm");
        var since = Stopwatch.GetTimestamp();

        for (var i = 0; i < 4; i++)
        {
            await server.Does("sol", i % 2 == 0 ? new GoOut("sol") : new ComeIn("sol"));
            await feed.BeatAt(server.Runner.State.Seq);
        }

        Assert.True(Stopwatch.GetElapsedTime(since) < LivePublisher.BeatEvery * 2.5, "Beats came every two seconds alone.");
    }

    [Fact]
    public async Task Nobody_joins_another_persons_fragments()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");
        await using var feed = await Feed.Of(server, browser);

        var answer = await feed.Join("person/sol/alarm", "person/inga/alarm", "person/inga/none", "floor/alarm", "nonsense");

        Assert.Equal("person/inga/alarm", Assert.Single(answer.Fragments).Id);
    }

    [Fact]
    public async Task A_wall_joins_the_floor_only()
    {
        await using var server = await Server.Start();
        using var wall = server.Open();
        await wall.Get("/wall/" + server.Service<WallLinks>().Make("over the door"));
        await using var feed = await Feed.Of(server, wall);

        var answer = await feed.Join("person/sol/alarm", "floor/wall-alarm");

        Assert.Equal("floor/wall-alarm", Assert.Single(answer.Fragments).Id);
    }

    [Fact]
    public async Task A_withdrawn_wall_link_closes_its_feed()
    {
        await using var server = await Server.Start();
        var walls = server.Service<WallLinks>();
        using var wall = server.Open();
        await wall.Get("/wall/" + walls.Make("over the door"));
        await using var feed = await Feed.Of(server, wall);
        await feed.Join("floor/wall-alarm");

        walls.Withdraw(Assert.Single(walls.All).Id);

        await feed.Closed;
    }

    [Fact]
    public async Task A_changed_pin_closes_the_feed_begun_with_the_old_one()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");
        using var other = await server.SignIn("sol");
        await using var feed = await Feed.Of(server, browser);
        await using var theirs = await Feed.Of(server, other);

        server.Service<PinBook>().Set("inga", "8642");

        await feed.Closed;
        Assert.Single((await theirs.Join("person/sol/alarm")).Fragments);
    }

    [Fact]
    public async Task Nobody_connects_without_signing_in()
    {
        await using var server = await Server.Start();
        using var browser = server.Open();

        var answer = await browser.PostBare("/live/negotiate?negotiateVersion=1", []);

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Fact]
    public async Task After_a_dropped_line_joining_again_brings_everything()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");
        await server.Does("inga", new StartTask([new("inga")]) { Car = "heron", Task = "a" });
        await using (var feed = await Feed.Of(server, browser)) await feed.Join("person/inga/alarm");

        await server.Does("sol", new RaiseStop(StopScope.Car, "fuel weep") { Car = "heron" });
        await using var again = await Feed.Of(server, browser);
        var now = Assert.Single((await again.Join("person/inga/alarm")).Fragments);

        Assert.Contains("fuel weep", now.Html, StringComparison.Ordinal);
        Assert.Equal(server.Runner.State.Seq, now.Seq);
    }

    [Fact]
    public async Task Many_changes_at_once_are_few_pushes()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");
        await using var feed = await Feed.Of(server, browser);
        await server.Does("inga", new StartTask([new("inga")]) { Car = "heron", Task = "a" });
        await feed.Join("person/inga/alarm");

        for (var i = 0; i < 30; i++) await server.Does("sol", new RaiseStop(StopScope.Car, $"reason {i}") { Car = "heron" });
        var pushes = 0;
        FragmentPush last;
        do
        {
            (last, pushes) = (await feed.Next(), pushes + 1);
        }
        while (last.Seq < server.Runner.State.Seq);

        Assert.InRange(pushes, 1, 15);
        Assert.Contains("reason 29", last.Html, StringComparison.Ordinal);
    }
}

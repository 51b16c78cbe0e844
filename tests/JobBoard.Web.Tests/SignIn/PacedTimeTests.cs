using System.Net;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Holds;
using JobBoard.Shop.Running;
using JobBoard.Web.SignIn;
using JobBoard.Web.Tests.Live;

namespace JobBoard.Web.Tests.SignIn;

/// <summary>The shop's time may run or be moved on; who is signed in, and how long ago a PIN was typed, goes by the system's.</summary>
public class PacedTimeTests
{
    [Fact]
    public async Task Sign_ins_pins_and_links_outlast_the_shops_time()
    {
        await using var server = await Server.Start();
        using var foreman = await server.SignIn("fritz");
        using var wall = server.Open();
        await wall.Get("/wall/" + server.Service<WallLinks>().Make("hall"));
        await server.Does("inga", new RaiseStop(StopScope.Shop, "Smoke"));
        var stop = server.Runner.State.Stops.Values.Single().Id;
        await server.Does("inga", new MakeSafe(stop, "Out"));
        var clock = server.Service<ShopClock>();

        clock.RunAt(3600);
        clock.Set(server.Runner.Now.AddDays(200));

        Assert.True(server.Runner.Now > DateTimeOffset.UtcNow.AddDays(199));
        Assert.Equal(HttpStatusCode.OK, (await foreman.Get("/holds")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await wall.Get("/floor")).StatusCode);
        var released = await foreman.Command("release-stop", ("stop", stop), ("why", "Out"), ("evidence", "Looked"));
        Assert.Equal(HttpStatusCode.OK, released.StatusCode);
    }

    [Fact]
    public async Task Pages_and_beats_tell_the_pace()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");
        server.Service<ShopClock>().RunAt(60);
        await using var feed = await Feed.Of(server, browser);

        var page = await browser.Text("/bay");
        var answer = await feed.Join("floor/floor");
        var last = answer.Beat;
        for (var i = 0; i < 4; i++) last = await feed.BeatAt(answer.Beat.Seq);

        Assert.Contains("data-pace=\"60\"", page, StringComparison.Ordinal);
        Assert.Equal(60, answer.Beat.Pace);
        Assert.True(last.At - answer.Beat.At > 120_000, "Four beats, at least four seconds: four minutes of the shop's.");
    }
}

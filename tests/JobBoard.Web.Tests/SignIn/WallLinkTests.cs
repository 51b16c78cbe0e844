using System.Net;
using JobBoard.Web.SignIn;

namespace JobBoard.Web.Tests.SignIn;

/// <summary>A wall sees the floor, does nothing, and goes dark when its link is withdrawn.</summary>
public class WallLinkTests
{
    [Fact]
    public async Task Opens_the_floor_and_nothing_else()
    {
        await using var server = await Server.Start();
        using var wall = server.Open();
        var entered = await wall.Get("/wall/" + server.Service<WallLinks>().Make("over the door"));

        Assert.Equal("/floor", entered.Headers.Location!.ToString());
        Assert.Equal("/floor", (await wall.Get("/")).Headers.Location!.ToString());
        Assert.Equal(HttpStatusCode.Redirect, (await wall.Get("/access")).StatusCode);
    }

    [Fact]
    public async Task Sends_no_command()
    {
        await using var server = await Server.Start();
        using var wall = server.Open();
        await wall.Get("/wall/" + server.Service<WallLinks>().Make("over the door"));
        var head = server.Runner.State.Seq;

        var answer = await wall.Command("raise-stop", ("scope", "shop"), ("why", "from the wall"));

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.Equal(head, server.Runner.State.Seq);
    }

    [Fact]
    public async Task A_withdrawn_link_opens_nothing_any_more()
    {
        await using var server = await Server.Start();
        var walls = server.Service<WallLinks>();
        using var wall = server.Open();
        var token = walls.Make("over the door");
        await wall.Get("/wall/" + token);

        walls.Withdraw(Assert.Single(walls.All).Id);

        Assert.StartsWith("/sign-in", (await wall.Get("/")).Headers.Location!.PathAndQuery, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Open().Get("/wall/" + token)).StatusCode);
    }

    [Fact]
    public async Task A_made_up_token_opens_nothing()
    {
        await using var server = await Server.Start();

        Assert.Equal(HttpStatusCode.NotFound, (await server.Open().Get("/wall/" + new string('A', 43))).StatusCode);
    }
}

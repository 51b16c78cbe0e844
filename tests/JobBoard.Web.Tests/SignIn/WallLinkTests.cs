using System.Net;
using JobBoard.Web.Pages.Floor;
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
    public async Task Text_is_sized_for_its_own_screen()
    {
        await using var server = await Server.Start();
        var walls = server.Service<WallLinks>();
        using var near = server.Open();
        using var far = server.Open();
        await near.Get("/wall/" + walls.Make("over the door"));
        await far.Get("/wall/" + walls.Make("at the far end", new(6, 65)));

        Assert.Contains(Classes(4, 65), await near.Text("/floor"), StringComparison.Ordinal);
        Assert.Contains(Classes(6, 65), await far.Text("/floor"), StringComparison.Ordinal);

        walls.Set(walls.All.Single(w => w.Label == "over the door").Id, new(3, 43));

        Assert.Contains(Classes(3, 43), await near.Text("/floor"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0", "65")]
    [InlineData("4", "5")]
    [InlineData("31", "65")]
    [InlineData("four", "65")]
    public async Task A_screen_nobody_has_is_not_taken(string metres, string inches)
    {
        await using var server = await Server.Start();
        using var owner = await server.SignIn("ada");

        var answer = await owner.Post("/access?handler=Wall", "/access", ("label", "over the door"), ("metres", metres), ("inches", inches));

        Assert.Contains("Where the screen hangs", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Empty(server.Service<WallLinks>().All);
    }

    [Fact]
    public async Task The_owner_sets_the_screen_of_a_link()
    {
        await using var server = await Server.Start();
        var walls = server.Service<WallLinks>();
        using var owner = await server.SignIn("ada");
        await owner.Post("/access?handler=Wall", "/access", ("label", "over the door"), ("metres", "5,5"), ("inches", "55"));
        var link = Assert.Single(walls.All);
        Assert.Equal(new(5.5, 55), walls.ScreenOf(link.Id));

        await owner.Post("/access?handler=Screen", "/access", ("id", link.Id), ("metres", "7"), ("inches", "55"));

        Assert.Equal(new(7, 55), walls.ScreenOf(link.Id));
    }

    private static string Classes(double metres, double inches)
    {
        var sheet = FloorSheet.For(metres, inches);
        return $"names-{sheet.NamesType} rest-{sheet.RestType}";
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

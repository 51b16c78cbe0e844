using System.Net;
using JobBoard.Domain.Commands;
using JobBoard.Web.SignIn;

namespace JobBoard.Web.Tests.Pages;

/// <summary>The owner of a new shop is led through what is still missing.</summary>
public class WelcomeTests
{
    [Fact]
    public async Task The_first_owner_lands_on_what_is_missing()
    {
        await using var server = await Server.Empty();
        using var browser = server.Open();

        var made = await browser.Post("/first", "/first", FirstOwner(server));
        var html = await browser.Text("/welcome");

        Assert.Equal("/welcome", made.Headers.Location?.ToString());
        Assert.Contains("6 of 7 steps are still open", html, StringComparison.Ordinal);
        string[] inOrder = ["step-hours", "step-places", "step-people", "step-gear", "step-instruments", "step-kept-apart", "step-car"];
        Assert.Equal(inOrder, inOrder.OrderBy(s => html.IndexOf($"id=\"{s}\"", StringComparison.Ordinal)));
        foreach (var link in new[] { "change/shop", "change/place", "change/person", "/access", "change/gear", "change/instrument", "/cars/new" })
            Assert.Contains($"{link}\"", html, StringComparison.Ordinal);
        Assert.Contains("href=\"/welcome\"", await browser.Text("/people-and-places"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_usual_hazards_and_rules_are_loaded_once()
    {
        await using var server = await Server.Empty();
        using var browser = server.Open();
        await browser.Post("/first", "/first", FirstOwner(server));
        await server.Does("ada", new SetHazard(new() { Id = "suspended-load", Name = "Load in the air", Sign = "W015", Ends = Domain.Hazards.HazardEnd.WithTheCondition }));
        var form = FormInPage.Of(await browser.Text("/welcome"), "form-usual");

        var answer = await form.Post(browser);
        var seq = server.Runner.State.Seq;
        await form.Post(browser);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var shop = server.Runner.State;
        Assert.Equal("Load in the air", shop.Hazards["suspended-load"].Name);
        Assert.Contains("load-over-people", shop.KeepApart.Keys);
        Assert.Contains("extraction", shop.Items.Keys);
        Assert.Equal(seq, shop.Seq);
        Assert.DoesNotContain("id=\"form-usual\"", await browser.Text("/welcome"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_the_owner_sets_the_shop_up()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("fritz");

        Assert.NotEqual(HttpStatusCode.OK, (await browser.Get("/welcome")).StatusCode);
        Assert.DoesNotContain("href=\"/welcome\"", await browser.Text("/people-and-places"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_has_no_pin_is_named()
    {
        await using var server = await Server.Start();
        await server.Does("ada", new SetPerson("runa", "Runa", Domain.Plans.Position.Technician));
        using var browser = await server.SignIn("ada");

        Assert.Contains("Without a PIN Runa cannot sign in.", await browser.Text("/welcome"), StringComparison.Ordinal);
        server.Service<PinBook>().Set("runa", Server.Pin);
        Assert.Contains("5 people; all but outside specialists have a PIN.", await browser.Text("/welcome"), StringComparison.Ordinal);
    }

    private static (string, string)[] FirstOwner(Server server) =>
        [("code", server.Service<FirstRun>().Code!), ("shop", "Tarn Lane"), ("zone", "Europe/London"), ("name", "Ada"), ("pin", "4711"), ("again", "4711")];
}

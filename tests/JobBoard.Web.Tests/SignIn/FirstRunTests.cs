using System.Net;
using JobBoard.Domain.Plans;
using JobBoard.Web.SignIn;

namespace JobBoard.Web.Tests.SignIn;

/// <summary>The owner of a new shop is made with the code from the console, once.</summary>
public class FirstRunTests
{
    [Fact]
    public async Task Every_page_leads_to_the_first_one()
    {
        await using var server = await Server.Empty();
        using var browser = server.Open();

        foreach (var page in new[] { "/", "/sign-in", "/floor", "/wall/abc", "/do/come-in" })
        {
            var answer = await browser.Get(page);
            Assert.Equal((HttpStatusCode.Redirect, "/first"), (answer.StatusCode, answer.Headers.Location?.ToString()));
        }
    }

    [Fact]
    public async Task The_code_makes_the_owner_once()
    {
        await using var server = await Server.Empty();
        using var browser = server.Open();
        var code = server.Service<FirstRun>().Code!;

        var made = await browser.Post("/first", "/first", Form(code));
        var page = await browser.Get("/access");
        var again = await browser.Get("/first");

        Assert.Equal(HttpStatusCode.Redirect, made.StatusCode);
        var owner = Assert.Single(server.Runner.State.People.Values);
        Assert.Equal(("ada-ohm", "Ada Öhm", Position.Owner), (owner.Id, owner.Name, owner.Position));
        Assert.Equal(("Tarn Lane", "Europe/London"), (server.Runner.State.Name, server.Runner.State.Zone));
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
        Assert.Null(server.Service<FirstRun>().Code);
    }

    [Fact]
    public async Task A_wrong_code_makes_nobody()
    {
        await using var server = await Server.Empty();
        using var browser = server.Open();

        var answer = await browser.Post("/first", "/first", Form("AAAA-AAAA"));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("That is not the code", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Empty(server.Runner.State.People);
    }

    [Fact]
    public async Task Every_field_that_is_wrong_is_named_and_kept()
    {
        await using var server = await Server.Empty();
        using var browser = server.Open();

        var answer = await browser.Post(
            "/first", "/first", ("code", server.Service<FirstRun>().Code!), ("shop", ""), ("zone", "Moon/Base"), ("name", "Ada"), ("pin", "1111"), ("again", "1"));
        var html = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        foreach (var words in new[] { "Type what the shop is called", "Choose a zone", "one digit over and over", "value=\"Ada\"", "value=\"Moon/Base\"" })
            Assert.Contains(words, html, StringComparison.Ordinal);
    }

    private static (string, string)[] Form(string code) =>
        [("code", code.ToLowerInvariant()), ("shop", "Tarn Lane"), ("zone", "Europe/London"), ("name", "Ada Öhm"), ("pin", "4711"), ("again", "4711")];
}

using System.Net;
using JobBoard.Web.Posting;
using Microsoft.Extensions.Primitives;

namespace JobBoard.Web.Tests.Pages;

/// <summary>Every screen for every position, over a shop with something on each; nothing is changed.</summary>
public sealed class ScreensTests(BusyShop shop) : IClassFixture<BusyShop>
{
    public static TheoryData<string, string> Everyone =>
        [.. from page in new[] { "/holds Holds", "/cars Plover", "/cars/plover Line", "/cars/plover/task/open-line Drain", "/cars/plover/task/pump-on Pump", "/cars/plover/items Fuel", "/cars/plover/readings Fall", "/parts Seal", "/snags rattle" }
            from person in Workshop.People
            select new TheoryDataRow<string, string>(page, person)];

    [Theory]
    [MemberData(nameof(Everyone))]
    public async Task A_screen_shows_what_there_is(string page, string person)
    {
        using var browser = await shop.Server.SignIn(person);
        var (path, expected) = (page.Split(' ')[0], page.Split(' ')[1]);

        var answer = await browser.Get(path);
        var html = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains(expected, html, StringComparison.Ordinal);
        Assert.DoesNotContain("{inga}", html, StringComparison.Ordinal);
        Assert.DoesNotContain(FormSeal.Blank, html, StringComparison.Ordinal);
        Assert.Equal(Ids(html).Order(), Ids(html).Distinct().Order());
    }

    [Theory]
    [MemberData(nameof(Everyone))]
    public async Task Forms_have_the_fields_of_their_commands(string page, string person)
    {
        using var browser = await shop.Server.SignIn(person);

        var forms = Workshop.Forms(await browser.Text(page.Split(' ')[0])).ToList();

        Assert.NotEmpty(forms.Concat(page.StartsWith("/cars ", StringComparison.Ordinal) || page.StartsWith("/cars/plover/readings", StringComparison.Ordinal) || person == "mirek" ? [("", [])] : []));
        foreach (var (kind, fields) in forms)
        {
            var (_, faults) = new CommandBinder(TimeZoneInfo.Utc).Bind(kind, fields.Distinct().Select(f => KeyValuePair.Create(f, new StringValues("1"))));
            Assert.DoesNotContain(faults, f => f.Words.Contains("does not have", StringComparison.Ordinal));
            Assert.DoesNotContain(faults, f => f.Words.Contains("is needed", StringComparison.Ordinal) && !f.Field.Contains("crew", StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("/cars/new")]
    [InlineData("/cars/plover/plan/new-task")]
    public async Task Plans_are_made_by_foreman_and_owner_only(string path)
    {
        var codes = new List<HttpStatusCode>();
        foreach (var person in new[] { "ada", "fritz", "inga", "mirek" })
        {
            using var browser = await shop.Server.SignIn(person);
            codes.Add((await browser.Get(path)).StatusCode);
        }

        Assert.Equal([HttpStatusCode.OK, HttpStatusCode.OK, HttpStatusCode.Redirect, HttpStatusCode.Redirect], codes);
    }

    [Theory]
    [InlineData("/cars/nightjar", "There is no such car in this shop.")]
    [InlineData("/cars/plover/task/nothing", "There is no such task in the plan of that car.")]
    [InlineData("/cars/nightjar/task/open-line", "There is no such task in the plan of that car.")]
    [InlineData("/nowhere", "There is nothing at this address.")]
    [InlineData("/wall/nobody", "This wall link does not open anything.")]
    public async Task What_is_not_there_is_said_on_a_page(string path, string words)
    {
        using var browser = await shop.Server.SignIn("fritz");

        var answer = await browser.Get(path);
        var html = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains(words, html, StringComparison.Ordinal);
        Assert.Contains("<h1>Not here</h1>", html, StringComparison.Ordinal);
    }

    private static List<string> Ids(string html) =>
        [.. System.Text.RegularExpressions.Regex.Matches(html, " id=\"([^\"]+)\"").Select(m => m.Groups[1].Value)];
}

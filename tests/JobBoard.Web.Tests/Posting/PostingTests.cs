using System.Net;
using System.Text.Json;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Work;
using JobBoard.Web.SignIn;

namespace JobBoard.Web.Tests.Posting;

/// <summary>Posted forms: token, sender, fields, PIN, and the answer with every reason.</summary>
public class PostingTests
{
    [Fact]
    public async Task Without_the_token_nothing_is_done()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");
        var head = server.Runner.State.Seq;

        var bare = await browser.PostBare("/do/go-out", [("person", "inga"), ("command", Guid.NewGuid().ToString())], json: true);
        using var other = await server.SignIn("sol");
        var theirs = await browser.PostBare(
            "/do/go-out", [("person", "inga"), ("command", Guid.NewGuid().ToString()), ("__RequestVerificationToken", await other.Token("/sign-in"))], json: true);

        Assert.Equal((HttpStatusCode.BadRequest, HttpStatusCode.BadRequest), (bare.StatusCode, theirs.StatusCode));
        Assert.Equal(head, server.Runner.State.Seq);
    }

    [Fact]
    public async Task A_command_sent_twice_changes_nothing_more()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");
        var id = Guid.CreateVersion7().ToString();

        var first = await Json(await browser.Command("start-task", [.. Start("inga"), ("command", id)]));
        var head = server.Runner.State.Seq;
        var second = await Json(await browser.Command("start-task", [.. Start("inga"), ("command", id)]));

        Assert.Equal("done", first.GetProperty("outcome").GetString());
        Assert.Equal(first.ToString(), second.ToString());
        Assert.Equal(head, server.Runner.State.Seq);
    }

    [Fact]
    public async Task A_refusal_lists_everything_with_names()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("sol");
        await server.Does("inga", new StartTask([new CrewMember("inga")]) { Car = "heron", Task = "a" });
        await server.Does("sol", new GoOut("sol"));

        var answer = await browser.Command("start-task", ("car", "heron"), ("task", "b"), ("crew[0].person", "sol"), ("crew[0].duty", "lead"));
        var said = await Json(answer);

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        var words = said.GetProperty("reasons").EnumerateArray().Select(r => r.GetProperty("words").GetString()!).ToList();
        Assert.Equal(2, words.Count);
        Assert.Contains(words, w => w.Contains("Fuel line", StringComparison.Ordinal));
        Assert.Contains(words, w => w.Contains("Sol", StringComparison.Ordinal));
        Assert.DoesNotContain("{sol}", said.ToString(), StringComparison.Ordinal);
        Assert.All(words, w => Assert.Contains(WebUtility.HtmlEncode(w), said.GetProperty("html").GetString(), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Every_bad_field_is_named_at_once()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("ada");

        var answer = await browser.Command("set-place", ("place.id", "bay-2"), ("place.name", "Bay 2"), ("place.area.x", "left"), ("place.area.y", "1"), ("place.area.width", "4"));
        var faults = (await Json(answer)).GetProperty("faults").EnumerateArray().Select(f => f.GetProperty("field").GetString());

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(["place.area.depth", "place.area.x", "place.kind"], faults.Order());
    }

    [Fact]
    public async Task Without_script_what_was_typed_is_shown_again()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");

        var answer = await browser.Post(
            "/do/sign-off-task", "/sign-in", ("car", "heron"), ("task", "a"), ("how", "half <done>"), ("command", Guid.NewGuid().ToString()));
        var html = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("half &lt;done&gt;", html, StringComparison.Ordinal);
        Assert.Contains("name=\"task\" value=\"a\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_script_done_leads_back()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");

        var answer = await browser.Post("/do/start-task", "/sign-in", [.. Start("inga"), ("back", "/bay"), ("command", Guid.NewGuid().ToString())]);

        Assert.Equal((HttpStatusCode.Redirect, "/bay"), (answer.StatusCode, answer.Headers.Location!.ToString()));
        Assert.Equal(WorkStatus.InHand, server.Runner.State.Cars["heron"].Tasks["a"].Status);
    }

    [Fact]
    public async Task What_changed_since_one_looked_is_refused_by_name()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("sol");
        var seen = server.Runner.State.Seq.ToString(System.Globalization.CultureInfo.InvariantCulture);
        await server.Does("inga", new StartTask([new CrewMember("inga")]) { Car = "heron", Task = "a" });

        var answer = await browser.Command("start-task", [.. Start("sol"), ("seen", seen)]);

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("Inga", (await Json(answer)).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_position_sends_only_what_is_its_own()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");

        var answer = await browser.Command("give-date", ("car", "heron"), ("date", "2026-12-01T12:00"), ("why", "asked"));

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Contains("foreman", (await Json(answer)).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_release_asks_for_the_pin_after_five_minutes()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("fritz");
        await server.Does("inga", new RaiseStop(Domain.Holds.StopScope.Car, "fuel weep") { Car = "heron" });
        var stop = Assert.Single(server.Runner.State.Stops).Key;
        await server.Does("inga", new MakeSafe(stop, "line closed"));
        server.Clock.Set(DateTimeOffset.UtcNow + SignInDesk.FreshFor + TimeSpan.FromSeconds(5));
        (string, string)[] release = [("stop", stop), ("why", "line changed"), ("evidence", "pressure test")];

        var asked = await browser.Command("release-stop", release);
        var wrong = await browser.Command("release-stop", [.. release, ("pin", "0000")]);
        Assert.Single(server.Runner.State.Stops);
        var right = await browser.Command("release-stop", [.. release, ("pin", Server.Pin)]);

        Assert.Equal("pin", (await Json(asked)).GetProperty("outcome").GetString());
        Assert.Contains("not the PIN", (await Json(wrong)).ToString(), StringComparison.Ordinal);
        Assert.Equal("done", (await Json(right)).GetProperty("outcome").GetString());
        Assert.Empty(server.Runner.State.Stops);
    }

    [Fact]
    public async Task How_long_ago_it_was_is_kept()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("inga");

        await browser.Command("raise-snag", ("car", "heron"), ("snag", "scratch"), ("words", "scratch on the sill"), ("ago", "3600000"));

        var snag = server.Runner.State.Cars["heron"].Snags["scratch"];
        Assert.InRange(server.Runner.Now - snag.RaisedAt, TimeSpan.FromMinutes(60), TimeSpan.FromMinutes(61));
    }

    [Fact]
    public async Task Pages_forbid_script_and_style_from_elsewhere()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("ada");

        var answer = await browser.Get("/access");
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        var html = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Contains("script-src 'self'; style-src 'self'", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotMatch("<script(?![^>]* src=)|<style|\\son[a-z]+=|\\sstyle=|(src|href)=\"(https?:)?//", html);
    }

    private static (string, string)[] Start(string person) =>
        [("car", "heron"), ("task", "a"), ("crew[0].person", person), ("crew[0].duty", "lead")];

    private static async Task<JsonElement> Json(HttpResponseMessage answer)
    {
        using var document = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        return document.RootElement.Clone();
    }
}

using System.Net;
using System.Text.Json;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;

namespace JobBoard.Web.Tests.Pages;

/// <summary>The plan screen's doors: what it asks while a plan is drawn up, making the change, and keeping templates.</summary>
public class PlanTests
{
    private static readonly Plan P = Workshop.Plan;

    private static Plan With(PlanTask task, params Link[] links) => P with { Tasks = [.. P.Tasks, task], Links = [.. P.Links, .. links] };

    private static PlanTask Task(string id) => new() { Id = id, Name = id, Stage = "s1", Estimate = new(60, 120, 180) };

    private static long At(Server server) => server.Runner.State.Cars[Workshop.Car].PlanAt;

    private static async Task<(HttpStatusCode Status, JsonElement Said)> Look(Browser browser, string what, Plan plan, params (string, string)[] fields)
    {
        var answer = await browser.Post("/plans/look/" + what, "/plans", [("plan", PlanReader.Write(plan)), .. fields]);
        return (answer.StatusCode, JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement);
    }

    private static string Field(JsonElement said) => said.GetProperty("faults")[0].GetProperty("field").GetString()!;

    [Theory]
    [InlineData("/cars/plover/plan", "data-car=\"plover\"")]
    [InlineData("/plans", "A new plan from nothing")]
    [InlineData("/plans/new", "A new plan")]
    [InlineData("/plans/mid-engine-v8", "data-template=\"mid-engine-v8\"")]
    public async Task The_foreman_opens_it_and_nobody_below(string path, string words)
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");
        using var inga = await server.SignIn("inga");

        Assert.Contains(words, await fritz.Text(path), StringComparison.Ordinal);
        Assert.NotEqual(HttpStatusCode.OK, (await inga.Get(path)).StatusCode);
        Assert.NotEqual(HttpStatusCode.OK, (await inga.Get("/plans/begin?car=plover")).StatusCode);
        Assert.NotEqual(HttpStatusCode.OK, (await Post(inga, "/plans/look/check", ("plan", "{}"))).StatusCode);
    }

    private static Task<HttpResponseMessage> Post(Browser browser, string path, params (string, string)[] fields) => browser.Post(path, "/sign-in", fields);

    [Fact]
    public async Task It_begins_with_the_plan_and_all_there_is_to_choose_from()
    {
        await using var server = await Workshop.Closing();
        using var fritz = await server.SignIn("fritz");

        var begun = JsonDocument.Parse(await fritz.Text("/plans/begin?car=plover")).RootElement;

        Assert.Equal(P.Tasks.Length, begun.GetProperty("plan").GetProperty("tasks").GetArrayLength());
        Assert.Equal(At(server), begun.GetProperty("planAt").GetInt64());
        Assert.Equal(["close-line", "open-line"], begun.GetProperty("begun").EnumerateArray().Select(b => b.GetString()));
        Assert.Equal("fuel-pressure", begun.GetProperty("hazards")[0].GetProperty("id").GetString());
        Assert.Equal("work", JsonDocument.Parse(await fritz.Text("/plans/begin")).RootElement.GetProperty("plan").GetProperty("stages")[0].GetProperty("id").GetString());
        Assert.Equal(HttpStatusCode.NotFound, (await fritz.Get("/plans/begin?car=nobody")).StatusCode);
        Assert.Equal("template", Field(JsonDocument.Parse(await fritz.Text("/plans/begin?template=none")).RootElement));
    }

    [Fact]
    public async Task A_check_tells_faults_with_their_places_and_repairs()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");
        var plan = With(Task("look") with { Needs = [new("lin", ["open"])] });

        var (status, said) = await Look(fritz, "check", plan, ("car", "plover"), ("of", At(server).ToString(System.Globalization.CultureInfo.InvariantCulture)));

        Assert.Equal(HttpStatusCode.OK, status);
        var fault = Assert.Single(said.GetProperty("faults").EnumerateArray());
        Assert.Equal(("tasks[3].needs[0].item", "unknown-id"), (fault.GetProperty("at").GetString(), fault.GetProperty("code").GetString()));
        Assert.Equal(["Make it “Fuel line”", "Add an item “Lin”"], fault.GetProperty("repairs").EnumerateArray().Select(r => r.GetString()));
        Assert.False(said.GetProperty("clean").GetBoolean());

        var mended = await Look(fritz, "mend", plan, ("code", "unknown-id"), ("at", "tasks[3].needs[0].item"), ("words", fault.GetProperty("words").GetString()!), ("number", "0"));
        Assert.Equal("line", mended.Said.GetProperty("plan").GetProperty("tasks")[3].GetProperty("needs")[0].GetProperty("item").GetString());
        var gone = await Look(fritz, "mend", P, ("code", "unknown-id"), ("at", "tasks[3]"), ("words", "x"), ("number", "0"));
        Assert.Equal((HttpStatusCode.Conflict, "number"), (gone.Status, Field(gone.Said)));
    }

    [Fact]
    public async Task A_check_tells_which_dates_move_and_whose_work_is_touched()
    {
        await using var server = await Workshop.Closing();
        using var fritz = await server.SignIn("fritz");
        var of = At(server).ToString(System.Globalization.CultureInfo.InvariantCulture);

        var (_, said) = await Look(fritz, "check", With(Task("flush"), new("pump-on", "flush"), new("flush", "leak-seen")), ("car", "plover"), ("of", of));
        var html = WebUtility.HtmlDecode(said.GetProperty("html").GetString()!);

        Assert.True(said.GetProperty("clean").GetBoolean(), html);
        Assert.Matches("Earliest ready: .+ later. It was", said.GetProperty("ready").GetString());
        Assert.Contains("2 dates move", html, StringComparison.Ordinal);
        Assert.Contains("Nobody’s work in hand is touched.", html, StringComparison.Ordinal);

        var (_, stop) = await Look(fritz, "check", With(Task("flush"), new Link("close-line", "flush")), ("car", "plover"), ("of", of));
        Assert.Contains("Inga has “Line closed” in hand: it gets a stop.", WebUtility.HtmlDecode(stop.GetProperty("html").GetString()!), StringComparison.Ordinal);

        var (_, lost) = await Look(fritz, "check", With(Task("wash") with { Needs = [new("line", ["closed"])] }, new Link("open-line", "wash")), ("car", "plover"), ("of", of));
        Assert.Contains("“wash” needs Fuel line closed, which it will not be any more.", WebUtility.HtmlDecode(lost.GetProperty("html").GetString()!), StringComparison.Ordinal);
        Assert.DoesNotContain("Cannot be reached", html, StringComparison.Ordinal);
        var (_, begun) = await Look(fritz, "check", P with { Tasks = P.Tasks.SetItem(1, P.Tasks[1] with { Name = "Other" }) }, ("car", "plover"), ("of", of));
        Assert.Contains("Line closed was begun: it stays as it is.", begun.GetProperty("html").GetString()!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bad_input_names_its_field()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");

        var of = await Look(fritz, "check", P, ("car", "plover"), ("of", "soon"));
        Assert.Equal((HttpStatusCode.UnprocessableEntity, "of"), (of.Status, Field(of.Said)));
        var car = await Look(fritz, "check", P, ("car", "nobody"), ("of", "1"));
        Assert.Equal((HttpStatusCode.NotFound, "car"), (car.Status, Field(car.Said)));
        var task = await Look(fritz, "reach", P, ("task", "none"));
        Assert.Equal((HttpStatusCode.UnprocessableEntity, "task"), (task.Status, Field(task.Said)));
        var what = await Look(fritz, "nothing", P);
        Assert.Equal((HttpStatusCode.NotFound, "what"), (what.Status, Field(what.Said)));
        var text = await fritz.Post("/plans/look/mend", "/plans", ("plan", "{ \"format\": "));
        Assert.Contains("plan.line 1", await text.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, (await fritz.PostBare("/plans/look/check", [("plan", "{}")])).StatusCode);
    }

    [Fact]
    public async Task A_number_that_is_none_is_told_at_its_field()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");
        var typed = PlanReader.Write(P).Replace("\"usual\": 60", "\"usual\": \"an hour\"", StringComparison.Ordinal);

        var answer = await fritz.Post("/plans/look/check", "/plans", ("plan", typed), ("car", "plover"), ("of", "1"));
        var said = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement.GetProperty("faults")[0];

        Assert.Equal(("tasks[0].estimate.usual", "\"an hour\" is not a whole number. Type digits only."), (said.GetProperty("at").GetString(), said.GetProperty("words").GetString()));
    }

    [Fact]
    public async Task A_table_is_previewed_and_what_needs_what_is_told()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");

        var (_, table) = await Look(fritz, "table", P, ("table", "task\tusual\tafter\nFlush\t1 h\tLine opened\nDry\tsoon\t\n"));
        Assert.Equal(1, table.GetProperty("good").GetInt32());
        Assert.Equal("task\tusual\tafter\nDry\tsoon\t", table.GetProperty("rest").GetString());
        Assert.Contains("is no time", table.GetProperty("html").GetString()!, StringComparison.Ordinal);

        var (_, reach) = await Look(fritz, "reach", With(Task("wash") with { Needs = [new("line", ["open"])] }), ("task", "close-line"), ("car", "plover"));
        Assert.Contains(reach.GetProperty("reached").EnumerateArray(), r => r.GetProperty("task").GetString() == "wash" && !r.GetProperty("isBefore").GetBoolean());
    }

    [Fact]
    public async Task A_stale_change_is_refused_with_what_changed_then_made_whole()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");
        var of = At(server).ToString(System.Globalization.CultureInfo.InvariantCulture);
        var mine = PlanReader.Write(With(Task("flush"), new Link("pump-on", "flush")));

        var empty = await fritz.Command("revise-plan", ("car", "plover"), ("of", of), ("plan", mine), ("why", " "));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, empty.StatusCode);
        Assert.Equal("why", Field(await Json(empty)));
        await server.Does("ada", new ChangePlan("a bracket is missing") { Car = "plover", Add = [Task("bracket")], AddLinks = [new("pump-on", "bracket")] });
        var stale = await fritz.Command("revise-plan", ("car", "plover"), ("of", of), ("plan", mine), ("why", "flush it first"));
        Assert.Equal(HttpStatusCode.Conflict, stale.StatusCode);
        Assert.Contains("changed since you looked, by Ada (a bracket is missing): “bracket” is added.", (await Json(stale)).GetProperty("reasons")[0].GetProperty("words").GetString(), StringComparison.Ordinal);

        var (_, merged) = await Look(fritz, "merge", With(Task("flush"), new Link("pump-on", "flush")), ("car", "plover"), ("origin", PlanReader.Write(P)));
        Assert.Empty(merged.GetProperty("both").EnumerateArray());
        var done = await fritz.Command("revise-plan", ("car", "plover"), ("of", merged.GetProperty("planAt").GetRawText()), ("plan", merged.GetProperty("plan").GetRawText()), ("why", "flush it first"));
        Assert.Equal(HttpStatusCode.OK, done.StatusCode);
        Assert.Equal(["open-line", "close-line", "pump-on", "flush", "bracket"], server.Runner.State.Cars[Workshop.Car].Plan.Tasks.Select(t => t.Id));
    }

    [Fact]
    public async Task A_template_is_kept_and_a_car_starts_from_it()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");

        var unnamed = await fritz.Command("save-template", ("plan", PlanReader.Write(P with { Id = "small-job", Name = "" })));
        Assert.Equal("plan.name", Field(await Json(unnamed)));
        Assert.Equal(HttpStatusCode.OK, (await fritz.Command("save-template", ("plan", PlanReader.Write(P with { Id = "small-job", Name = "Small job" })))).StatusCode);
        Assert.Contains("Kept by this shop. No faults today.", await fritz.Text("/plans"), StringComparison.Ordinal);
        Assert.Contains("<option value=\"small-job\" selected=\"selected\">Small job</option>", await fritz.Text("/cars/new?template=small-job"), StringComparison.Ordinal);

        var taken = await fritz.Post("/cars/new", "/cars/new", ("name", "Nightjar"), ("place", ""), ("template", "small-job"), ("text", ""), ("command", Guid.CreateVersion7().ToString()), ("seen", "999999"));
        Assert.Equal("/cars/nightjar", taken.Headers.Location?.ToString());
        Assert.Equal("small-job", server.Runner.State.Cars["nightjar"].Plan.Id);
    }

    private static async Task<JsonElement> Json(HttpResponseMessage answer) => JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement;
}

using System.Net;
using JobBoard.Domain.Plans;

namespace JobBoard.Web.Tests.Pages;

/// <summary>Taking a car in, and adding a task to its plan.</summary>
public class NewCarTests
{
    [Fact]
    public async Task A_plan_of_its_own_takes_a_car_in()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");

        var answer = await Send(fritz, "/cars/new", ("name", "Écurie No. 7"), ("place", ""), ("template", ""), ("text", PlanReader.Write(Workshop.Plan)));

        Assert.Equal((HttpStatusCode.Redirect, "/cars/ecurie-no-7"), (answer.StatusCode, answer.Headers.Location?.ToString()));
        Assert.Equal("Écurie No. 7", server.Runner.State.Cars["ecurie-no-7"].Name);
    }

    [Fact]
    public async Task Faults_are_all_listed_and_what_was_typed_is_kept()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");
        var faulty = Workshop.Plan with { Tasks = [Workshop.Plan.Tasks[0] with { Estimate = new(90, 60, 30) }, .. Workshop.Plan.Tasks[1..]], Parts = [] };

        var answer = await Send(fritz, "/cars/new", ("name", "Nightjar"), ("place", "bay-2"), ("template", ""), ("text", PlanReader.Write(faulty)));
        var html = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("2 faults:", html, StringComparison.Ordinal);
        Assert.Contains("at <code>tasks[0]", html, StringComparison.Ordinal);
        Assert.Contains("at <code>tasks[1].parts[0]", html, StringComparison.Ordinal);
        Assert.Contains("value=\"Nightjar\"", html, StringComparison.Ordinal);
        Assert.Contains("\"id\": \"line-job\"", html, StringComparison.Ordinal);
        Assert.False(server.Runner.State.Cars.ContainsKey("nightjar"));
    }

    [Fact]
    public async Task Text_that_is_no_plan_is_answered_with_its_place()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");

        var answer = await Send(fritz, "/cars/new", ("name", ""), ("place", ""), ("template", ""), ("text", "{ \"format\": "));
        var html = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Contains("line 1", html, StringComparison.Ordinal);
        Assert.Contains("Give the car a name", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refusal_is_shown_and_what_was_typed_is_kept()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");

        var answer = await Send(fritz, "/cars/new", ("name", "Nightjar"), ("place", "bay-2"), ("template", ""), ("text", PlanReader.Write(Workshop.Plan)));
        var html = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Contains("Bay 2 is taken.", html, StringComparison.Ordinal);
        Assert.Contains("value=\"Nightjar\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_without_its_token_takes_nothing_in()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");
        var before = server.Runner.State.Seq;

        var answer = await fritz.PostBare("/cars/new", [("name", "Nightjar"), ("text", PlanReader.Write(Workshop.Plan)), ("command", Guid.NewGuid().ToString())]);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(before, server.Runner.State.Seq);
    }

    [Fact]
    public async Task A_task_is_added_with_its_links()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");

        var answer = await Send(
            fritz, "/cars/plover/plan/new-task", ("name", "Line opened"), ("stage", "s1"), ("low", "10"), ("usual", "20"), ("high", "30"), ("place", "car"),
            ("qualification", ""), ("after", "open-line"), ("before", "close-line"), ("why", "second filter found"));

        Assert.Equal("/cars/plover/task/line-opened", answer.Headers.Location?.ToString());
        Assert.Contains(new Link("line-opened", "open-line"), server.Runner.State.Cars[Workshop.Car].Plan.Links);
        Assert.Contains(new Link("close-line", "line-opened"), server.Runner.State.Cars[Workshop.Car].Plan.Links);
    }

    [Fact]
    public async Task A_task_that_makes_a_circle_is_refused_with_its_fault()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");

        var answer = await Send(
            fritz, "/cars/plover/plan/new-task", ("name", "Look again"), ("stage", "s1"), ("low", "10"), ("usual", "20"), ("high", "30"), ("place", "car"),
            ("qualification", ""), ("after", "close-line"), ("before", "open-line"), ("why", "sure is sure"));
        var html = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("circle", html, StringComparison.Ordinal);
        Assert.Contains("value=\"Look again\"", html, StringComparison.Ordinal);
        Assert.Equal(Workshop.Plan.Tasks.Length, server.Runner.State.Cars[Workshop.Car].Plan.Tasks.Length);
    }

    private static async Task<HttpResponseMessage> Send(Browser browser, string path, params (string, string)[] fields) =>
        await browser.Post(path, path, [.. fields, ("command", Guid.CreateVersion7().ToString()), ("seen", "999999")]);
}

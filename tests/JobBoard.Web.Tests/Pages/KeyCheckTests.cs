using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Web.Tests.Pages;

/// <summary>May we turn the key? What the page says, to whom, and what can be tapped on it.</summary>
public class KeyCheckTests
{
    private const string Car = "siskin";
    private const string Page = "/cars/siskin/key-check";

    private static readonly Plan FirstStart = new()
    {
        Id = "first-start-job",
        Name = "First start",
        Stages = [new("fuel", "Fuel") { System = KeySystem.Fuel }, new("start", "Start") { System = KeySystem.PeopleAndPlace }],
        Tasks =
        [
            new() { Id = "leak-walk", Name = "Lines walked", Stage = "fuel", Estimate = new(10, 20, 30) },
            new() { Id = "first-start", Name = "First start", Stage = "start", Estimate = new(10, 20, 30) },
        ],
        Holds = [new() { Id = "key", Name = "Key check", Stage = "start", Asks = "Everything a go.", KeyCheck = true }],
        Links = [new("key", "leak-walk"), new("first-start", "key")],
    };

    [Fact]
    public async Task What_is_open_stands_under_its_system_and_in_order()
    {
        await using var server = await Open(walked: false);
        using var browser = await server.SignIn("fritz");

        var html = await browser.Text(Page);

        Assert.Contains("Lines walked is not done", html, StringComparison.Ordinal);
        Assert.Contains("Foreman's word: not yet", html.Replace("&#x27;", "'", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.False(Workshop.Offers(html, "release-hold"));
        Assert.Contains("it cannot say that it is safe", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_technician_answers_for_themselves_only()
    {
        await using var server = await Open();
        using var browser = await server.SignIn("sol");

        var html = await browser.Text(Page);
        var own = await browser.Command("answer-call", ("car", Car), ("hold", "key"), ("person", "sol"), ("go", "true"));
        var other = await browser.Command("answer-call", ("car", Car), ("hold", "key"), ("person", "inga"), ("go", "true"));

        Assert.Contains("call-go-sol", html, StringComparison.Ordinal);
        Assert.DoesNotContain("call-go-inga", html, StringComparison.Ordinal);
        Assert.True(own.IsSuccessStatusCode);
        Assert.False(other.IsSuccessStatusCode);
    }

    [Fact]
    public async Task A_no_without_a_reason_is_asked_for_one()
    {
        await using var server = await Open();
        using var browser = await server.SignIn("sol");

        var answer = await browser.Command("answer-call", ("car", Car), ("hold", "key"), ("person", "sol"), ("go", "false"));

        Assert.Contains("Say what is against it.", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_word_is_offered_once_everybody_called_go()
    {
        await using var server = await Open();
        using var foreman = await server.SignIn("fritz");
        foreach (var person in In(server)) await server.Does("fritz", new AnswerCall("key", person, true, null) { Car = Car });

        var before = await foreman.Text(Page);
        await server.Does("fritz", new ReleaseHold("key", "all go", "the call") { Car = Car });
        var after = await foreman.Text(Page);

        Assert.True(Workshop.Offers(before, "release-hold"));
        Assert.Contains("Given by Fritz", after, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_failed_start_is_said_with_what_it_undoes()
    {
        await using var server = await Open();
        foreach (var person in In(server)) await server.Does("fritz", new AnswerCall("key", person, true, null) { Car = Car });
        await server.Does("fritz", new ReleaseHold("key", "all go", "the call") { Car = Car });
        await server.Does("inga", new StartTask([new CrewMember("inga")]) { Car = Car, Task = "first-start" });
        using var browser = await server.SignIn("inga");

        var html = await browser.Text(Page);
        var answer = await browser.Command("fail-start", ("car", Car), ("hold", "key"), ("why", "petrol on the floor, stopped"), ("undo", "leak-walk"));

        Assert.Contains("value=\"leak-walk\"", html, StringComparison.Ordinal);
        Assert.True(answer.IsSuccessStatusCode);
        Assert.Contains("Lines walked has to be done again: petrol on the floor, stopped", await browser.Text(Page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_car_without_a_key_check_has_no_such_page()
    {
        await using var server = await Workshop.Open();
        using var browser = await server.SignIn("fritz");

        Assert.Equal(System.Net.HttpStatusCode.NotFound, (await browser.Get($"/cars/{Workshop.Car}/key-check")).StatusCode);
    }

    private static IEnumerable<string> In(Server server) => [.. server.Service<JobBoard.Shop.Running.ShopRunner>().State.People.Values.Where(p => p.IsIn).Select(p => p.Id)];

    private static async Task<Server> Open(bool walked = true)
    {
        var server = await Server.Start();
        await server.Does("ada", new SetPlace(new() { Id = "bay-9", Name = "Bay 9", Kind = "bay", Area = new(5, 0, 4, 6) }));
        await server.Does("fritz", new TakeInCar("Siskin pick-up", FirstStart, "bay-9") { Car = Car });
        if (!walked) return server;
        await server.Does("inga", new StartTask([new CrewMember("inga")]) { Car = Car, Task = "leak-walk" });
        await server.Does("inga", new SignOffTask { Car = Car, Task = "leak-walk" });
        return server;
    }
}

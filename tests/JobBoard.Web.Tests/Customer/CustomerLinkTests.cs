using System.Net;
using System.Net.Http.Headers;
using JobBoard.Domain.Commands;
using JobBoard.Web.Pages.Customer;
using JobBoard.Web.SignIn;
using JobBoard.Web.Tests.Pages;

namespace JobBoard.Web.Tests.Customer;

/// <summary>A customer's link shows one car, writes nothing, runs out and is withdrawn.</summary>
public class CustomerLinkTests
{
    private const string Car = Workshop.Car;

    [Fact]
    public async Task Shows_the_car_and_leaves_nothing_behind()
    {
        await using var server = await Workshop.Open();
        using var browser = server.Open();

        var answer = await browser.Get("/customer/" + Make(server));

        var html = await Html(answer);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("Your Plover saloon", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<form", html, StringComparison.Ordinal);
        Assert.Equal(0, browser.Cookies.Count);
        Assert.False(answer.Headers.Contains("Set-Cookie"));
        Assert.Equal(("no-referrer", "no-store", "noindex, nofollow"), (answer.Headers.GetValues("Referrer-Policy").Single(), answer.Headers.CacheControl!.ToString(), answer.Headers.GetValues("X-Robots-Tag").Single()));
    }

    [Fact]
    public async Task Unknown_expired_and_withdrawn_say_the_same()
    {
        await using var server = await Workshop.Open();
        var links = server.Service<CustomerLinks>();
        using var browser = server.Open();
        var (withdrawn, expired) = (Make(server), links.Make(Car, "soon over", server.Runner.Now.AddHours(1)));
        links.Withdraw(Car, links.Of(Car).Single(l => l.Token.Label == "the owner of it").Id);
        var unknown = await browser.Get("/customer/" + new string('A', 43));
        server.Clock.Hold(server.Runner.Now.AddHours(2));

        var answers = new[] { unknown, await browser.Get("/customer/" + withdrawn), await browser.Get("/customer/" + expired) };

        Assert.All(answers, a => Assert.Equal(HttpStatusCode.NotFound, a.StatusCode));
        var texts = await Task.WhenAll(answers.Select(Html));
        Assert.Contains(CustomerWords.Gone, texts[0], StringComparison.Ordinal);
        Assert.All(texts, t => Assert.Equal(texts[0], t));
        Assert.All(answers, a => Assert.Equal(Headers(unknown), Headers(a)));
        Assert.DoesNotContain(server.Runner.JournalId.ToString(), texts[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_token_is_kept_nowhere()
    {
        await using var server = await Workshop.Open();
        var token = Make(server);
        await server.Open().Get("/customer/" + token);

        foreach (var file in Directory.EnumerateFiles(server.Folder, "*", SearchOption.AllDirectories).Where(f => !f.EndsWith(".lock", StringComparison.Ordinal)))
        {
            await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            using var reader = new StreamReader(stream, System.Text.Encoding.Latin1);
            Assert.DoesNotContain(token, await reader.ReadToEndAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("POST")]
    [InlineData("PUT")]
    [InlineData("DELETE")]
    public async Task Nothing_is_written_through_it(string method)
    {
        await using var server = await Workshop.Open();
        var token = Make(server);
        var head = server.Runner.State.Seq;
        using var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = server.Url };
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        using var fields = new FormUrlEncodedContent([new("car", Car), new("words", "from outside"), new("command", Guid.NewGuid().ToString())]);

        using var own = new HttpRequestMessage(new HttpMethod(method), "/customer/" + token) { Content = fields };
        Assert.Equal(HttpStatusCode.MethodNotAllowed, (await client.SendAsync(own, TestContext.Current.CancellationToken)).StatusCode);
        foreach (var path in new[] { "/do/write-note", "/do/take-answer?access_token=" + token, $"/cars/{Car}/customer?handler=Link", "/access?handler=Wall" })
        {
            using var request = new HttpRequestMessage(new HttpMethod(method), path) { Content = new FormUrlEncodedContent([new("car", Car), new("words", "x")]) };
            request.Headers.Accept.ParseAdd("application/json");
            var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.True(method != "POST" || (int)answer.StatusCode >= 300, $"{path} was answered {answer.StatusCode}.");
        }

        Assert.Equal(head, server.Runner.State.Seq);
        Assert.Single(server.Service<CustomerLinks>().Of(Car));
    }

    [Fact]
    public async Task It_opens_no_other_page()
    {
        await using var server = await Workshop.Open();
        using var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = server.Url };
        var token = Make(server);
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);

        foreach (var path in new[] { "/", "/floor", "/bay", "/cars", "/cars/" + Car, $"/cars/{Car}/customer", "/holds", "/people-and-places" })
            Assert.Equal((path, HttpStatusCode.Redirect), (path, (await client.GetAsync($"{path}?access_token={token}", TestContext.Current.CancellationToken)).StatusCode));
    }

    [Fact]
    public async Task It_joins_its_own_page_and_nothing_else()
    {
        await using var server = await Workshop.Open();
        var links = server.Service<CustomerLinks>();
        var token = Make(server);
        links.Make("heron", "another", server.Runner.Now.AddDays(9));
        var (own, other) = (links.Of(Car).Single().Id, links.Of("heron").Single().Id);
        await using var feed = await RawFeed.Of(server, token);

        await feed.Join($"customer/{other}/page", "floor/floor", "floor/wall-alarm", "person/inga/alarm", $"car/{Car}/foreman/car-head", $"car/{Car}/technician/customer-preview", $"customer/{own}/page");
        var heard = await feed.Until(h => h.Contains("\"type\":3", StringComparison.Ordinal));

        Assert.Contains($"\"id\":\"customer/{own}/page\"", heard, StringComparison.Ordinal);
        Assert.Equal(2, heard.Split("\"html\":").Length);
        Assert.Equal(2, heard.Split("\"turn\":").Length);
    }

    [Fact]
    public async Task People_and_walls_join_no_customers_page()
    {
        await using var server = await Workshop.Open();
        Make(server);
        using var foreman = await server.SignIn("fritz");
        await using var feed = await Live.Feed.Of(server, foreman);

        Assert.Empty((await feed.Join($"customer/{server.Service<CustomerLinks>().Of(Car).Single().Id}/page")).Fragments);
    }

    [Fact]
    public async Task A_withdrawn_link_says_so_on_open_pages_and_ends_its_feed()
    {
        await using var server = await Workshop.Open();
        var links = server.Service<CustomerLinks>();
        var token = Make(server);
        await using var feed = await RawFeed.Of(server, token);
        await feed.Join($"customer/{links.Of(Car).Single().Id}/page");
        await feed.Until(h => h.Contains("Your Plover saloon", StringComparison.Ordinal));

        Assert.True(links.Withdraw(Car, links.Of(Car).Single().Id));

        await feed.Closed;
        Assert.Contains("data-gone", feed.Heard, StringComparison.Ordinal);
        await Assert.ThrowsAsync<System.Net.WebSockets.WebSocketException>(async () => await RawFeed.Of(server, token));
    }

    [Fact]
    public async Task A_link_that_runs_out_closes_its_feed()
    {
        await using var server = await Workshop.Open();
        var links = server.Service<CustomerLinks>();
        var token = links.Make(Car, "soon over", server.Runner.Now.AddHours(1));
        await using var feed = await RawFeed.Of(server, token);
        await feed.Join($"customer/{links.Of(Car).Single().Id}/page");
        await feed.Until(h => h.Contains("Your Plover saloon", StringComparison.Ordinal));

        server.Clock.Hold(server.Runner.Now.AddHours(2));

        await feed.Closed;
        await Assert.ThrowsAsync<System.Net.WebSockets.WebSocketException>(async () => await RawFeed.Of(server, token));
    }

    [Fact]
    public async Task The_foreman_makes_it_and_withdraws_it()
    {
        await using var server = await Workshop.Open();
        var links = server.Service<CustomerLinks>();
        using var foreman = await server.SignIn("fritz");
        var path = $"/cars/{Car}/customer";
        var until = server.Runner.Now.AddDays(20).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

        var made = await Html(await foreman.Post(path + "?handler=Link", path, ("label", "Them"), ("until", until)));
        var address = System.Text.RegularExpressions.Regex.Match(made, "id=\"new-link\" value=\"([^\"]+)\"").Groups[1].Value;
        Assert.Contains("data:image/png;base64,", made, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await server.Open().Get(new Uri(address).AbsolutePath)).StatusCode);
        Assert.DoesNotContain(new Uri(address).Segments[^1], await foreman.Text(path), StringComparison.Ordinal);

        Assert.False(links.Withdraw("heron", links.Of(Car).Single().Id));
        await foreman.Post(path + "?handler=Withdraw", path, ("link", links.Of(Car).Single().Id));
        Assert.Empty(links.Of(Car));
        Assert.Equal(HttpStatusCode.NotFound, (await server.Open().Get(new Uri(address).AbsolutePath)).StatusCode);
    }

    [Theory]
    [InlineData("", "2030-01-01", "Say whom it is for")]
    [InlineData("Them", "2020-01-01", "Give a day from today")]
    [InlineData("Them", "soon", "Give a day from today")]
    public async Task A_link_that_makes_no_sense_is_not_made(string label, string until, string words)
    {
        await using var server = await Workshop.Open();
        using var foreman = await server.SignIn("fritz");
        var path = $"/cars/{Car}/customer";

        var answer = await Html(await foreman.Post(path + "?handler=Link", path, ("label", label), ("until", until)));

        Assert.Contains(words, answer, StringComparison.Ordinal);
        Assert.Contains($"value=\"{until}\"", answer, StringComparison.Ordinal);
        Assert.Empty(server.Service<CustomerLinks>().Of(Car));
    }

    [Theory]
    [InlineData("inga")]
    [InlineData("mirek")]
    public async Task Technicians_do_not_give_links_out(string person)
    {
        await using var server = await Workshop.Open();
        using var browser = await server.SignIn(person);

        Assert.Equal(HttpStatusCode.Redirect, (await browser.Get($"/cars/{Car}/customer")).StatusCode);
        await browser.Post($"/cars/{Car}/customer?handler=Link", "/bay", ("label", "Them"), ("until", "2030-01-01"));
        Assert.Empty(server.Service<CustomerLinks>().Of(Car));
    }

    [Fact]
    public async Task The_forms_of_the_desk_say_what_the_customer_sees()
    {
        await using var server = await Workshop.Open();
        using var foreman = await server.SignIn("fritz");
        using var customer = server.Open();
        var page = "/customer/" + Make(server);
        await server.Does("inga", new WriteNote("The engine is in.") { Car = Car, ForCustomer = true });
        var note = server.Runner.State.Cars[Car].Notes[0].Seq;
        Assert.DoesNotContain("The engine is in.", await customer.Text(page), StringComparison.Ordinal);

        await Send($"form-note-{note}");
        await Send("form-ask", ("words", "Silencer: quiet or sporty?"), ("by", "2030-12-04"));
        await Send("form-date", ("date", "2030-12-07T16:00"), ("why", "as agreed"));
        await Send("form-date", ("date", "2030-12-10T16:00"), ("wordsForCustomer", "The lift needed more preparation."));
        var html = await customer.Text(page);
        await Send("form-answer-silencer-quiet-or-sporty", ("answer", "quiet"));

        foreach (var words in new[] { "The engine is in.", "Silencer: quiet or sporty?", "by Wednesday 4 December 2030", "Tuesday 10 December 2030", "The lift needed more preparation." }) Assert.Contains(words, html, StringComparison.Ordinal);
        Assert.DoesNotContain("as agreed", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Silencer", await customer.Text(page), StringComparison.Ordinal);

        async Task Send(string form, params (string, string)[] typed)
        {
            var answer = await FormInPage.Of(await foreman.Text($"/cars/{Car}/customer"), form).Fill(typed).Post(foreman);
            Assert.Equal((form, HttpStatusCode.Redirect), (form, answer.StatusCode));
        }
    }

    private static string Make(Server server) => server.Service<CustomerLinks>().Make(Car, "the owner of it", server.Runner.Now.AddDays(30));

    private static Task<string> Html(HttpResponseMessage answer) => answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

    private static string Headers(HttpResponseMessage answer) =>
        string.Join('\n', answer.Headers.Where(h => h.Key != "Date").Select(h => $"{h.Key}: {string.Join(' ', h.Value)}").Order(StringComparer.Ordinal));
}

using System.Net;
using System.Text.RegularExpressions;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Running;
using JobBoard.Web.Hosting;
using JobBoard.Web.SignIn;
using JobBoard.Web.Verbs;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace JobBoard.Web.Tests;

/// <summary>A real server on a port of its own, over a data folder of a test's own.</summary>
internal sealed class Server : IAsyncDisposable
{
    public const string Pin = "4711";

    private readonly string _folder;
    private readonly RunningShop _shop;
    private readonly WebApplication _app;

    private Server(string folder, ShopClock clock, RunningShop shop, WebApplication app) => (_folder, Clock, _shop, _app) = (folder, clock, shop, app);

    /// <summary>The system's time as the server sees it.</summary>
    public ShopClock Clock { get; }

    public ShopRunner Runner => _shop.Runner;

    public string Folder => _folder;

    public Uri Url => new(_app.Urls.First());

    public T Service<T>()
        where T : notnull => _app.Services.GetRequiredService<T>();

    /// <summary>An empty shop: the first run.</summary>
    public static async Task<Server> Empty()
    {
        var folder = Directory.CreateTempSubdirectory("jobboard-test-").FullName;
        var clock = new ShopClock(TimeProvider.System);
        var shop = RunningShop.Open(folder, clock);
        var app = BoardHost.Build(shop, new ListenAddress("127.0.0.1", 0));
        await app.StartAsync(TestContext.Current.CancellationToken);
        return new(folder, clock, shop, app);
    }

    /// <summary>A shop with an owner, a foreman and two technicians, all with the same PIN, and one car with two tasks.</summary>
    public static async Task<Server> Start()
    {
        var server = await Empty();
        await server.Does("ada", new SetPerson("ada", "Ada", Position.Owner));
        await server.Does("ada", new SetPerson("fritz", "Fritz", Position.Foreman));
        await server.Does("ada", new SetPerson("inga", "Inga", Position.Technician));
        await server.Does("ada", new SetPerson("sol", "Sol", Position.Technician));
        await server.Does("ada", new SetPlace(new() { Id = "bay-1", Name = "Bay 1", Kind = "bay", Area = new(0, 0, 4, 6) }));
        foreach (var person in new[] { "ada", "fritz", "inga", "sol" })
        {
            await server.Does(person, new ComeIn(person));
            server.Service<PinBook>().Set(person, Pin);
        }

        await server.Does("fritz", new TakeInCar("Heron coupe", TwoTasks, "bay-1") { Car = "heron" });
        return server;
    }

    public async Task Does(string actor, Command command)
    {
        var outcome = await Runner.Send(new Envelope(Guid.CreateVersion7(), actor, Runner.Now, null, command));
        Assert.IsType<Outcome.Accepted>(outcome);
    }

    public Browser Open() => new(Url);

    public async Task<Browser> SignIn(string person)
    {
        var browser = Open();
        var answer = await browser.Post("/sign-in", "/sign-in?person=" + person, ("person", person), ("pin", Pin));
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return browser;
    }

    public async ValueTask DisposeAsync()
    {
        await _app.DisposeAsync();
        await _shop.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    private static Plan TwoTasks => new()
    {
        Id = "p",
        Name = "p",
        Stages = [new("s", "Stage")],
        Tasks = [new() { Id = "a", Name = "Fuel line", Stage = "s", Estimate = new(30, 60, 90) }, new() { Id = "b", Name = "Leak test", Stage = "s", Estimate = new(30, 60, 90) }],
        Links = [new("b", "a")],
    };
}

/// <summary>A browser without script: cookies, forms and their tokens.</summary>
internal sealed partial class Browser : IDisposable
{
    private readonly HttpClientHandler _handler = new() { AllowAutoRedirect = false };
    private readonly HttpClient _client;

    public Browser(Uri url) => _client = new HttpClient(_handler) { BaseAddress = url };

    public CookieContainer Cookies => _handler.CookieContainer;

    public Task<HttpResponseMessage> Get(string path) => _client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);

    public async Task<string> Text(string path) => await (await Get(path)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

    /// <summary>The antiforgery token of a page.</summary>
    public async Task<string> Token(string page) => TokenIn(await Text(page));

    public static string TokenIn(string html) => MetaToken().Match(html).Groups[1].Value;

    /// <summary>Posts fields with the token of a page.</summary>
    public async Task<HttpResponseMessage> Post(string path, string page, params (string Name, string Value)[] fields) =>
        await PostBare(path, [.. fields, ("__RequestVerificationToken", await Token(page))]);

    /// <summary>Posts fields as they are.</summary>
    public async Task<HttpResponseMessage> PostBare(string path, (string Name, string Value)[] fields, bool json = false)
    {
        using var content = new FormUrlEncodedContent(fields.Select(f => KeyValuePair.Create(f.Name, f.Value)));
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(path, UriKind.Relative)) { Content = content };
        if (json) request.Headers.Accept.ParseAdd("application/json");
        return await _client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    /// <summary>Sends a command as the script does.</summary>
    public async Task<HttpResponseMessage> Command(string kind, params (string Name, string Value)[] fields)
    {
        var all = fields.ToList();
        if (all.All(f => f.Name != "command")) all.Add(("command", Guid.CreateVersion7().ToString()));
        all.Add(("__RequestVerificationToken", await Token("/sign-in")));
        return await PostBare("/do/" + kind, [.. all], json: true);
    }

    public void Dispose()
    {
        _client.Dispose();
        _handler.Dispose();
    }

    [GeneratedRegex("<meta name=\"antiforgery\" content=\"([^\"]+)\"")]
    private static partial Regex MetaToken();
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Shop.Demo;
using JobBoard.Shop.Templates;
using JobBoard.Storage.Folder;
using JobBoard.Web.Hosting;
using JobBoard.Web.Live;
using JobBoard.Web.Paper;
using JobBoard.Web.SignIn;

namespace JobBoard.Web.Verbs;

/// <summary><c>jobboard serve</c>: the shop, until it is told to end.</summary>
internal static class ServeVerb
{
    private const string DemoCustomersCar = "heron-coupe";

    public static async Task<int> Run(Options options, TextWriter output)
    {
        var demo = options.Has("demo");
        var listen = Listen(options, demo);
        var paper = PaperTimes.Read(options["paper-at"]);
        var pace = DemoPace.Read(options["demo-pace"], demo);
        await using var folder = demo ? ThrowAwayFolder.Make() : null;
        await using var shop = RunningShop.Open(folder?.Path ?? options["data"] ?? DataFolder.DefaultPath, TimeProvider.System);
        var pins = demo ? await LoadDemo(shop).ConfigureAwait(false) : null;
        await using var app = BoardHost.Build(shop, listen, paper);
        var links = pins is null ? default : KeepPins(app.Services, pins);
        await app.Services.GetRequiredService<Fragments>().WarmUp().ConfigureAwait(false);
        await app.StartAsync().ConfigureAwait(false);
        await Say(output, app, shop, listen).ConfigureAwait(false);
        if (pins is not null) await SayDemo(output, app, shop.Runner.State, pins, links).ConfigureAwait(false);
        await using var playing = pace is { } fast ? DemoPace.Play(app, shop, Demo, fast) : null;
        if (playing is not null) await output.WriteLineAsync($"A scripted crew plays it on, {pace} times as fast as the clock.").ConfigureAwait(false);
        await app.WaitForShutdownAsync().ConfigureAwait(false);
        return 0;
    }

    private static ListenAddress Listen(Options options, bool demo)
    {
        var listen = options["listen"] is { } text ? ListenAddress.Read(text) : ListenAddress.Usual;
        if (!demo) return listen;
        if (options.Has("data")) throw new CommandLineException("--demo uses a throw-away folder: leave --data out.");
        if (!listen.IsLoopback) throw new CommandLineException("--demo listens on this machine only: give --listen a loopback address or leave it out.");
        return listen.OrFree();
    }

    private static DemoShop Demo => new(SeedData.Folder, new TemplateShelf(SeedData.Templates).Find);

    private static Task<ImmutableSortedDictionary<string, string>> LoadDemo(RunningShop shop) => Demo.Load(shop.Runner, shop.Clock);

    private static (string Wall, string Customer) KeepPins(IServiceProvider services, ImmutableSortedDictionary<string, string> pins)
    {
        var book = services.GetRequiredService<PinBook>();
        foreach (var (person, pin) in pins) book.Set(person, pin);
        var until = services.GetRequiredService<TimeProvider>().GetUtcNow().AddDays(30);
        return (services.GetRequiredService<WallLinks>().Make("the demo's wall"), services.GetRequiredService<CustomerLinks>().Make(DemoCustomersCar, "the demo's customer", until));
    }

    private static async Task Say(TextWriter output, WebApplication app, RunningShop shop, ListenAddress listen)
    {
        foreach (var url in app.Urls) await output.WriteLineAsync($"Job Board at {url}").ConfigureAwait(false);
        await output.WriteLineAsync($"Data in {shop.Folder}").ConfigureAwait(false);
        if (!listen.IsLoopback)
            await output.WriteLineAsync("Plain HTTP beyond this machine: PINs and everything else can be read on that network. Use it on one you trust only.").ConfigureAwait(false);
        if (app.Services.GetRequiredService<FirstRun>().Code is { } code)
            await output.WriteLineAsync($"No owner can sign in yet. Open {app.Urls.First()}/first and type this code, once: {code}").ConfigureAwait(false);
        await output.FlushAsync().ConfigureAwait(false);
    }

    private static async Task SayDemo(TextWriter output, WebApplication app, ShopState state, ImmutableSortedDictionary<string, string> pins, (string Wall, string Customer) links)
    {
        await output.WriteLineAsync($"A made-up shop: {state.Name}. Its folder is deleted when the server ends. Sign in as").ConfigureAwait(false);
        foreach (var (person, pin) in pins)
        {
            var position = state.People.TryGetValue(person, out var known) ? known.Position.ToString().ToLowerInvariant() : "unknown";
            await output.WriteLineAsync($"  {state.NameOf(person),-10} {position,-10} PIN {pin}").ConfigureAwait(false);
        }

        await output.WriteLineAsync($"Customer's page: {app.Urls.First()}/customer/{links.Customer}").ConfigureAwait(false);
        await output.WriteLineAsync($"Wall: {app.Urls.First()}/wall/{links.Wall}").ConfigureAwait(false);
        await output.FlushAsync().ConfigureAwait(false);
    }
}

using System.Collections.Immutable;
using System.Net;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Dates;
using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Customer;
using JobBoard.Web.SignIn;
using JobBoard.Web.Tests.Pages;

namespace JobBoard.Web.Tests.Customer;

/// <summary>What stays in the shop never reaches the customer: every word of the shop that is not theirs is a canary.</summary>
public class CustomerCanaryTests
{
    private const string Canary = "canaryq";
    private const string Figure = "918273";

    [Fact]
    public async Task Nothing_of_the_state_but_what_is_theirs_is_rendered()
    {
        await using var server = await Busy();
        var planter = new Planter(s => Canary + s);
        var planted = planter.Of(server.Runner.State) with { Zone = server.Runner.State.Zone };
        Assert.True(planter.Planted > 500 && planter.Members.Count > 100, $"{planter.Planted} strings in {planter.Members.Count} members");

        var html = await Rendered(server, Theirs(planted, server.Runner.State));

        Assert.DoesNotContain(Canary, html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(Figure, html, StringComparison.Ordinal);
        foreach (var word in Told) Assert.Contains(word, WebUtility.HtmlDecode(html), StringComparison.Ordinal);
    }

    /// <summary>Each word that is theirs is seen when it is a canary: a page that renders nothing would not pass.</summary>
    [Fact]
    public async Task A_canary_among_what_is_theirs_is_noticed()
    {
        await using var server = await Busy();
        var state = server.Runner.State;
        var planted = new Planter(s => Canary + s).Of(state) with { Zone = state.Zone };
        var theirs = Theirs(planted, state);
        var (car, caged) = (theirs.Cars[Car], planted.Cars[Car]);

        foreach (var one in new[]
        {
            theirs with { Name = planted.Name }, theirs with { Phone = planted.Phone }, theirs with { Mail = planted.Mail },
            With(car with { Name = caged.Name }), With(car with { Notes = caged.Notes }), With(car with { Asks = caged.Asks }), With(car with { DatesGiven = caged.DatesGiven }),
            With(car with { Plan = car.Plan with { Stages = caged.Plan.Stages } }), With(car with { Plan = car.Plan with { Holds = [.. car.Plan.Holds.Select(h => h with { CustomerWords = Canary })] } }),
        })
        {
            Assert.Contains(Canary, await Rendered(server, one), StringComparison.Ordinal);
        }

        ShopState With(CarBoard changed) => theirs with { Cars = theirs.Cars.SetItem(Car, changed) };
    }

    [Fact]
    public async Task No_canary_reaches_page_frames_or_headers()
    {
        await using var server = await Server.Start();
        await CanaryShop.Plant(server);
        var links = server.Service<CustomerLinks>();
        var token = links.Make(CanaryShop.Car, CanaryShop.Word("for whom"), server.Runner.Now.AddDays(9));
        using var browser = server.Open();
        await using var feed = await RawFeed.Of(server, token);
        await feed.Join($"customer/{Assert.Single(links.Of(CanaryShop.Car)).Id}/page");
        await feed.Until(h => h.Contains("Plover saloon", StringComparison.Ordinal));

        await CanaryShop.Work(server);
        var heard = await feed.Until(h => h.Contains("The sill is sound.", StringComparison.Ordinal) && h.Contains($"\"seq\":{server.Runner.State.Seq},", StringComparison.Ordinal));
        var page = await browser.Get("/customer/" + token);
        var html = await page.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        var headers = string.Join('\n', page.Headers.Concat(page.Content.Headers).Select(h => $"{h.Key}: {string.Join(' ', h.Value)}"));
        using var foreman = await server.SignIn("fritz");

        // Changes in between are one push: there may be but one.
        Assert.True(heard.Split("\"target\":\"fragment\"").Length > 1, "Nothing was pushed.");
        foreach (var (where, text) in new[] { ("page", html), ("headers", headers), ("frames", heard) })
        {
            Assert.False(text.Contains(CanaryShop.Bird, StringComparison.OrdinalIgnoreCase), $"A canary in the {where}.");
            Assert.False(text.Contains("Heron", StringComparison.OrdinalIgnoreCase), $"Another car in the {where}.");
            Assert.False(text.Contains("737.25", StringComparison.Ordinal), $"A limit in the {where}.");
        }

        Assert.Contains("The sill is sound.", html, StringComparison.Ordinal);
        Assert.Contains(CanaryShop.Bird, await foreman.Text("/cars/" + CanaryShop.Car), StringComparison.OrdinalIgnoreCase);
    }

    private const string Car = Canary + Workshop.Car;

    private static readonly string[] Told = ["Tarn Lane", "Plover saloon", "+49 30 5550137", "office@tarn.example", "Line seen to", "Which filter?", "We wait for a seal.", "Please agree in writing.", "The line is open."];

    /// <summary>A shop in which everything is under way that the screens know.</summary>
    private static async Task<Server> Busy()
    {
        var server = await Workshop.Closing();
        await server.Does("ada", new SetShop("Tarn Lane", "Europe/Berlin", [], []));
        await server.Does("ada", new SetContact("+49 30 5550137", "office@tarn.example"));
        await server.Does("ada", new SetGear(new() { Id = "hoist", Name = "Hoist", Kind = "hoist", RatedKg = 1000, Sweep = new(0, 0, 4, 8) }));
        await server.Does("ada", new SetInstrument(new() { Id = "gauge", Name = "Gauge", Unit = "kPa", Uncertainty = 1 }));
        await server.Does("inga", new LogReading("fall", "99", "kPa") { Car = Workshop.Car, Task = "close-line" });
        await server.Does("sol", new RaiseStop(StopScope.Car, "fuel weep") { Car = Workshop.Car });
        await server.Does("sol", new RaiseSnag("sill", "scratch") { Car = Workshop.Car });
        await server.Does("inga", new WriteNote("seal looks old") { Car = Workshop.Car, Task = "close-line" });
        await server.Does("inga", new WriteNote("may be shown one day") { Car = Workshop.Car, ForCustomer = true });
        await server.Does("fritz", new WriteNote("The line is open.") { Car = Workshop.Car, ForCustomer = true });
        await server.Does("fritz", new GiveDate(server.Runner.Now.AddDays(9), "at take-in") { Car = Workshop.Car });
        await server.Does("fritz", new GiveDate(server.Runner.Now.AddDays(12), "supplier late") { Car = Workshop.Car, WordsForCustomer = "We wait for a seal." });
        await server.Does("fritz", new AskCustomer("filter", "Which filter?") { Car = Workshop.Car });
        await server.Does("fritz", new AskCustomer("colour", "Which colour?") { Car = Workshop.Car });
        await server.Does("fritz", new TakeAnswer("colour", "blue, and they grumbled") { Car = Workshop.Car });
        return server;
    }

    /// <summary>The planted state with what is the customer's put back.</summary>
    private static ShopState Theirs(ShopState planted, ShopState state)
    {
        var (car, real) = (planted.Cars[Car], state.Cars[Workshop.Car]);
        var plan = car.Plan with
        {
            Stages = [.. car.Plan.Stages.Select((s, i) => s with { CustomerName = i == 0 ? "Line seen to" : "", Name = i == 0 ? s.Name : "Pump" })],
            Holds = [.. car.Plan.Holds.Select((h, i) => h with { CustomerWords = i == 0 ? "Please agree in writing." : null })],
            Links = [.. car.Plan.Links.Where(l => l.Task != car.Plan.Holds[0].Id)],
        };
        var theirs = car with
        {
            Name = real.Name,
            Plan = plan,
            Notes = [.. car.Notes.Select((n, i) => n.Chosen ? n with { Words = real.Notes[i].Words } : n)],
            Asks = car.Asks.ToImmutableSortedDictionary(a => a.Key, a => a.Value.IsOpen ? a.Value with { Words = real.Asks[a.Key[Canary.Length..]].Words } : a.Value, StringComparer.Ordinal),
            DatesGiven = [.. car.DatesGiven.Select((d, i) => d with { WordsForCustomer = real.DatesGiven[i].WordsForCustomer })],
        };
        return planted with { Name = state.Name, Phone = state.Phone, Mail = state.Mail, Cars = planted.Cars.SetItem(Car, theirs) };
    }

    private static Task<string> Rendered(Server server, ShopState state)
    {
        var picture = new Picture(state, new Head(server.Runner.JournalId, state.Seq, server.Runner.Now), server.Service<DateBook>());
        return server.Service<Markup>().Render<CustomerScreen>(new Dictionary<string, object?> { ["View"] = CustomerMapping.Of(picture, Car) });
    }
}

using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Demo;
using JobBoard.Shop.Running;
using JobBoard.Shop.Templates;
using JobBoard.Web.Hosting;
using JobBoard.Web.Live;
using JobBoard.Web.Verbs;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace JobBoard.Web.Tests.Live;

/// <summary>Two shops with the same commands at the same times: one goes on, one is stopped hard and opened again in between.</summary>
public class RestartTests(ITestOutputHelper output)
{
    private const int Stops = 3;

    [Fact]
    public async Task Screens_say_the_same_after_hard_stops()
    {
        var script = await Script();
        await using var on = Screens.Open();
        await using var stopped = Screens.Open();
        for (var part = 0; part < Stops; part++)
        {
            foreach (var (envelope, at) in script[(script.Count * part / Stops)..(script.Count * (part + 1) / Stops)])
            {
                await on.Send(envelope, at);
                await stopped.Send(envelope, at);
            }

            await stopped.StopHard();
            stopped.SetNow(script[(script.Count * (part + 1) / Stops) - 1].At);
            var texts = await on.Texts();
            output.WriteLine($"{texts.Count} fragments, {texts.Values.Sum(t => t.Length)} characters");
            Assert.Equal(texts, await stopped.Texts());
            Assert.All(["floor/floor", "person/inga/bay"], id => Assert.NotEmpty(texts[id]));
        }
    }

    /// <summary>The demo's people and things, and a day of one car.</summary>
    private static async Task<List<(Envelope Envelope, DateTimeOffset At)>> Script()
    {
        var seed = Path.GetFullPath(Path.Combine(Sources.Web, "..", "..", "seed-data"));
        var shelf = new TemplateShelf(Path.Combine(seed, "plans"));
        var monday = new DateTimeOffset(2026, 3, 2, 7, 0, 0, TimeSpan.Zero);
        var shop = new ShopInMemory();
        await new DemoShop(seed, shelf.Find).SetUp(shop.Door, monday, monday);
        Assert.Empty(shop.Send(new(Guid.NewGuid(), "oskar", monday, null, new TakeInCar("A car", shelf.Find("mid-engine-v8")!, "bay-1") { Car = "heron" })));
        await new ScriptedCrew(shop.Door, new() { Cars = [new("heron")] }, monday).CarryOn(monday.AddHours(7));
        return shop.Accepted;
    }

    /// <summary>A shop and all that its screens show, in a folder of its own.</summary>
    private sealed class Screens : IAsyncDisposable
    {
        private string _folder = Directory.CreateTempSubdirectory("jobboard-test-").FullName;
        private RunningShop _shop;
        private WebApplication _app;

        private Screens() => (_shop, _app) = Start();

        public static Screens Open() => new();

        public void SetNow(DateTimeOffset at) => _shop.Clock.Hold(at);

        public async Task Send(Envelope envelope, DateTimeOffset at)
        {
            SetNow(at);
            Assert.IsType<Outcome.Accepted>(await _shop.Runner.Send(envelope));
        }

        /// <summary>Goes on from the files as they lie while the shop runs: what a killed process leaves.</summary>
        public async Task StopHard()
        {
            var left = Directory.CreateTempSubdirectory("jobboard-test-").FullName;
            foreach (var name in new[] { "shop.db", "shop.db-wal" }) File.Copy(Path.Combine(_folder, name), Path.Combine(left, name));
            await DisposeAsync();
            _folder = left;
            (_shop, _app) = Start();
        }

        /// <summary>Every fragment for everybody, by its id.</summary>
        public async Task<SortedDictionary<string, string>> Texts()
        {
            var fragments = _app.Services.GetRequiredService<Fragments>();
            var picture = fragments.Picture();
            var texts = new SortedDictionary<string, string>(StringComparer.Ordinal);
            foreach (var id in _app.Services.GetServices<IFragment>().SelectMany(f => Ids(f, picture))) texts.Add(id.ToString(), await fragments.Render(id, picture));
            return texts;
        }

        public async ValueTask DisposeAsync()
        {
            await _app.DisposeAsync();
            await _shop.DisposeAsync();
            Directory.Delete(_folder, recursive: true);
        }

        private (RunningShop, WebApplication) Start()
        {
            var shop = RunningShop.Open(_folder, TimeProvider.System);
            return (shop, BoardHost.Build(shop, new ListenAddress("127.0.0.1", 0)));
        }

        private static IEnumerable<FragmentId> Ids(IFragment fragment, Picture picture) =>
            from audience in Audiences(fragment.Audience, picture)
            from subject in fragment is ISubjectFragment ? Subjects(picture) : [null]
            select new FragmentId(audience, fragment.Name, subject);

        private static IEnumerable<Audience> Audiences(AudienceKind kind, Picture picture) => kind switch
        {
            AudienceKind.Floor => [Audience.Floor],
            AudienceKind.Person => picture.Shop.People.Keys.Select(Audience.OfPerson),
            _ => picture.Shop.Cars.Keys.SelectMany(car => new[] { Position.Technician, Position.Foreman }.Select(p => Audience.OfCar(car, p))),
        };

        private static IEnumerable<string?> Subjects(Picture picture) =>
            picture.Shop.Cars.Values.SelectMany(c => c.Plan.Stages.Take(4).Select(s => s.Id).Concat(c.Plan.Tasks.Take(8).Select(t => t.Id)));
    }
}

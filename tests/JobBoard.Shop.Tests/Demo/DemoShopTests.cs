using JobBoard.Domain.Rules;
using JobBoard.Shop.Demo;
using JobBoard.Shop.Running;
using JobBoard.Shop.Templates;
using JobBoard.Storage;
using JobBoard.Storage.Journal;

namespace JobBoard.Shop.Tests.Demo;

/// <summary>Seed files go through the same door as people's commands.</summary>
public sealed class DemoShopTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("jobboard-test-").FullName;

    [Fact]
    public async Task Loads_commands_at_their_times()
    {
        Write("1-people.json", """
            { "now": "2026-11-24T14:07", "zone": "Europe/Berlin", "pins": { "ada": "4711" }, "commands": [
              { "at": "-3d 08:00", "actor": "ada", "kind": "set-person", "person": "ada", "name": "Ada", "position": "owner" } ] }
            """);
        Write("2-day.json", """[ { "at": "-10m", "actor": "ada", "kind": "come-in", "person": "ada", "occurred": "-20m" } ]""");

        await Load(async (demo, runner, clock) =>
        {
            var pins = await demo.Load(runner, clock);

            Assert.Equal("4711", pins["ada"]);
            Assert.Equal(At("2026-11-24T12:47Z"), runner.State.People["ada"].InSince);
            Assert.Equal(At("2026-11-24T12:57Z"), runner.State.RecordedAt);
            Assert.InRange(runner.Now, At("2026-11-24T13:07Z"), At("2026-11-24T13:08Z"));
        });
    }

    [Theory]
    [InlineData("""[ { "at": "-1m", "actor": "ada", "kind": "come-in", "person": "ada" } ]""", "1.json, command 1 (come-in) was refused")]
    [InlineData("""[ { "at": "-1m", "actor": "ada", "kind": "come-in" } ]""", "person")]
    [InlineData("""[ { "actor": "ada", "kind": "come-in" } ]""", "'at' is missing")]
    [InlineData("""[ { "at": "-1m", "actor": "ada", "kind": "take-in-car", "car": "heron", "name": "Heron", "plan": "none" } ]""", "'none'")]
    [InlineData("[ nonsense", "1.json")]
    public async Task Says_where_a_seed_file_is_wrong(string json, string named)
    {
        Write("1.json", json);

        await Load(async (demo, runner, clock) =>
        {
            var error = await Assert.ThrowsAsync<DemoException>(() => demo.Load(runner, clock));

            Assert.Contains(named, error.Message, StringComparison.Ordinal);
        });
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private async Task Load(Func<DemoShop, ShopRunner, ShopClock, Task> check)
    {
        using var database = ShopDatabase.Open(Path.Combine(_folder, "shop.db"));
        using var journal = SqliteJournal.Open(database, "shop");
        var clock = new ShopClock(TimeProvider.System);
        await using var runner = ShopRunner.Start(journal, RuleBook.Full, clock);
        await check(new DemoShop(_folder, new TemplateShelf(Path.Combine(_folder, "plans"))), runner, clock);
    }

    private void Write(string name, string json) => File.WriteAllText(Path.Combine(_folder, name), json);

    private static DateTimeOffset At(string text) => DateTimeOffset.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}

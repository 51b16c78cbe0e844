using JobBoard.Domain.Boards;
using JobBoard.Domain.Rules;
using JobBoard.Shop.Demo;
using JobBoard.Shop.Running;
using JobBoard.Storage;
using JobBoard.Storage.History;
using JobBoard.Storage.Journal;
using Microsoft.Extensions.Time.Testing;

namespace JobBoard.Shop.Tests.Demo;

/// <summary>Seed files go through the same door as people's commands, and what is wrong in them is named.</summary>
public sealed class DemoLoadingTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 3, 4, 9, 30, 0, TimeSpan.Zero);

    private readonly string _folder = Directory.CreateTempSubdirectory("jobboard-test-").FullName;

    [Fact]
    public async Task Day_book_of_the_demo_folds_to_the_scene()
    {
        var memory = new ShopInMemory();
        await Seeds.Demo.Load(memory.Door, Now);

        await Running(async (runner, clock, journal) =>
        {
            var pins = await Seeds.Demo.Load(runner, clock);

            Assert.Equal("4711", pins["marit"]);
            Assert.Equal(memory.State.Seq, runner.State.Seq);
            Assert.Equal(Now, runner.Now);
            Assert.Equal(Tasks(memory.State), Tasks(DayBook.Fold(journal)));
        });
    }

    [Theory]
    [InlineData("scene", """{ "at": "-1m", "actor": "oskar", "kind": "come-in", "person": "nobody" }""", "scene 1 was refused")]
    [InlineData("scene", """{ "at": "-1m", "actor": "oskar", "kind": "come-in" }""", "person")]
    [InlineData("scene", """{ "at": "-1m", "kind": "come-in", "person": "oskar" }""", "'actor' is missing")]
    [InlineData("scene", """{ "at": "yesterday", "actor": "oskar", "kind": "come-in", "person": "oskar" }""", "'yesterday'")]
    [InlineData("meanwhile", """{ "at": "-2h", "actor": "oskar", "kind": "take-in-car", "car": "heron", "name": "Heron", "plan": "none" }""", "'none'")]
    [InlineData("cars", "{ nonsense", "cars.json")]
    public async Task Says_where_a_seed_file_is_wrong(string where, string json, string named)
    {
        WriteDemo(where, json);

        var error = await Assert.ThrowsAsync<DemoException>(() => new DemoShop(_folder, Seeds.Plan).Load(new ShopInMemory().Door, Now));

        Assert.Contains(named, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Car_not_where_it_is_to_stand_is_named()
    {
        WriteDemo("cars", """{ "car": "heron", "name": "Heron", "plan": "mid-engine-v8", "place": "bay-1", "takenIn": "-4h", "by": "oskar" }""");

        var error = await Assert.ThrowsAsync<DemoException>(() => new DemoShop(_folder, Seeds.Plan).Load(new ShopInMemory().Door, Now));

        Assert.Contains("heron/hold-handover", error.Message, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static IEnumerable<string> Tasks(ShopState shop) => shop.Cars.Values.SelectMany(c => c.Tasks.Values.Select(t => $"{c.Id}/{t.Id} {t.Status} {t.WorkEndedAt:O}"));

    private async Task Running(Func<ShopRunner, ShopClock, SqliteJournal, Task> check)
    {
        using var database = ShopDatabase.Open(Path.Combine(_folder, "shop.db"));
        using var journal = SqliteJournal.Open(database, "shop", Histories.All);
        var clock = new ShopClock(new FakeTimeProvider(Now));
        await using var runner = ShopRunner.Start(journal, RuleBook.Full, clock);
        await check(runner, clock, journal);
    }

    /// <summary>The real shop, with cars of the test's own: one wrong thing in one list.</summary>
    private void WriteDemo(string where, string json)
    {
        foreach (var file in Directory.GetFiles(Seeds.Folder, "*.json", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(_folder, Path.GetRelativePath(Seeds.Folder, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        string List(string name) => name == where ? json : "";
        File.WriteAllText(
            Path.Combine(_folder, "demo", "cars.json"),
            $$"""{ "seed": 1, "workUntil": "-80m", "cars": [ {{List("cars")}} ], "meanwhile": [ {{List("meanwhile")}} ], "scene": [ {{List("scene")}} ] }""");
    }
}

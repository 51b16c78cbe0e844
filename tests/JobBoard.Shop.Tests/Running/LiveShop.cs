using System.Text.Json;
using System.Text.Json.Nodes;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Shop.Running;
using JobBoard.Storage;
using JobBoard.Storage.History;
using JobBoard.Storage.Journal;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;

namespace JobBoard.Shop.Tests.Running;

/// <summary>A running shop over a file of a test's own: a foreman-owner, two technicians, one bay.</summary>
internal sealed class LiveShop : IAsyncDisposable
{
    public static readonly DateTimeOffset Monday = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);

    private readonly string _folder = Directory.CreateTempSubdirectory("jobboard-test-").FullName;
    private int _number;

    private LiveShop() => (Database, Journal, Runner) = Open();

    public FakeTimeProvider Clock { get; } = new(Monday);

    public ShopDatabase Database { get; private set; }

    public SqliteJournal Journal { get; private set; }

    public ShopRunner Runner { get; private set; }

    public ShopState State => Runner.State;

    public static async Task<LiveShop> Start()
    {
        var shop = new LiveShop();
        await shop.Does("ada", new SetPerson("ada", "Ada", Position.Owner));
        await shop.Does("ada", new SetPerson("inga", "Inga", Position.Technician));
        await shop.Does("ada", new SetPerson("sol", "Sol", Position.Technician));
        await shop.Does("ada", new SetPlace(new() { Id = "bay-1", Name = "Bay 1", Kind = "bay", Area = new(0, 0, 4, 6) }));
        foreach (var person in new[] { "ada", "inga", "sol" }) await shop.Does(person, new ComeIn(person));
        return shop;
    }

    public async Task<LiveShop> WithCar(Plan plan)
    {
        await Does("ada", new TakeInCar("Heron coupe", plan, "bay-1") { Car = "heron" });
        return this;
    }

    public static PlanTask Task(string id, int minutes = 60) => new() { Id = id, Name = id, Stage = "s", Estimate = new(minutes, minutes, minutes * 2) };

    public static Plan Plan(params PlanTask[] tasks) => new() { Id = "p", Name = "p", Stages = [new("s", "Stage")], Tasks = [.. tasks] };

    public static StartTask Begin(string task, string person) => new([new CrewMember(person)]) { Car = "heron", Task = task };

    public Guid NextId() => new(++_number, 0, 0, new byte[8]);

    public Envelope Letter(string actor, Command command, long? seen = null, Guid? id = null) =>
        new(id ?? NextId(), actor, Runner.Now, seen, command);

    public Task<Outcome> Send(string actor, Command command, long? seen = null) => Runner.Send(Letter(actor, command, seen));

    public async Task<Outcome.Accepted> Does(string actor, Command command) => Assert.IsType<Outcome.Accepted>(await Send(actor, command));

    /// <summary>Kills nothing half-way: closes the shop and starts it again from its file.</summary>
    public async Task Restart()
    {
        await Close();
        (Database, Journal, Runner) = Open();
    }

    /// <summary>Keeps the writer busy at its next commit until disposed, so that what is sent meanwhile waits and is one group.</summary>
    public async Task<IDisposable> HoldWriter()
    {
        var gate = new Gate(Runner);
        await Does("ada", State.People["ada"].IsIn ? new GoOut("ada") : new ComeIn("ada"));
        return gate;
    }

    public SqliteConnection Raw()
    {
        var connection = new SqliteConnection($"Data Source={Path.Combine(_folder, "shop.db")};Pooling=False");
        connection.Open();
        return connection;
    }

    /// <summary>Everything in the state but what can be taken back, one text per meaning.</summary>
    public static string Picture(ShopState state) =>
        Sorted(JsonSerializer.SerializeToNode(state with { Recent = [] }, PlanJson.Options))!.ToJsonString();

    public async ValueTask DisposeAsync()
    {
        await Close();
        Directory.Delete(_folder, recursive: true);
    }

    private async Task Close()
    {
        await Runner.DisposeAsync();
        Journal.Dispose();
        Database.Dispose();
    }

    private (ShopDatabase, SqliteJournal, ShopRunner) Open()
    {
        var database = ShopDatabase.Open(Path.Combine(_folder, "shop.db"));
        var journal = SqliteJournal.Open(database, "shop", Histories.All);
        return (database, journal, ShopRunner.Start(journal, RuleBook.Full, Clock));
    }

    private static JsonNode? Sorted(JsonNode? node) => node switch
    {
        JsonObject o => new JsonObject(o.OrderBy(p => p.Key, StringComparer.Ordinal).Select(p => KeyValuePair.Create(p.Key, Sorted(p.Value)))),
        JsonArray a => new JsonArray([.. a.Select(Sorted)]),
        null => null,
        _ => node.DeepClone(),
    };

    private sealed class Gate : IDisposable
    {
        private readonly ShopRunner _runner;
        private readonly ManualResetEventSlim _open = new();

        public Gate(ShopRunner runner)
        {
            _runner = runner;
            runner.HeadMoved += Wait;
        }

        public void Dispose()
        {
            _runner.HeadMoved -= Wait;
            _open.Set();
        }

        private void Wait() => _open.Wait(TimeSpan.FromSeconds(20));
    }
}

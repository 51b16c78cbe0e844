using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Shop.Demo;
using JobBoard.Shop.Running;
using JobBoard.Storage;
using JobBoard.Storage.History;
using JobBoard.Storage.Journal;

namespace JobBoard.Shop.Tests.Demo;

/// <summary>The demo played on: the whole way to a first start, beside people who do as they like.</summary>
public sealed class PacedCrewTests(ITestOutputHelper output) : IAsyncDisposable
{
    private const string Car = "siskin-pick-up";
    private const int Pace = 60;
    private static readonly DateTimeOffset Wednesday = new(2026, 3, 4, 9, 30, 0, TimeSpan.Zero);

    private readonly string _folder = Directory.CreateTempSubdirectory("jobboard-test-").FullName;
    private readonly CancellationTokenSource _ending = new();
    private ShopDatabase? _database;
    private SqliteJournal? _journal;
    private ShopRunner? _runner;

    private ShopRunner Runner => _runner!;

    private CarBoard Siskin => Runner.State.Cars[Car];

    [Theory]
    [InlineData("2026-03-04T09:30Z")]
    [InlineData("2026-03-07T02:10Z")]
    public async Task First_start_comes_within_ten_minutes_at_sixty(string begins)
    {
        var now = DateTimeOffset.Parse(begins, System.Globalization.CultureInfo.InvariantCulture);
        var (clock, system) = await Load(now);

        var report = await Crew(clock, system);

        output.WriteLine($"{report.Commands} commands, {clock.GetUtcNow() - now} of the shop's time, {system.GetUtcNow() - now} of people's");
        Assert.True(Siskin.Tasks["first-start"] is { Status: WorkStatus.SignedOff, Lapsed: false });
        Assert.InRange(system.GetUtcNow() - now, TimeSpan.FromMinutes(2), TimeSpan.FromMinutes(10));
        Assert.Equal(1, clock.Pace);
        Assert.Equal(report.Commands, report.Kinds.Values.Sum());
        foreach (var kind in new[] { "start-task", "log-reading", "sign-off-task", "second-check", "release-hold", "answer-call", "hear-stop" }) Assert.True(report.Kinds.ContainsKey(kind), kind);
    }

    [Fact]
    public async Task A_stop_by_somebody_else_is_heard_and_waited_for()
    {
        var (clock, system) = await Load(Wednesday);
        var playing = Crew(clock, system);
        await system.Until(() => Siskin.Tasks["controller-mount"].Status == WorkStatus.InHand);
        await Send("petra", new RaiseStop(StopScope.Car, "Smell of fuel in bay 5") { Car = Car });
        var stop = Runner.State.Stops.Values.Single(s => s.RaisedBy == "petra").Id;
        await system.Until(() => Runner.State.Stops[stop].Told.All(t => t.Value is not null || !Runner.State.People[t.Key].IsIn));
        var (done, from) = (Done(), clock.GetUtcNow());
        await system.For(TimeSpan.FromMinutes(2));

        Assert.False(playing.IsCompleted);
        Assert.Equal(done, Done());
        Assert.Null(Runner.State.Stops[stop].Safe);
        Assert.InRange(clock.GetUtcNow() - from, TimeSpan.FromMinutes(119), TimeSpan.FromMinutes(155)); // the half hour is lunch, skipped

        await Send("oskar", new MakeSafe(stop, "A cap was off a can; closed, wiped, aired")
        {
            Answers = [.. Stopping.InScope(Runner.State, Runner.State.Stops[stop]).DistinctBy(d => d.Key).Select(d => new HazardAnswer(d.Key, false))],
            Items = new Dictionary<string, string> { [Car + "/charger"] = "off" }.ToImmutableSortedDictionary(StringComparer.Ordinal),
        });
        await Send("marit", new ReleaseStop(stop, "No more smell", "Walked round it twice"));
        system.GoOn();
        await playing;
        Assert.True(Siskin.Tasks["first-start"].Counts);
    }

    [Fact]
    public async Task Work_that_somebody_else_took_is_left_to_them()
    {
        var (clock, system) = await Load(Wednesday);
        await Send("petra", new ComeIn("petra"));
        var loaded = Runner.State.Seq;
        var playing = Crew(clock, system);
        await system.Until(() => Runner.State.Seq > loaded);

        await Send("petra", new StartTask([new("petra")]) { Car = Car, Task = "controller-mount" });
        await system.For(TimeSpan.FromMinutes(3));

        Assert.Equal(["petra"], Siskin.Tasks["controller-mount"].Crew.Select(m => m.Person));
        Assert.Equal(WorkStatus.InHand, Siskin.Tasks["controller-mount"].Status);
        await Send("petra", new SignOffTask { Car = Car, Task = "controller-mount" });
        system.GoOn();
        await playing;
        Assert.True(Siskin.Tasks["first-start"].Counts);
    }

    [Fact]
    public async Task A_no_in_the_call_is_not_talked_over()
    {
        var (clock, system) = await Load(Wednesday);
        var playing = Crew(clock, system);
        await system.Until(() => !Siskin.Call.IsEmpty);
        await Send("mirek", new AnswerCall("hold-key-check", "mirek", false, "I do not see the extinguisher") { Car = Car });
        await system.For(TimeSpan.FromMinutes(1));

        Assert.Equal(WorkStatus.NotStarted, Siskin.Tasks["first-start"].Status);
        Assert.False(Siskin.Call[CallAnswer.Key("hold-key-check", "mirek")].Go);
        await Send("mirek", new AnswerCall("hold-key-check", "mirek", true, null) { Car = Car });
        system.GoOn();
        await playing;
        Assert.True(Siskin.Tasks["first-start"].Counts);
    }

    public async ValueTask DisposeAsync()
    {
        await _ending.CancelAsync();
        if (_runner is not null) await _runner.DisposeAsync();
        _journal?.Dispose();
        _database?.Dispose();
        _ending.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private string Done() => string.Join(" ", Siskin.Tasks.Values.Where(t => t.Counts).Select(t => t.Id));

    private Task<CrewReport> Crew(ShopClock clock, PassingTime system) =>
        Task.Run(() => new PacedCrew(Runner, clock, system).Play(Seeds.Demo.CarryOn(), Pace, _ending.Token));

    private Envelope Letter(string actor, Command command) => new(Guid.CreateVersion7(), actor, Runner.Now, null, command);

    private async Task Send(string actor, Command command)
    {
        var outcome = await Runner.Send(Letter(actor, command));
        Assert.True(outcome is Outcome.Accepted, outcome is Outcome.Refused refused ? string.Join("; ", refused.Reasons.Select(r => r.Words)) : outcome.ToString());
    }

    private async Task<(ShopClock Clock, PassingTime System)> Load(DateTimeOffset now)
    {
        _database = ShopDatabase.Open(Path.Combine(_folder, "shop.db"));
        _journal = SqliteJournal.Open(_database, "shop", Histories.All);
        var system = new PassingTime(now);
        var clock = new ShopClock(system);
        _runner = ShopRunner.Start(_journal, RuleBook.Full, clock);
        await Seeds.Demo.Load(_runner, clock);
        return (clock, system);
    }
}

using System.Collections.Immutable;
using System.Text.Json;
using Dapper;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Work;
using JobBoard.Storage.History;

namespace JobBoard.Storage.Tests.History;

/// <summary>The shop's own history: given entries, then rows.</summary>
public sealed class HistoriesTests : IDisposable
{
    private const string Car = "car-1";

    private readonly ShopFile _file = new([.. Histories.All]);

    private HistoryReader Reader => new(_file.Database);

    public void Dispose()
    {
        // Whatever a test did, the tables built anew say the same as those that were kept in step.
        try
        {
            var live = Everything();
            _file.Journal.RebuildHistory();
            Assert.Equal(live, Everything());
        }
        finally
        {
            _file.Dispose();
        }
    }

    [Fact]
    public void Each_person_of_a_crew_has_hours_from_start_to_sign_off()
    {
        Record(10, Started("lift", "p-1", "p-2"));
        Record(70, SignedOff("lift"));

        Assert.Equal([("p-1", 10, 70), ("p-2", 10, 70)], Hours());
    }

    [Fact]
    public void Who_joins_or_leaves_has_hours_of_their_own()
    {
        Record(10, Started("lift", "p-1"));
        Record(20, new CrewJoined(new("p-2", "signals"), true) { Car = Car, Task = "lift" });
        Record(30, new CrewLeft("p-1", true, 20) { Car = Car, Task = "lift" });
        Record(40, PartDone("lift"));
        Record(50, Started("lift", "p-1"));

        Assert.Equal([("p-1", 10, 30), ("p-2", 20, 40), ("p-1", 50, null)], Hours());
        Assert.Equal("signals", Reader.Work(0, 100, "p-2").Single().Duty);
    }

    [Fact]
    public void An_end_on_one_task_leaves_the_others_going()
    {
        Record(10, Started("lift", "p-1"));
        Record(10, Started("charge", "p-1"));
        Record(20, SignedOff("charge"));

        Assert.Equal([("p-1", 10, null), ("p-1", 10, 20)], Hours());
    }

    [Fact]
    public void A_start_taken_back_counts_in_no_hours()
    {
        var start = Record(10, Started("lift", "p-1"));
        Record(11, new TakenBack(start, []));

        Assert.Empty(Hours());
    }

    [Fact]
    public void An_end_taken_back_goes_on_as_if_it_had_not_been()
    {
        Record(10, Started("lift", "p-1"));
        var end = Record(20, SignedOff("lift"));
        Record(21, new TakenBack(end, []));
        Assert.Equal([("p-1", 10, null)], Hours());

        Record(60, SignedOff("lift"));

        Assert.Equal([("p-1", 10, 60)], Hours());
    }

    [Fact]
    public void A_change_of_task_taken_back_restores_the_first()
    {
        Record(10, Started("lift", "p-1"));
        var change = Record(20, PartDone("lift"), Started("wire", "p-1"));
        Record(21, new TakenBack(change, []));

        Assert.Equal([("p-1", 10, null)], Hours());
        Assert.Equal("lift", Reader.Work(0, 100).Single().Task);
    }

    [Fact]
    public void Work_is_asked_for_by_span_person_car_and_task()
    {
        Record(10, Started("lift", "p-1"));
        Record(20, SignedOff("lift"));
        Record(30, Started("wire", "p-2"));

        Assert.Empty(Reader.Work(20, 30));
        Assert.Equal("lift", Reader.Work(19, 30).Single().Task);
        Assert.Equal("wire", Reader.Work(500, 600).Single().Task);
        Assert.Equal("wire", Reader.Work(0, 100, person: "p-2").Single().Task);
        Assert.Equal("lift", Reader.Work(0, 100, car: Car, task: "lift").Single().Task);
        Assert.Empty(Reader.Work(0, 100, car: "car-2"));
    }

    [Fact]
    public void A_reading_is_kept_as_typed_with_its_verdict()
    {
        Record(10, Logged("12,40", Verdict.TooCloseToCall));

        var row = Reader.Readings(Car, "leak", "pressure").Single();

        Assert.Equal(("12,40", "bar", "too-close-to-call", "gauge-1", "p-1"), (row.ValueText, row.Unit, row.Verdict, row.Instrument, row.Person));
        Assert.Equal((1L, 10L, true), (row.Seq, row.OccurredAt, row.Late));
    }

    [Fact]
    public void Readings_older_than_the_disturbance_lapse_once()
    {
        Record(10, Logged("1"));
        Record(30, Lapsed(30));
        Record(40, Logged("3"));
        Record(20, Logged("late"));
        Record(40, Lapsed(40));

        Assert.Equal([(3, null), (4, 5L), (1, 2L)], Readings(r => r.LapsedSeq));
    }

    [Fact]
    public void A_reading_taken_back_stands_for_nothing()
    {
        Record(10, Logged("1"));
        var mistake = Record(20, Logged("2"));
        Record(21, new TakenBack(mistake, []));
        Record(30, Lapsed(30));

        Assert.Equal([(2, 3L), (1, null)], Readings(r => r.TakenBackSeq));
        Assert.Equal([(2, null), (1, 4L)], Readings(r => r.LapsedSeq));
    }

    [Fact]
    public void A_lapse_and_a_release_can_be_taken_back()
    {
        Record(10, Logged("1", Verdict.Out));
        var release = Record(20, new ReadingReleased("pressure", 1, "seen by eye") { Car = Car, Task = "leak" });
        var lapse = Record(30, Lapsed(30));
        Assert.Equal([(1, 2L)], Readings(r => r.ReleasedSeq));
        Assert.Equal([(1, 3L)], Readings(r => r.LapsedSeq));

        Record(31, new TakenBack(lapse, []));
        Record(32, new TakenBack(release, []));

        Assert.Equal([(1, null)], Readings(r => r.LapsedSeq));
        Assert.Equal([(1, null)], Readings(r => r.ReleasedSeq));
    }

    [Fact]
    public void Who_did_what_is_told_newest_first_by_page()
    {
        Record(10, new PersonNamed("p-9", "Someone Invented"), new PersonCameIn("p-9"));
        var start = Record(20, Started("lift", "p-1"));
        Record(21, new TakenBack(start, []));

        Assert.Equal(
            [(4, "taken-back", null, null, null), (3, "task-started", Car, "lift", 4), (2, "person-came-in", null, null, null)],
            Reader.WhoDidWhat(3).Select(d => (d.Seq, d.Kind, d.Car, d.Task, d.TakenBackSeq)));
        Assert.Equal([2L, 1], Reader.WhoDidWhat(3, beforeSeq: 3).Select(d => d.Seq));
        Assert.Equal("p-9", Reader.WhoDidWhat(9)[^1].Subject);
        Assert.Equal([3L], Reader.WhoDidWhat(9, car: Car).Select(d => d.Seq));
        Assert.Empty(Reader.WhoDidWhat(9, actor: "p-7"));
    }

    [Fact]
    public void A_name_never_reaches_the_history_tables()
    {
        Record(10, new PersonNamed("p-9", "Quetzalcoatlus"));

        Assert.Contains(Everything(), line => line.Contains("person-named", StringComparison.Ordinal));
        Assert.DoesNotContain(Everything(), line => line.Contains("Quetzalcoatlus", StringComparison.Ordinal));
    }

    [Fact]
    public void An_entry_of_a_newer_program_is_not_taken()
    {
        Assert.Throws<UnknownEntryException>(() => _file.Append("shop", "{}"));

        Assert.Equal(0, _file.Journal.Head());
    }

    [Fact]
    public void A_restart_changes_nothing()
    {
        Record(10, Started("lift", "p-1"));
        Record(20, Logged("1"));
        var before = Everything();
        Assert.Contains(before, line => line.Contains("\"person\":\"p-1\"", StringComparison.Ordinal));

        _file.Reopen([.. Histories.All]);

        Assert.Equal(before, Everything());
    }

    private Guid Record(long at, params Fact[] facts)
    {
        var command = ShopFile.Command();
        using var group = _file.Journal.BeginGroup();
        group.Append(command, [.. facts.Select(f => new Storage.Journal.NewEntry(
            f.Stream, EntryKinds.KindOf(f), EntryKinds.SchemaOf(EntryKinds.KindOf(f)), EntryKinds.Write(f), "p-1", at, command.CommandId))]);
        group.Commit();
        return command.CommandId;
    }

    private List<(string Person, long From, long? To)> Hours() =>
        [.. Reader.Work(0, 1000).Select(w => (w.Person, w.StartedAt, w.EndedAt))];

    private List<(long Seq, long? Told)> Readings(Func<ReadingRow, long?> told) => [.. Reader.Readings(Car).Select(r => (r.Seq, told(r)))];

    private List<string> Everything()
    {
        using var reader = _file.Database.OpenReader();
        return [.. Histories.All.SelectMany(p => p.Tables).SelectMany(
            table => reader.Query($"SELECT * FROM history_{table.Name} ORDER BY seq").Select(row => table.Name + JsonSerializer.Serialize(row)))];
    }

    private static TaskStarted Started(string task, params string[] people) =>
        new([.. people.Select(p => new CrewMember(p))], null, [], true, [], []) { Car = Car, Task = task };

    private static TaskLeftPartDone PartDone(string task) => new(null, Nothing, 0, Loads) { Car = Car, Task = task };

    private static TaskSignedOff SignedOff(string task) => new(Nothing, false, 0, Loads) { Car = Car, Task = task };

    private static ReadingLogged Logged(string text, Verdict verdict = Verdict.InLimits) =>
        new("pressure", text, 1m, "bar", 1m, 0.1m, verdict, "because", "gauge-1", null, true) { Car = Car, Task = "leak" };

    private static EvidenceLapsed Lapsed(long at) => new(
        EvidenceKind.Reading, "leak/pressure", new("hose/tight", null, "p-2", DateTimeOffset.FromUnixTimeMilliseconds(at), false))
    { Car = Car };

    private static ImmutableSortedDictionary<string, ImmutableArray<string>> Loads => ImmutableSortedDictionary<string, ImmutableArray<string>>.Empty;

    private static ImmutableSortedDictionary<string, string> Nothing => ImmutableSortedDictionary<string, string>.Empty;
}

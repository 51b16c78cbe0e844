using System.Text.Json;
using Dapper;
using JobBoard.Domain.Entries;
using JobBoard.Storage.Journal;

namespace JobBoard.Storage.History;

/// <summary>Every reading ever logged, as typed, and what became of it: lapsed, released, taken back.</summary>
public sealed class ReadingsHistory : IHistoryProjection
{
    private const string Readings = "readings";

    /// <inheritdoc/>
    public string Name => "readings";

    /// <summary>To be raised with every change to what this class writes.</summary>
    public string Stamp => "1";

    /// <inheritdoc/>
    public IReadOnlyList<HistoryTable> Tables { get; } =
    [
        new(
            Readings,
            """
            seq INTEGER PRIMARY KEY, car TEXT NOT NULL, task TEXT NOT NULL, reading TEXT NOT NULL, value_text TEXT NOT NULL, unit TEXT NOT NULL,
            verdict TEXT NOT NULL, instrument TEXT, person TEXT NOT NULL, seen_by TEXT, occurred_at INTEGER NOT NULL, late INTEGER NOT NULL,
            lapsed_seq INTEGER, released_seq INTEGER, taken_back_seq INTEGER,
            command TEXT NOT NULL, lapsed_command TEXT, released_command TEXT
            """,
            "car, task, reading, occurred_at",
            "instrument, occurred_at",
            "command",
            "lapsed_command",
            "released_command"),
    ];

    /// <inheritdoc/>
    public void Apply(HistoryTarget target, JournalRow row)
    {
        switch (Histories.FactOf(row))
        {
            case ReadingLogged logged:
                Log(target, row, logged);
                break;
            case ReadingReleased released:
                Release(target, row, released);
                break;
            case EvidenceLapsed { Kind: EvidenceKind.Reading } lapsed:
                Lapse(target, row, lapsed);
                break;
            case TakenBack back:
                TakeBack(target, row, back.Command);
                break;
        }
    }

    private static void Log(HistoryTarget target, JournalRow row, ReadingLogged logged) => target.Connection.Execute(
        $"""
         INSERT INTO {target.Table(Readings)}
             (seq, car, task, reading, value_text, unit, verdict, instrument, person, seen_by, occurred_at, late, command)
         VALUES (@Seq, @Car, @Task, @Reading, @Text, @Unit, @verdict, @Instrument, @Actor, @SeenBy, @OccurredAt, @late, @command)
         """,
        new
        {
            row.Seq,
            logged.Car,
            logged.Task,
            logged.Reading,
            logged.Text,
            logged.Unit,
            verdict = JsonNamingPolicy.KebabCaseLower.ConvertName(logged.Verdict.ToString()),
            logged.Instrument,
            row.Actor,
            logged.SeenBy,
            row.OccurredAt,
            late = logged.Late ? 1L : 0L,
            command = Histories.IdOf(row.CommandId),
        });

    private static void Release(HistoryTarget target, JournalRow row, ReadingReleased released) => target.Connection.Execute(
        $"UPDATE {target.Table(Readings)} SET released_seq = @Seq, released_command = @command WHERE seq = @ReadingSeq",
        new { row.Seq, command = Histories.IdOf(row.CommandId), released.ReadingSeq });

    /// <summary>What lapses is every reading of that name that stood until then and is older than the disturbance, as on the board.</summary>
    private static void Lapse(HistoryTarget target, JournalRow row, EvidenceLapsed lapsed)
    {
        var key = lapsed.Id.Split('/', 2);
        target.Connection.Execute(
            $"""
             UPDATE {target.Table(Readings)} SET lapsed_seq = @Seq, lapsed_command = @command
             WHERE car = @Car AND task = @task AND reading = @reading AND occurred_at < @at AND lapsed_seq IS NULL AND taken_back_seq IS NULL
             """,
            new
            {
                row.Seq,
                command = Histories.IdOf(row.CommandId),
                lapsed.Car,
                task = key[0],
                reading = key[^1],
                at = lapsed.Lapse.At.ToUnixTimeMilliseconds(),
            });
    }

    private static void TakeBack(HistoryTarget target, JournalRow row, Guid command) => target.Connection.Execute(
        $"""
         UPDATE {target.Table(Readings)} SET taken_back_seq = @Seq WHERE command = @command;
         UPDATE {target.Table(Readings)} SET lapsed_seq = NULL, lapsed_command = NULL WHERE lapsed_command = @command;
         UPDATE {target.Table(Readings)} SET released_seq = NULL, released_command = NULL WHERE released_command = @command;
         """,
        new { row.Seq, command = Histories.IdOf(command) });
}

using Dapper;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Work;
using JobBoard.Storage.Journal;

namespace JobBoard.Storage.History;

/// <summary>
/// Who worked on what from when to when, one row for each stretch of each person. What is taken back counts in no hours:
/// a start taken back leaves no row, an end taken back opens the stretch again.
/// </summary>
public sealed class HoursHistory : IHistoryProjection
{
    private const string Work = "work";

    /// <inheritdoc/>
    public string Name => "hours";

    /// <summary>To be raised with every change to what this class writes.</summary>
    public string Stamp => "1";

    /// <inheritdoc/>
    public IReadOnlyList<HistoryTable> Tables { get; } =
    [
        new(
            Work,
            """
            seq INTEGER NOT NULL, person TEXT NOT NULL, duty TEXT NOT NULL, car TEXT NOT NULL, task TEXT NOT NULL,
            started_at INTEGER NOT NULL, ended_at INTEGER, started_by TEXT NOT NULL, ended_by TEXT,
            PRIMARY KEY (seq, person)
            """,
            "car, task, ended_at",
            "person, started_at",
            "started_by",
            "ended_by"),
    ];

    /// <inheritdoc/>
    public void Apply(HistoryTarget target, JournalRow row)
    {
        switch (Histories.FactOf(row))
        {
            case TaskStarted started:
                foreach (var member in started.Crew)
                {
                    Begin(target, row, started, member);
                }

                break;
            case CrewJoined joined:
                Begin(target, row, joined, joined.Member);
                break;
            case CrewLeft left:
                End(target, row, left, left.Person);
                break;
            case TaskFact ended and (TaskLeftPartDone or TaskSignedOff or TaskSaidFinished or TaskUndone):
                End(target, row, ended, null);
                break;
            case TakenBack back:
                TakeBack(target, back.Command);
                break;
        }
    }

    private static void Begin(HistoryTarget target, JournalRow row, TaskFact fact, CrewMember member) => target.Connection.Execute(
        $"""
         INSERT INTO {target.Table(Work)} (seq, person, duty, car, task, started_at, started_by)
         VALUES (@Seq, @Person, @Duty, @Car, @Task, @OccurredAt, @command)
         """,
        new { row.Seq, member.Person, member.Duty, fact.Car, fact.Task, row.OccurredAt, command = Histories.IdOf(row.CommandId) });

    private static void End(HistoryTarget target, JournalRow row, TaskFact fact, string? person) => target.Connection.Execute(
        $"""
         UPDATE {target.Table(Work)} SET ended_at = @OccurredAt, ended_by = @command
         WHERE car = @Car AND task = @Task AND ended_at IS NULL AND (@person IS NULL OR person = @person)
         """,
        new { row.OccurredAt, command = Histories.IdOf(row.CommandId), fact.Car, fact.Task, person });

    private static void TakeBack(HistoryTarget target, Guid command) => target.Connection.Execute(
        $"""
         DELETE FROM {target.Table(Work)} WHERE started_by = @command;
         UPDATE {target.Table(Work)} SET ended_at = NULL, ended_by = NULL WHERE ended_by = @command;
         """,
        new { command = Histories.IdOf(command) });
}

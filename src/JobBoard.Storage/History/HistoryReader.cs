using Dapper;

namespace JobBoard.Storage.History;

/// <summary>A stretch of one person's work on one task. Times are Unix milliseconds; the end is null while it goes on.</summary>
public sealed record WorkRow(long Seq, string Person, string Duty, string Car, string Task, long StartedAt, long? EndedAt);

/// <summary>A reading as it was logged, and the numbers of the entries that made it lapse, released it or took it back.</summary>
public sealed record ReadingRow
{
    public required long Seq { get; init; }

    public required string Car { get; init; }

    public required string Task { get; init; }

    public required string Reading { get; init; }

    /// <summary>As typed.</summary>
    public required string ValueText { get; init; }

    public required string Unit { get; init; }

    /// <summary><c>in-limits</c>, <c>out</c> or <c>too-close-to-call</c>.</summary>
    public required string Verdict { get; init; }

    public string? Instrument { get; init; }

    public required string Person { get; init; }

    public string? SeenBy { get; init; }

    /// <summary>Unix milliseconds.</summary>
    public required long OccurredAt { get; init; }

    public required bool Late { get; init; }

    public long? LapsedSeq { get; init; }

    public long? ReleasedSeq { get; init; }

    public long? TakenBackSeq { get; init; }
}

/// <summary>An entry: who, when, what kind of thing, about what.</summary>
public sealed record DidRow(
    long Seq, string? Car, string? Task, string Kind, string? Subject, string Actor, long OccurredAt, long RecordedAt, long? TakenBackSeq);

/// <summary>Questions about the past, answered from the history tables as committed. A part of the question left null is not asked.</summary>
public sealed class HistoryReader(ShopDatabase database)
{
    /// <summary>Work that touches a span of time, by start. Stretches still going on are in it.</summary>
    /// <param name="from">Unix milliseconds, included.</param>
    /// <param name="to">Unix milliseconds, not included.</param>
    /// <param name="person">One person, or everybody.</param>
    /// <param name="car">One car, or all.</param>
    /// <param name="task">One task of the car, or all.</param>
    public IReadOnlyList<WorkRow> Work(long from, long to, string? person = null, string? car = null, string? task = null) =>
        database.Read(connection => connection.Query<WorkRow>(
            $"""
            SELECT seq AS Seq, person AS Person, duty AS Duty, car AS Car, task AS Task, started_at AS StartedAt, ended_at AS EndedAt
            FROM history_work
            WHERE started_at < @to AND (ended_at IS NULL OR ended_at > @from)
              {Only("person", person)} {Only("car", car)} {Only("task", task)}
            ORDER BY started_at, seq, person
            """,
            new { from, to, person, car, task }).AsList());

    /// <summary>A car's readings, the newest first.</summary>
    /// <param name="car">The car.</param>
    /// <param name="task">One task, or all.</param>
    /// <param name="reading">One reading of the task, or all.</param>
    public IReadOnlyList<ReadingRow> Readings(string car, string? task = null, string? reading = null) =>
        database.Read(connection => connection.Query<ReadingRow>(
            $"""
            SELECT seq AS Seq, car AS Car, task AS Task, reading AS Reading, value_text AS ValueText, unit AS Unit, verdict AS Verdict,
                   instrument AS Instrument, person AS Person, seen_by AS SeenBy, occurred_at AS OccurredAt, late AS Late,
                   lapsed_seq AS LapsedSeq, released_seq AS ReleasedSeq, taken_back_seq AS TakenBackSeq
            FROM history_readings
            WHERE car = @car {Only("task", task)} {Only("reading", reading)}
            ORDER BY occurred_at DESC, seq DESC
            """,
            new { car, task, reading }).AsList());

    /// <summary>What was done, the newest first.</summary>
    /// <param name="limit">At most so many.</param>
    /// <param name="car">One car, or all and the shop.</param>
    /// <param name="actor">One person, or everybody.</param>
    /// <param name="beforeSeq">Only entries before this one, to go on from a page.</param>
    public IReadOnlyList<DidRow> WhoDidWhat(int limit, string? car = null, string? actor = null, long beforeSeq = long.MaxValue) =>
        database.Read(connection => connection.Query<DidRow>(
            $"""
            SELECT seq AS Seq, car AS Car, task AS Task, kind AS Kind, subject AS Subject, actor AS Actor,
                   occurred_at AS OccurredAt, recorded_at AS RecordedAt, taken_back_seq AS TakenBackSeq
            FROM history_entries
            WHERE seq < @beforeSeq {Only("car", car)} {Only("actor", actor)}
            ORDER BY seq DESC LIMIT @limit
            """,
            new { limit, car, actor, beforeSeq }).AsList());

    /// <summary>A condition on a column by the parameter of the same name, or nothing.</summary>
    private static string Only(string column, string? value) => value is null ? "" : $"AND {column} = @{column}";
}

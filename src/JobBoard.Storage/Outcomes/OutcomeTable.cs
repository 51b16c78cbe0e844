using Dapper;
using Microsoft.Data.Sqlite;

namespace JobBoard.Storage.Outcomes;

/// <summary>The statements of the <c>commands</c> table.</summary>
internal static class OutcomeTable
{
    private static readonly OutcomeLookup Unknown = new(OutcomeMatch.Unknown, null);
    private static readonly OutcomeLookup Other = new(OutcomeMatch.OtherContent, null);

    public static OutcomeLookup Find(SqliteConnection connection, Guid commandId, byte[] hash)
    {
        var kept = connection.QuerySingleOrDefault<Kept>(
            """
            SELECT hash AS Hash, accepted AS Accepted, outcome AS Outcome, first_seq AS FirstSeq, last_seq AS LastSeq, actor AS Actor, at AS At
            FROM commands WHERE command_id = @id
            """,
            new { id = commandId.ToString("D") });
        if (kept is null)
        {
            return Unknown;
        }

        return kept.Hash.AsSpan().SequenceEqual(hash)
            ? new(OutcomeMatch.SameContent, new(commandId, kept.Accepted != 0, kept.Outcome, kept.FirstSeq, kept.LastSeq, kept.Actor, kept.At))
            : Other;
    }

    public static void Insert(SqliteConnection connection, CommandOutcome command, bool accepted, long? firstSeq, long? lastSeq) =>
        connection.Execute(
            """
            INSERT INTO commands (command_id, hash, accepted, outcome, first_seq, last_seq, actor, at)
            VALUES (@id, @Hash, @accepted, @Outcome, @firstSeq, @lastSeq, @Actor, @At)
            """,
            new { id = command.CommandId.ToString("D"), command.Hash, accepted = accepted ? 1L : 0L, command.Outcome, firstSeq, lastSeq, command.Actor, command.At });

    public static int Purge(SqliteConnection connection, long before) =>
        connection.Execute("DELETE FROM commands WHERE at < @before", new { before });

    private sealed record Kept(byte[] Hash, long Accepted, string Outcome, long? FirstSeq, long? LastSeq, string Actor, long At);
}

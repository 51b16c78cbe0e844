namespace JobBoard.Storage.Journal;

/// <summary>One entry of the day book as it is kept.</summary>
/// <param name="ShopId">The shop it belongs to.</param>
/// <param name="Seq">Place in the shop's one order: 1, 2, 3 ... without gaps.</param>
/// <param name="Stream">A conversion's id, or the shop's own stream.</param>
/// <param name="Version">Place within the stream: 1, 2, 3 ...</param>
/// <param name="Kind">What happened, in the past tense.</param>
/// <param name="Schema">Version of the kind's body.</param>
/// <param name="Body">JSON; empty when it was blanked.</param>
/// <param name="Actor">Id of the person, never a name.</param>
/// <param name="OccurredAt">When it happened, Unix milliseconds.</param>
/// <param name="RecordedAt">When it was written down, Unix milliseconds.</param>
/// <param name="CommandId">The command that led to it.</param>
/// <param name="BodySalt">Random bytes hashed with the body; empty when it was blanked.</param>
/// <param name="BodyCommitment">SHA-256 of salt and body as they were first written.</param>
/// <param name="PrevHash">The entry hash before this one; 32 zero bytes for the first.</param>
/// <param name="EntryHash">SHA-256 over the previous hash, the commitment and every column but salt and body.</param>
public sealed record JournalRow(
    string ShopId,
    long Seq,
    string Stream,
    long Version,
    string Kind,
    int Schema,
    string Body,
    string Actor,
    long OccurredAt,
    long RecordedAt,
    Guid CommandId,
    byte[] BodySalt,
    byte[] BodyCommitment,
    byte[] PrevHash,
    byte[] EntryHash)
{
    /// <summary>True when the body was taken out later; the chain still holds.</summary>
    public bool IsBlanked => BodySalt.Length == 0;
}

/// <summary>An entry to be written: what the journal adds is its place, its time of recording and its hashes.</summary>
/// <param name="Stream">A conversion's id, or the shop's own stream; not empty.</param>
/// <param name="Kind">What happened, in the past tense; not empty.</param>
/// <param name="Schema">Version of the kind's body, 1 and up.</param>
/// <param name="Body">JSON, not empty.</param>
/// <param name="Actor">Id of the person; not empty.</param>
/// <param name="OccurredAt">When it happened, Unix milliseconds; may be long before it is recorded.</param>
/// <param name="CommandId">The command it comes from; the same as that of the append.</param>
public sealed record NewEntry(string Stream, string Kind, int Schema, string Body, string Actor, long OccurredAt, Guid CommandId);

/// <summary>The row as the driver gives it, before ids and numbers take their own types.</summary>
internal sealed record StoredRow(
    string ShopId,
    long Seq,
    string Stream,
    long Version,
    string Kind,
    long Schema,
    string Body,
    string Actor,
    long OccurredAt,
    long RecordedAt,
    string CommandId,
    byte[] BodySalt,
    byte[] BodyCommitment,
    byte[] PrevHash,
    byte[] EntryHash)
{
    public const string Columns =
        """
        shop_id AS ShopId, seq AS Seq, stream AS Stream, version AS Version, kind AS Kind, schema AS Schema, body AS Body, actor AS Actor,
        occurred_at AS OccurredAt, recorded_at AS RecordedAt, command_id AS CommandId,
        body_salt AS BodySalt, body_commitment AS BodyCommitment, prev_hash AS PrevHash, entry_hash AS EntryHash
        """;

    public JournalRow ToRow() => new(
        ShopId, Seq, Stream, Version, Kind, (int)Schema, Body, Actor, OccurredAt, RecordedAt,
        Guid.Parse(CommandId), BodySalt, BodyCommitment, PrevHash, EntryHash);
}

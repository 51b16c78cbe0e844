namespace JobBoard.Storage.Outcomes;

/// <summary>What is kept of a command that was decided.</summary>
/// <param name="CommandId">Its id, made by whoever sent it.</param>
/// <param name="Hash">Hash over actor, kind, target, canonical body and version seen: the same id with another hash is another content.</param>
/// <param name="Outcome">The answer, JSON.</param>
/// <param name="Actor">Id of the signed-in person.</param>
/// <param name="At">When it was decided, Unix milliseconds; also when its entries are recorded.</param>
public sealed record CommandOutcome(Guid CommandId, byte[] Hash, string Outcome, string Actor, long At);

/// <summary>An outcome as it was kept.</summary>
/// <param name="CommandId">The command.</param>
/// <param name="Accepted">False for a refusal.</param>
/// <param name="Outcome">The answer given, JSON.</param>
/// <param name="FirstSeq">First entry it led to; null when there was none.</param>
/// <param name="LastSeq">Last entry it led to; null when there was none.</param>
/// <param name="Actor">Id of the person who sent it.</param>
/// <param name="At">When it was decided, Unix milliseconds.</param>
public sealed record StoredOutcome(Guid CommandId, bool Accepted, string Outcome, long? FirstSeq, long? LastSeq, string Actor, long At);

/// <summary>Whether a command was answered before.</summary>
public enum OutcomeMatch
{
    /// <summary>Never answered, or so long ago that the answer is gone.</summary>
    Unknown,

    /// <summary>Answered, with this very content: give the same answer, change nothing.</summary>
    SameContent,

    /// <summary>The id was used for another content: to be refused, the stored answer is not this command's.</summary>
    OtherContent,
}

/// <summary>Answer to "was this command decided before?".</summary>
/// <param name="Match">Whether it was.</param>
/// <param name="Outcome">The stored answer for the same content; null otherwise, so that nobody is told another's answer.</param>
public sealed record OutcomeLookup(OutcomeMatch Match, StoredOutcome? Outcome);

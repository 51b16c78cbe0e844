namespace JobBoard.Domain.Boards;

/// <summary>What the shop needs from the customer.</summary>
/// <param name="Id">Unique in the car.</param>
/// <param name="Words">What, in words for the customer.</param>
/// <param name="By">The day it is needed by, or nothing.</param>
/// <param name="AskedBy">Who asked.</param>
/// <param name="AskedAt">When.</param>
/// <param name="Answer">What they said, for the shop; nothing while it is open.</param>
/// <param name="AnsweredBy">Who took the answer.</param>
/// <param name="AnsweredAt">When; nothing while it is open.</param>
public sealed record CustomerAsk(string Id, string Words, DateOnly? By, string AskedBy, DateTimeOffset AskedAt, string? Answer = null, string? AnsweredBy = null, DateTimeOffset? AnsweredAt = null)
{
    /// <summary>Whether the customer still has to answer.</summary>
    public bool IsOpen => AnsweredAt is null;
}

/// <summary>A date as it was given, one after the other: what the customer was told, when and why.</summary>
/// <param name="Date">The date; nothing where it was taken back.</param>
/// <param name="At">When it was given.</param>
/// <param name="Why">Why, for the shop.</param>
/// <param name="WordsForCustomer">Why it moved, in words for the customer; nothing where none were given.</param>
public sealed record GivenDate(DateTimeOffset? Date, DateTimeOffset At, string Why, string? WordsForCustomer);

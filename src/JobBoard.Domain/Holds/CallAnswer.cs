namespace JobBoard.Domain.Holds;

/// <summary>What one person answered when the call was taken aloud before the key is turned.</summary>
/// <param name="Hold">The key check.</param>
/// <param name="Person">Whose answer it is.</param>
/// <param name="Go">Go, or no go.</param>
/// <param name="Why">The reason of a no; empty for a go.</param>
/// <param name="By">Who tapped it: the person, or the foreman for them.</param>
/// <param name="At">When it occurred.</param>
/// <param name="Lapsed">What changed behind it since, or nothing while it stands.</param>
public sealed record CallAnswer(string Hold, string Person, bool Go, string Why, string By, DateTimeOffset At, CallLapse? Lapsed = null)
{
    /// <summary>A go that still stands.</summary>
    public bool Counts => Go && Lapsed is null;

    /// <summary>The key an answer is kept under.</summary>
    public static string Key(string hold, string person) => hold + "|" + person;
}

/// <summary>What made an answer lapse.</summary>
/// <param name="Kind">Kind of the entry.</param>
/// <param name="About">The node, item or stop it was about.</param>
/// <param name="By">Who.</param>
/// <param name="At">When it occurred.</param>
public sealed record CallLapse(string Kind, string About, string By, DateTimeOffset At);

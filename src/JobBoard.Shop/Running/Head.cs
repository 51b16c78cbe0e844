namespace JobBoard.Shop.Running;

/// <summary>Where the day book and the clock stood when a picture was made. Compared by number, then by time; another journal compares with nothing.</summary>
/// <param name="JournalId">The day book.</param>
/// <param name="Seq">Its last entry in the picture.</param>
/// <param name="At">The shop's time of the picture.</param>
public readonly record struct Head(Guid JournalId, long Seq, DateTimeOffset At)
{
    /// <summary>Whether this picture is newer than another of the same day book.</summary>
    public bool IsNewerThan(Head other) => JournalId == other.JournalId && (Seq, At).CompareTo((other.Seq, other.At)) > 0;
}

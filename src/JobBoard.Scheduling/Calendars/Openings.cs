namespace JobBoard.Scheduling;

/// <summary>One stretch of opening on a local date, as time of day counted from that date's midnight.</summary>
/// <param name="From">Opening, 0:00 up to and without 24:00.</param>
/// <param name="To">Closing, after <paramref name="From"/> and at most 24 hours later; 24:00 and beyond is the next day
/// (22:00 to 30:00 is a night shift), and belongs to the date on which it began.</param>
public readonly record struct OpenSpan(TimeSpan From, TimeSpan To)
{
    /// <summary>Whether the stretch lies in the ranges given above.</summary>
    public bool IsValid =>
        From >= TimeSpan.Zero && From < TimeSpan.FromDays(1) && To > From && To - From <= TimeSpan.FromDays(1);
}

/// <summary>A stretch of opening that comes every week.</summary>
public readonly record struct WeeklyOpening(DayOfWeek Day, OpenSpan Span);

/// <summary>A stretch of opening on one date; all of a date's extra stretches take the place of its weekly hours.</summary>
public readonly record struct DateOpening(DateOnly Date, OpenSpan Span);

namespace JobBoard.Shop.Dates;

/// <summary>What kind of thing moves a car's date.</summary>
public enum LeverKind
{
    /// <summary>Work done in less time.</summary>
    Work,

    /// <summary>A part that is here now.</summary>
    Part,

    /// <summary>A hold point that is released now and not at the next day's opening.</summary>
    Hold,
}

/// <summary>One thing that moves a car's date, and by how much: found by working the dates out again with it moved.</summary>
/// <param name="Kind">What kind.</param>
/// <param name="About">A task, part or hold point.</param>
/// <param name="Earliest">The end of everything then.</param>
/// <param name="Gain">Shop hours won; above zero. For a hold point: shop hours lost if it waits until the next day's opening.</param>
/// <param name="Now">Work left as things stand, for work.</param>
/// <param name="Then">Work left if it is shortened, for work.</param>
/// <param name="Today">Whether somebody can do something about it today.</param>
public sealed record Lever(LeverKind Kind, string About, DateTimeOffset Earliest, TimeSpan Gain, TimeSpan Now, TimeSpan Then, bool Today);

using JobBoard.Domain.Work;

namespace JobBoard.Domain.Readings;

/// <summary>A measured value; never changed, only taken again.</summary>
public sealed record Reading
{
    /// <summary>Entry number; also its id on the car.</summary>
    public required long Seq { get; init; }

    /// <summary><c>task/reading</c>.</summary>
    public required string Key { get; init; }

    /// <summary>As typed.</summary>
    public required string Text { get; init; }

    /// <summary>The number of record in <see cref="Unit"/>.</summary>
    public required decimal Value { get; init; }

    /// <summary>The unit typed.</summary>
    public required string Unit { get; init; }

    /// <summary>The same in the limit's unit.</summary>
    public required decimal InLimitUnit { get; init; }

    /// <summary>Guard band in the limit's unit.</summary>
    public decimal Uncertainty { get; init; }

    public required Verdict Verdict { get; init; }

    /// <summary>Why, in words.</summary>
    public string Because { get; init; } = "";

    public string? Instrument { get; init; }

    public required string By { get; init; }

    /// <summary>The second person who saw it.</summary>
    public string? SeenBy { get; init; }

    public required DateTimeOffset At { get; init; }

    /// <summary>What made it lapse, or nothing.</summary>
    public Lapse? LapsedBy { get; init; }

    /// <summary>Released although out or too close, by whom.</summary>
    public SignOff? Released { get; init; }
}

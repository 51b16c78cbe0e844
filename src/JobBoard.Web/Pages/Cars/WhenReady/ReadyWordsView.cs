using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Cars.WhenReady;

/// <summary>The words over the picture: when, what sets the date, who can shorten it and by how much, what moved since this morning.</summary>
public sealed record ReadyWordsView
{
    /// <summary>The car, or nothing when it is gone.</summary>
    public string? Car { get; init; }

    /// <summary>The car's id.</summary>
    public string CarId { get; init; } = "";

    /// <summary>The answer in one line.</summary>
    public string Answer { get; init; } = "";

    /// <summary>What the answer leaves aside, or nothing.</summary>
    public string? Aside { get; init; }

    /// <summary>The date given and how it stands, or nothing.</summary>
    public string? Given { get; init; }

    /// <summary>What sets the date.</summary>
    public string? SetBy { get; init; }

    /// <summary>What shortens it most today, or nothing.</summary>
    public ReadyLever? Best { get; init; }

    /// <summary>What the rest of today's work would do.</summary>
    public string? Rest { get; init; }

    /// <summary>What a hold point that waits for its release would cost.</summary>
    public ImmutableArray<ReadyLever> Holds { get; init; } = [];

    /// <summary>Everything that shortens it, the most first.</summary>
    public ImmutableArray<ReadyLever> Levers { get; init; } = [];

    /// <summary>What moved since this morning, in a line.</summary>
    public string? Moved { get; init; }

    /// <summary>Everything that moved it, in order of time.</summary>
    public ImmutableArray<ReadyMove> Moves { get; init; } = [];
}

/// <summary>One thing that moves the date, in words.</summary>
/// <param name="Name">The task, part or hold point.</param>
/// <param name="Path">Where it leads.</param>
/// <param name="Who">Who can, in words.</param>
/// <param name="If">What would have to be.</param>
/// <param name="By">By how much.</param>
/// <param name="Then">When it would be ready.</param>
public sealed record ReadyLever(string Name, string Path, string Who, string If, string By, string Then);

/// <summary>One thing that moved it today.</summary>
/// <param name="When">When, last.</param>
/// <param name="What">What happened.</param>
/// <param name="By">1 h 20 later, 30 min sooner, no longer known.</param>
public sealed record ReadyMove(string When, string What, string By);

using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Bay;

/// <summary>A task in this person's hands.</summary>
public sealed record BayTask
{
    /// <summary>The task's id.</summary>
    public required string Id { get; init; }

    /// <summary>Engine in.</summary>
    public required string Name { get; init; }

    /// <summary>The car's id.</summary>
    public required string CarId { get; init; }

    /// <summary>Heron coupe.</summary>
    public required string Car { get; init; }

    /// <summary>The place, or nothing.</summary>
    public string? Place { get; init; }

    /// <summary>Since when it is in hand this time.</summary>
    public required DateTimeOffset Since { get; init; }

    /// <summary>Work done so far.</summary>
    public TimeSpan SoFar { get; init; }

    /// <summary>The usual estimate.</summary>
    public TimeSpan Estimate { get; init; }

    /// <summary>Past its high estimate.</summary>
    public bool OverItsEstimate { get; init; }

    /// <summary>Others on it with their duty: "Sol (signals)".</summary>
    public ImmutableArray<string> With { get; init; } = [];

    /// <summary>This person's duty, or nothing.</summary>
    public string? Duty { get; init; }

    /// <summary>Cautions, shown before everything else.</summary>
    public ImmutableArray<BayCaution> Cautions { get; init; } = [];

    /// <summary>Steps in order.</summary>
    public ImmutableArray<string> Steps { get; init; } = [];

    /// <summary>What it needs, and how each need stands.</summary>
    public ImmutableArray<BayNeed> Needs { get; init; } = [];

    /// <summary>Readings it asks for.</summary>
    public ImmutableArray<BayReading> Readings { get; init; } = [];

    /// <summary>Items on the car that this task is about, which can be changed by hand with a reason.</summary>
    public ImmutableArray<BayItem> Items { get; init; } = [];

    /// <summary>Joints, lines and loads it disturbs: "how was it left?" is asked for each when leaving it part-done.</summary>
    public ImmutableArray<BayHowLeft> AskHowLeft { get; init; } = [];

    /// <summary>What is still missing before it can be signed off; empty when it can.</summary>
    public ImmutableArray<BayWait> SignOffWaitsOn { get; init; } = [];

    /// <summary>Signing off asks another person's second check.</summary>
    public bool SecondCheckFollows { get; init; }

    /// <summary>Why this person signs nothing off (an apprentice), or nothing.</summary>
    public string? SignsNothingOff { get; init; }
}

/// <summary>A need and how it stands.</summary>
/// <param name="Id">Stable within the task.</param>
/// <param name="Words">Crossmember: off.</param>
/// <param name="Stands">How it stands: "off since 23 Nov, Sol".</param>
/// <param name="Met">Whether it is met.</param>
public sealed record BayNeed(string Id, string Words, string Stands, bool Met);

/// <summary>How a reading stands.</summary>
public enum BayVerdict
{
    /// <summary>Not yet taken.</summary>
    NotTaken,

    /// <summary>In limits.</summary>
    InLimits,

    /// <summary>Out.</summary>
    Out,

    /// <summary>Too close to call.</summary>
    TooCloseToCall,

    /// <summary>It lapsed and has to be taken again.</summary>
    Lapsed,
}

/// <summary>A reading the task asks for.</summary>
public sealed record BayReading
{
    /// <summary>The reading's id in the plan.</summary>
    public required string Id { get; init; }

    /// <summary>Mount bolts ×4, nipped.</summary>
    public required string Name { get; init; }

    /// <summary>Its limit in words: "45 to 50 N·m".</summary>
    public string? Limit { get; init; }

    /// <summary>The unit it is logged in.</summary>
    public required string Unit { get; init; }

    /// <summary>Other units it may be logged in, <see cref="Unit"/> included; empty where there is one only.</summary>
    public ImmutableArray<string> Units { get; init; } = [];

    /// <summary>How it stands.</summary>
    public BayVerdict Verdict { get; init; }

    /// <summary>The value as typed, with its unit, or nothing.</summary>
    public string? Value { get; init; }

    /// <summary>When it was taken, or nothing.</summary>
    public DateTimeOffset? TakenAt { get; init; }

    /// <summary>Who took it, or nothing.</summary>
    public string? TakenBy { get; init; }

    /// <summary>What made it lapse, or why it cannot be called: one sentence, or nothing.</summary>
    public string? Note { get; init; }

    /// <summary>Instruments that can take it; the first is the one used last.</summary>
    public ImmutableArray<BayChoice> Instruments { get; init; } = [];

    /// <summary>Who may be the second person to have seen it; empty where one is enough.</summary>
    public ImmutableArray<BayChoice> SeenBy { get; init; } = [];

    /// <summary>The tool to fetch, in words.</summary>
    public string Tool { get; init; } = "";

    /// <summary>The condition it is taken in, in words.</summary>
    public string TakenWhen { get; init; } = "";

    /// <summary>What the field says when the last entry could not be taken (names the fix), or nothing.</summary>
    public string? Error { get; init; }

    /// <summary>What was typed when <see cref="Error"/> is set.</summary>
    public string? Typed { get; init; }
}

/// <summary>An item on the car that may be changed by hand.</summary>
/// <param name="Id">The item's id.</param>
/// <param name="Name">Coolant cap.</param>
/// <param name="Condition">The present condition in words.</param>
/// <param name="Conditions">All conditions.</param>
/// <param name="Since">Since when, and by whom, in words; or nothing.</param>
public sealed record BayItem(string Id, string Name, string Condition, ImmutableArray<BayChoice> Conditions, string? Since = null);

/// <summary>One "how was it left?" with its possible answers, sent as <paramref name="Field"/>: <c>how</c>, or <c>items[ITEM]</c> for the condition an item is really in.</summary>
public sealed record BayHowLeft(string Field, string Words, ImmutableArray<BayChoice> Answers);

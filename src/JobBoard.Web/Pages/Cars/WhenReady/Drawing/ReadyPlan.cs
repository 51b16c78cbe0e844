using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Cars.WhenReady.Drawing;

/// <summary>What is drawn: steps, what comes after what, and the line that sets the date. Times are marks of working time, twice the shop minutes from any origin, plus one after closed hours.</summary>
public sealed record ReadyPlan
{
    /// <summary>All steps; ids are unique.</summary>
    public required ImmutableArray<ReadyStep> Steps { get; init; }

    /// <summary>What comes after what; links to steps that are not there are left out.</summary>
    public required ImmutableArray<ReadyLink> Links { get; init; }

    /// <summary>The steps that set the date, first to last. Empty: the step that ends last.</summary>
    public ImmutableArray<string> Line { get; init; } = [];

    /// <summary>Now.</summary>
    public required long Now { get; init; }

    /// <summary>What stands at the now-mark.</summary>
    public string NowWords { get; init; } = "now";

    /// <summary>What stands at the end of the line, up to three lines; the first is bold.</summary>
    public ImmutableArray<string> EndWords { get; init; } = [];

    /// <summary>Openings of days on the axis, in order.</summary>
    public ImmutableArray<ReadyDay> Days { get; init; } = [];

    /// <summary>The date given, or nothing.</summary>
    public ReadyDay? Given { get; init; }
}

/// <summary>A step: a task, a hold point or a folded stage.</summary>
/// <param name="Id">Unique.</param>
/// <param name="Name">Written at its bolt, in at most three lines.</param>
/// <param name="Start">When work on it starts.</param>
/// <param name="Finish">When it ends; not before its start.</param>
public sealed record ReadyStep(string Id, string Name, long Start, long Finish)
{
    /// <summary>In hand: its bolt stands at now.</summary>
    public bool InHand { get; init; }

    /// <summary>A few words over the name, or nothing: hold point, stop, part.</summary>
    public string? Note { get; init; }

    /// <summary>What is written in the gap before the joint, or nothing.</summary>
    public string? Slack { get; init; }

    /// <summary>Whether a tag or an octagon hangs beside its bolt.</summary>
    public bool Held { get; init; }
}

/// <summary>One step comes after another.</summary>
/// <param name="Task">The later one.</param>
/// <param name="After">The earlier one.</param>
public sealed record ReadyLink(string Task, string After);

/// <summary>A mark on the axis.</summary>
/// <param name="At">Where.</param>
/// <param name="Words">What is written at it.</param>
public sealed record ReadyDay(long At, string Words);

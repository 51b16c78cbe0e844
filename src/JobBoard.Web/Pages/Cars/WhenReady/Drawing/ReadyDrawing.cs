using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Cars.WhenReady.Drawing;

/// <summary>The picture, placed. Units are CSS pixels at its natural size.</summary>
public sealed record ReadyDrawing
{
    /// <summary>Width.</summary>
    public required double Width { get; init; }

    /// <summary>Height.</summary>
    public required double Height { get; init; }

    /// <summary>Height of the line that sets the date.</summary>
    public required double LineY { get; init; }

    /// <summary>Where the line begins and ends.</summary>
    public required (double From, double To) Line { get; init; }

    /// <summary>Where the time axis is.</summary>
    public required double AxisY { get; init; }

    /// <summary>Every step.</summary>
    public required ImmutableArray<DrawnStep> Steps { get; init; }

    /// <summary>Every rib, the line left out.</summary>
    public required ImmutableArray<DrawnRib> Ribs { get; init; }

    /// <summary>Stretches of the line on which nothing is worked: a part or a cure is waited for.</summary>
    public required ImmutableArray<DrawnBar> Waits { get; init; }

    /// <summary>Marks on the axis.</summary>
    public required ImmutableArray<DrawnDay> Days { get; init; }

    /// <summary>The date given, or nothing.</summary>
    public DrawnDay? Given { get; init; }

    /// <summary>The now-mark: its words over its tip on the line.</summary>
    public required DrawnText Now { get; init; }

    /// <summary>What stands at the end of the line.</summary>
    public required ImmutableArray<DrawnText> End { get; init; }

    /// <summary>All text there is.</summary>
    public IEnumerable<DrawnText> Texts => Steps.SelectMany(s => s.Label).Concat(Steps.Select(s => s.Slack).OfType<DrawnText>())
        .Concat(End).Append(Now).Concat(Days.Select(d => d.Text)).Concat(Given is null ? [] : [Given.Text]);
}

/// <summary>A step, placed.</summary>
/// <param name="Id">The step.</param>
/// <param name="X">Middle of its bolt.</param>
/// <param name="Y">Middle of its bolt.</param>
/// <param name="Radius">Half the bolt's size.</param>
/// <param name="OnLine">Whether it is on the line that sets the date.</param>
/// <param name="Label">Its note and name.</param>
/// <param name="Slack">What is written in the gap before the joint, or nothing.</param>
public sealed record DrawnStep(string Id, double X, double Y, double Radius, bool OnLine, ImmutableArray<DrawnText> Label, DrawnText? Slack)
{
    /// <summary>Whether a mark hangs at the right of the bolt.</summary>
    public bool Held { get; init; }

    /// <summary>What the bolt and what hangs at it take up.</summary>
    public DrawnBox Box => new(X - Radius, Y - Radius, (2 * Radius) + (Held ? Letters.HeldMark : 0), 2 * Radius);
}

/// <summary>A rib: work beside the line, up to where it joins.</summary>
/// <param name="First">The id of its first step.</param>
/// <param name="Joins">The step whose start it joins; nothing for the end of the line.</param>
/// <param name="Track">Which row: above the line 1, 2, ..., under it -1, -2, ...</param>
/// <param name="Work">Stretches worked.</param>
/// <param name="Gaps">Stretches between its steps that nothing is worked on.</param>
/// <param name="Joint">The way from its last work to where it joins: along its row, then across, then into the other row.</param>
public sealed record DrawnRib(string First, string? Joins, int Track, ImmutableArray<DrawnBar> Work, ImmutableArray<DrawnBar> Gaps, DrawnJoint Joint);

/// <summary>A level stretch.</summary>
public sealed record DrawnBar(double From, double To, double Y);

/// <summary>Where a rib joins another row.</summary>
/// <param name="From">Where its gap begins.</param>
/// <param name="FromY">Its own row.</param>
/// <param name="X">Where it goes across.</param>
/// <param name="ToY">The row it joins.</param>
public sealed record DrawnJoint(double From, double FromY, double X, double ToY)
{
    /// <summary>Corner radius.</summary>
    public const double Corner = 9;
}

/// <summary>A mark on the axis.</summary>
public sealed record DrawnDay(double X, DrawnText Text);

/// <summary>How a text looks.</summary>
public enum DrawnStyle
{
    /// <summary>A step beside the line.</summary>
    Name,

    /// <summary>A step on the line.</summary>
    LineName,

    /// <summary>All else.</summary>
    Note,
}

/// <summary>One line of text.</summary>
/// <param name="Words">What it says.</param>
/// <param name="X">Its left edge.</param>
/// <param name="Baseline">Its baseline.</param>
/// <param name="Width">Its width at most.</param>
/// <param name="Style">How it looks.</param>
public sealed record DrawnText(string Words, double X, double Baseline, double Width, DrawnStyle Style)
{
    /// <summary>What it takes up, ascenders and descenders included.</summary>
    public DrawnBox Box => new(X, Baseline - (0.76 * Letters.Size(Style)), Width, 0.98 * Letters.Size(Style));
}

/// <summary>A box.</summary>
public readonly record struct DrawnBox(double X, double Y, double Width, double Height)
{
    /// <summary>Right edge.</summary>
    public double Right => X + Width;

    /// <summary>Bottom edge.</summary>
    public double Bottom => Y + Height;

    /// <summary>Whether two boxes share more than an edge.</summary>
    public bool Overlaps(DrawnBox other) => X < other.Right && other.X < Right && Y < other.Bottom && other.Y < Bottom;
}

using System.Collections.Immutable;
using JobBoard.Web.Marks;

namespace JobBoard.Web.Pages.Floor;

/// <summary>How a line of text on the wall is set.</summary>
public enum FloorStyle
{
    /// <summary>Heavy, in the size of names.</summary>
    Name,

    /// <summary>Heavy, in the size of all else.</summary>
    Strong,

    /// <summary>Ink, in the size of all else.</summary>
    Plain,

    /// <summary>Steel, in the size of all else.</summary>
    Quiet,
}

/// <summary>One fitted line of text: where its baseline starts and the box it may fill.</summary>
public sealed record FloorRow(string Text, FloorStyle Style, double X, double Baseline, FloorBox Box);

/// <summary>Which mark.</summary>
public enum FloorMarkKind
{
    /// <summary>Bolt with a spanner.</summary>
    InHand,

    /// <summary>Bolt alone.</summary>
    NotStarted,

    /// <summary>Tag on a string.</summary>
    Tag,

    /// <summary>Octagon.</summary>
    Stop,

    /// <summary>Safety sign.</summary>
    Sign,
}

/// <summary>A mark with its box; <paramref name="Sign"/> with <see cref="FloorMarkKind.Sign"/> only.</summary>
public sealed record FloorMark(FloorMarkKind Kind, FloorBox Box, SafetySignKind? Sign = null);

/// <summary>What belongs together on the map: the lines and marks of a task, stop, danger or tag.</summary>
public sealed record FloorBlock(string Id, ImmutableArray<FloorMark> Marks, ImmutableArray<FloorRow> Rows);

/// <summary>One place, fitted.</summary>
/// <param name="Place">What it was made from.</param>
/// <param name="Edge">What is painted: a bay's rectangle on the map; a corner's, grown into free floor where it is too small for its text.</param>
/// <param name="Room">The floor its text keeps to.</param>
/// <param name="Pages">What is written, page by page (one at least), each from the top.</param>
/// <param name="More">How many things found room on no page.</param>
public sealed record FloorPlaceDrawing(FloorPlace Place, FloorBox Edge, FloorBox Room, ImmutableArray<ImmutableArray<FloorBlock>> Pages, int More);

/// <summary>Lifting gear, in units: its rails and the keep-out zone while it is loaded.</summary>
public sealed record FloorGearDrawing(FloorGear Gear, FloorBox Sweep, FloorBox? KeepOut, ImmutableArray<FloorBox> Rails);

/// <summary>One car beside the map: fitted lines from the top, the second column of a line set flush right.</summary>
public sealed record FloorCarDrawing(FloorCar Car, ImmutableArray<FloorCarLine> Lines, double Height);

/// <summary>A line of a car's entry.</summary>
public sealed record FloorCarLine(string Text, FloorStyle Style, string? Right = null, FloorStyle RightStyle = FloorStyle.Quiet);

/// <summary>One stop in the strip, fitted.</summary>
public sealed record FloorStopDrawing(FloorStop Stop, ImmutableArray<FloorCarLine> Lines);

/// <summary>The whole wall, fitted: every text measured, nothing clipped.</summary>
public sealed record FloorDrawing
{
    /// <summary>Type sizes.</summary>
    public required FloorSheet Sheet { get; init; }

    /// <summary>Where the map lies on the sheet; the other boxes of the map are relative to it.</summary>
    public required FloorBox Map { get; init; }

    /// <summary>The shop's outline on the map.</summary>
    public required FloorBox Walls { get; init; }

    /// <summary>Places.</summary>
    public required ImmutableArray<FloorPlaceDrawing> Places { get; init; }

    /// <summary>Gear.</summary>
    public required ImmutableArray<FloorGearDrawing> Gear { get; init; }

    /// <summary>Cars beside the map, page by page.</summary>
    public required ImmutableArray<ImmutableArray<FloorCarDrawing>> CarPages { get; init; }

    /// <summary>Stops in the strip, page by page; none where there is no stop.</summary>
    public required ImmutableArray<ImmutableArray<FloorStopDrawing>> StopPages { get; init; }

    /// <summary>Height of the strip in units, 0 without a stop.</summary>
    public required double StripHeight { get; init; }
}

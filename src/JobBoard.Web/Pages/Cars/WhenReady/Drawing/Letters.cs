using JobBoard.Web.Pages.Floor;

namespace JobBoard.Web.Pages.Cars.WhenReady.Drawing;

/// <summary>Sizes of type and marks, and text broken to fit.</summary>
public static class Letters
{
    /// <summary>From one line of text to the next.</summary>
    public const double LineHeight = 16;

    /// <summary>Room a mark beside a bolt takes.</summary>
    public const double HeldMark = 18;

    /// <summary>Widest name of a step.</summary>
    public const double Widest = 88;

    /// <summary>Widest note over a name.</summary>
    public const double WidestNote = 116;

    // The face may be another one than the measured one while it loads.
    private const double Margin = 1.03;

    /// <summary>Type size.</summary>
    public static double Size(DrawnStyle style) => style switch
    {
        DrawnStyle.LineName => 15,
        DrawnStyle.Name => 14,
        _ => 13,
    };

    /// <summary>Width at most.</summary>
    public static double Width(string text, DrawnStyle style) => Margin * FloorFace.Width(text, Size(style), style != DrawnStyle.Note);

    /// <summary>A name in at most three lines.</summary>
    public static IReadOnlyList<string> Name(string name, DrawnStyle style) =>
        FloorText.Lines(name, Widest, Margin * Size(style), bold: true, most: 3) is { Count: > 0 } lines ? lines : ["…"];

    /// <summary>A note in one line.</summary>
    public static string Note(string note) => FloorText.Lines(note, WidestNote, Margin * Size(DrawnStyle.Note), bold: false, most: 1) is [var line, ..] ? line : "…";
}

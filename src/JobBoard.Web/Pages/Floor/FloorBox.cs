namespace JobBoard.Web.Pages.Floor;

/// <summary>A rectangle on the sheet, in units, y down.</summary>
public readonly record struct FloorBox(double X, double Y, double Width, double Height)
{
    private const double Hair = 0.01;

    /// <summary>Right edge.</summary>
    public double Right => X + Width;

    /// <summary>Lower edge.</summary>
    public double Bottom => Y + Height;

    /// <summary>Whether the two share any area beyond a hair's breadth.</summary>
    public bool Overlaps(FloorBox other) =>
        X < other.Right - Hair && other.X < Right - Hair && Y < other.Bottom - Hair && other.Y < Bottom - Hair;

    /// <summary>Whether <paramref name="other"/> lies wholly inside.</summary>
    public bool Contains(FloorBox other) =>
        other.X >= X - Hair && other.Y >= Y - Hair && other.Right <= Right + Hair && other.Bottom <= Bottom + Hair;

    /// <summary>The box made smaller on all sides, or larger where negative.</summary>
    public FloorBox Inset(double by) => new(X + by, Y + by, Width - (2 * by), Height - (2 * by));
}

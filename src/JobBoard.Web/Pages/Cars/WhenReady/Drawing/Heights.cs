namespace JobBoard.Web.Pages.Cars.WhenReady.Drawing;

/// <summary>How high each row lies: as close to the line as the labels between allow.</summary>
internal sealed class Heights
{
    /// <summary>From the line to the labels over and under it.</summary>
    public const double LineRoom = 20;

    private const double BoltRoom = 14;
    private const double Edge = 6;

    private readonly Dictionary<int, double> _rows = [];

    public Heights(RibTree tree, Tracks tracks, Placement placed)
    {
        var lines = tree.Nodes.GroupBy(n => (Track: tracks.OfNode[n.Number], Under: placed.Under[n.Number]))
            .ToDictionary(g => g.Key, g => g.Max(n => placed.Labels[n.Number].Length) * Letters.LineHeight);
        var (top, bottom) = (tracks.OfNode.Max(), tracks.OfNode.Min());
        var up = -(LineRoom + Math.Max(Labels(0, false), (2 * Letters.LineHeight) + 2));
        for (var track = 1; track <= top; track++)
        {
            _rows[track] = up - Edge - Labels(track, true) - BoltRoom;
            up = _rows[track] - BoltRoom - Labels(track, false);
        }

        var down = LineRoom + Labels(0, true);
        for (var track = -1; track >= bottom; track--)
        {
            _rows[track] = down + Edge + Labels(track, false) + BoltRoom;
            down = _rows[track] + BoltRoom + Labels(track, true);
        }

        LineY = Math.Ceiling(Edge - up);
        Axis = Math.Ceiling(LineY + Math.Max(down, LineRoom + (2 * Letters.LineHeight)) + (3 * Edge));

        double Labels(int track, bool under) => lines.GetValueOrDefault((track, under));
    }

    public double LineY { get; }

    public double Axis { get; }

    public double Row(int track) => track == 0 ? LineY : LineY + _rows[track];
}

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
        var up = -(LineRoom + Math.Max(Over(0), (2 * Letters.LineHeight) + 2));
        for (var track = 1; track <= top; track++)
        {
            _rows[track] = up - Edge - BoltRoom;
            up = _rows[track] - BoltRoom - Over(track);
        }

        var down = LineRoom + lines.GetValueOrDefault((0, true));
        for (var track = -1; track >= bottom; track--)
        {
            _rows[track] = down + Edge + Over(track) + BoltRoom;
            down = _rows[track] + BoltRoom;
        }

        LineY = Math.Ceiling(Edge - up);
        Axis = Math.Ceiling(LineY + Math.Max(down, LineRoom + (2 * Letters.LineHeight)) + (3 * Edge));

        double Over(int track) => lines.GetValueOrDefault((track, false));
    }

    public double LineY { get; }

    public double Axis { get; }

    public double Row(int track) => track == 0 ? LineY : LineY + _rows[track];
}

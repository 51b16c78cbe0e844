using System.Globalization;
using JobBoard.Web.Pages.Cars.WhenReady.Drawing;

namespace JobBoard.Web.Pages.Cars.WhenReady;

/// <summary>The picture's lines as SVG paths: whole pixels and one decimal, whatever the server's language.</summary>
public static class ReadySvg
{
    /// <summary>One number.</summary>
    public static string N(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>Level stretches.</summary>
    public static string Bars(IEnumerable<DrawnBar> bars) => string.Concat(bars.Select(b => $"M{N(b.From)} {N(b.Y)}H{N(b.To)}"));

    /// <summary>The line without the stretches on which nothing is worked.</summary>
    public static IEnumerable<DrawnBar> Worked(ReadyDrawing drawing)
    {
        var from = drawing.Line.From;
        foreach (var wait in drawing.Waits)
        {
            yield return new(from, wait.From, drawing.LineY);
            from = wait.To;
        }

        yield return new(from, drawing.Line.To, drawing.LineY);
    }

    /// <summary>
    /// The straight stretches of a rib's way to its joint: along its row, and across. Each is drawn by itself, for a browser
    /// draws dots along one straight stretch many times faster than along a bent way.
    /// </summary>
    /// <param name="joint">The way.</param>
    /// <param name="across">Whether the way across is drawn too: where several ribs share one, it is drawn once.</param>
    public static IEnumerable<string> Straights(DrawnJoint joint, bool across)
    {
        var (y1, y2) = Across(joint);
        if (joint.X - DrawnJoint.Corner > joint.From) yield return $"M{N(joint.From)} {N(joint.FromY)}H{N(joint.X - DrawnJoint.Corner)}";
        if (across && y1 != y2) yield return $"M{N(joint.X)} {N(y1)}V{N(y2)}";
    }

    /// <summary>The ribs that draw the way across: of those that share one, the one furthest out.</summary>
    public static IReadOnlySet<string> Trunks(ReadyDrawing drawing) => drawing.Ribs
        .GroupBy(r => (r.Joins, r.Joint.X, r.Joint.ToY, r.Track > 0)).Select(g => g.MaxBy(r => Math.Abs(r.Track))!.First).ToHashSet(StringComparer.Ordinal);

    /// <summary>Its two corners.</summary>
    public static string Corners(DrawnJoint joint)
    {
        var (y1, y2) = Across(joint);
        var corner = DrawnJoint.Corner;
        return $"M{N(joint.X - corner)} {N(joint.FromY)}Q{N(joint.X)} {N(joint.FromY)} {N(joint.X)} {N(y1)}M{N(joint.X)} {N(y2)}Q{N(joint.X)} {N(joint.ToY)} {N(joint.X + corner)} {N(joint.ToY)}";
    }

    private static (double From, double To) Across(DrawnJoint joint) => joint.ToY > joint.FromY
        ? (joint.FromY + DrawnJoint.Corner, joint.ToY - DrawnJoint.Corner)
        : (joint.FromY - DrawnJoint.Corner, joint.ToY + DrawnJoint.Corner);

    /// <summary>A triangle whose tip points down at the line.</summary>
    public static string Tip(double x, double y) => $"M{N(x - 7)} {N(y - 12)}H{N(x + 7)}L{N(x)} {N(y)}Z";
}

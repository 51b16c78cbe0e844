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

    /// <summary>The way of a rib to its joint: along its row, round the corner, across, and round into the row it joins.</summary>
    public static string Joint(DrawnJoint joint)
    {
        var down = joint.ToY > joint.FromY;
        var corner = DrawnJoint.Corner;
        var (y1, y2) = down ? (joint.FromY + corner, joint.ToY - corner) : (joint.FromY - corner, joint.ToY + corner);
        return $"M{N(Math.Min(joint.From, joint.X - corner))} {N(joint.FromY)}H{N(joint.X - corner)}Q{N(joint.X)} {N(joint.FromY)} {N(joint.X)} {N(y1)}V{N(y2)}Q{N(joint.X)} {N(joint.ToY)} {N(joint.X + corner)} {N(joint.ToY)}";
    }

    /// <summary>A triangle whose tip points down at the line.</summary>
    public static string Tip(double x, double y) => $"M{N(x - 7)} {N(y - 12)}H{N(x + 7)}L{N(x)} {N(y)}Z";
}

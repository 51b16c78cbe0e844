using System.Globalization;

namespace JobBoard.Web.Pages.Floor;

/// <summary>Numbers for SVG attributes: a point, at most two decimals, whatever the server's language.</summary>
public static class FloorSvg
{
    /// <summary>One number.</summary>
    public static string N(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>The frame between a zone's edge and its inside, for an even-odd fill.</summary>
    public static string Frame(FloorBox zone)
    {
        var inside = zone.Inset(FloorLayout.ZoneBand);
        return $"{Rectangle(zone)}{Rectangle(inside)}";
    }

    /// <summary>A place as painted on the floor: the two long sides of a bay, the whole patch of anything else.</summary>
    public static string Paint(FloorPlaceKind kind, FloorBox edge) => kind == FloorPlaceKind.Bay
        ? $"M{N(edge.X)} {N(edge.Y)}V{N(edge.Bottom)}M{N(edge.Right)} {N(edge.Y)}V{N(edge.Bottom)}"
        : Rectangle(edge);

    private static string Rectangle(FloorBox box) => $"M{N(box.X)} {N(box.Y)}H{N(box.Right)}V{N(box.Bottom)}H{N(box.X)}Z";
}

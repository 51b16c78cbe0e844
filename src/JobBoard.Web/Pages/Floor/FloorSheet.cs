namespace JobBoard.Web.Pages.Floor;

/// <summary>
/// The wall as a sheet of 1920 × 1080 units (one pixel at 1080p) and the two type sizes on it. Sizes follow from capital heights: names, marks
/// and stops at least 20 arc minutes, all else at least 16 (ISO 9241-303 range), for the wall's viewing distance and screen diagonal.
/// </summary>
/// <param name="NamesType">Type size of names, marks and stops, in units.</param>
/// <param name="RestType">Type size of all else, in units.</param>
public sealed record FloorSheet(double NamesType, double RestType)
{
    /// <summary>Width of the sheet in units.</summary>
    public const double Width = 1920;

    /// <summary>Height of the sheet in units.</summary>
    public const double Height = 1080;

    /// <summary>Free edge all round.</summary>
    public const double Margin = 40;

    /// <summary>Height of the title line with the clock.</summary>
    public const double Head = 92;

    /// <summary>Width of the list of cars beside the map.</summary>
    public const double Side = 600;

    /// <summary>Free space between map and list, and between them and the strip of stops.</summary>
    public const double Gap = 28;

    /// <summary>Smallest type size that floor-sizes.css knows.</summary>
    public const int LeastType = 24;

    /// <summary>Largest type size that floor-sizes.css knows; larger would leave no room for words.</summary>
    public const int MostType = 96;

    /// <summary>Seen from 4 m on a 65 inch screen.</summary>
    public static FloorSheet Default { get; } = For(4, 65);

    /// <summary>Height of a line of names.</summary>
    public double NamesLine => Math.Ceiling(NamesType * 1.15);

    /// <summary>Height of a line of all else.</summary>
    public double RestLine => Math.Ceiling(RestType * 1.18);

    /// <summary>Sizes for a viewing distance in metres (above 0) and a 16:9 screen's diagonal in inches (above 0).</summary>
    public static FloorSheet For(double metres, double inches)
    {
        var unitsPerMetre = Height / (inches * 0.0254 * 9 / Math.Sqrt((16 * 16) + (9 * 9)));
        return new(TypeFor(20), TypeFor(16));

        double TypeFor(double arcMinutes)
        {
            var capital = 2 * metres * Math.Tan(arcMinutes / 60 * Math.PI / 180 / 2) * unitsPerMetre;
            return Math.Clamp(Math.Ceiling(capital / FloorFace.CapitalHeight), LeastType, MostType);
        }
    }
}

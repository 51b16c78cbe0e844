namespace JobBoard.Web.Pages.Cars.WhenReady.Drawing;

/// <summary>What a lane is for.</summary>
internal enum LaneKind
{
    /// <summary>A row's own height: line, bolts, slack.</summary>
    Row,

    /// <summary>Labels over a row.</summary>
    Over,

    /// <summary>Labels under a row.</summary>
    Under,

    /// <summary>Days.</summary>
    Axis,

    /// <summary>The date given.</summary>
    Given,
}

/// <summary>A strip of the picture in which things stand beside one another and never over one another.</summary>
internal readonly record struct Lane(LaneKind Kind, int Track)
{
    public static Lane Row(int track) => new(LaneKind.Row, track);

    public static Lane Over(int track) => new(LaneKind.Over, track);

    public static Lane Under(int track) => new(LaneKind.Under, track);

    public static Lane Axis { get; } = new(LaneKind.Axis, 0);

    public static Lane Given { get; } = new(LaneKind.Given, 0);
}

/// <summary>How far each lane is filled, from the left.</summary>
internal sealed class Lanes
{
    /// <summary>Left and right of everything.</summary>
    public const double Margin = 10;

    private readonly Dictionary<Lane, double> _right = [];

    /// <summary>How far the fullest is filled.</summary>
    public double Widest => _right.Values.DefaultIfEmpty(Margin).Max();

    /// <summary>The leftmost place that keeps a distance from what is there.</summary>
    public double After(Lane lane, double distance) => _right.TryGetValue(lane, out var right) ? right + distance : Margin;

    /// <summary>Fills a lane up to a place.</summary>
    public void Fill(Lane lane, double to) => _right[lane] = Math.Max(to, _right.GetValueOrDefault(lane, Margin));

    /// <summary>What a way across from one row to another passes between the two, both left out.</summary>
    public static IEnumerable<Lane> Between(int from, int to)
    {
        var down = from > to;
        yield return down ? Lane.Under(from) : Lane.Over(from);
        for (var t = Math.Min(from, to) + 1; t < Math.Max(from, to); t++)
        {
            yield return Lane.Over(t);
            yield return Lane.Row(t);
            yield return Lane.Under(t);
        }

        yield return down ? Lane.Over(to) : Lane.Under(to);
    }
}

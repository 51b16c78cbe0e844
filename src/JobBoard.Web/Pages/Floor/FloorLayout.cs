using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Floor;

/// <summary>Lays the wall out: the map to scale, every text measured and fitted, what finds no room counted or paged.</summary>
public static class FloorLayout
{
    /// <summary>Width over height by which the map may be stretched to fill its room.</summary>
    private const double MostStretch = 1.4;

    private const double WallThickness = 6;
    private const double RailThickness = 10;

    /// <summary>Thickness of the stripes round a keep-out zone, in units.</summary>
    public const double ZoneBand = 16;

    /// <summary>Height kept below the list of cars for the page and the note on dates, in units.</summary>
    private static double FootOf(FloorSheet sheet) => sheet.RestLine + 10;

    /// <summary>The drawing of <paramref name="view"/> on <paramref name="sheet"/>.</summary>
    public static FloorDrawing Arrange(FloorView view, FloorSheet sheet)
    {
        var (stopPages, strip) = FloorBeside.Stops(view.Stops, sheet);
        var bodyHeight = FloorSheet.Height - FloorSheet.Head - (strip > 0 ? strip + FloorSheet.Gap : FloorSheet.Margin);
        var mapWidth = FloorSheet.Width - (2 * FloorSheet.Margin) - FloorSheet.Gap - FloorSheet.Side;
        var map = new FloorBox(FloorSheet.Margin, FloorSheet.Head, mapWidth, bodyHeight);
        var scale = Scale.Of(view.Shop, new(0, 0, map.Width, map.Height));
        var gear = view.Gear.Select(each => Gear(each, scale)).ToImmutableArray();
        return new()
        {
            Sheet = sheet,
            Map = map,
            Walls = scale.Walls,
            Gear = gear,
            Places = Places(view, scale, gear, sheet),
            CarPages = FloorBeside.Cars(view.Cars, FloorSheet.Side, bodyHeight - FootOf(sheet), sheet),
            StopPages = stopPages,
            StripHeight = strip,
        };
    }

    private static ImmutableArray<FloorPlaceDrawing> Places(FloorView view, Scale scale, ImmutableArray<FloorGearDrawing> gear, FloorSheet sheet)
    {
        var edges = view.Places.Select(place => (place, scale.Box(place.Area))).ToList();
        var rooms = FloorRooms.Of(edges, scale.Walls, sheet);
        var painted = gear.SelectMany(each => each.Rails).Concat(gear.SelectMany(each => Bands(each.KeepOut))).ToList();
        return [.. edges.Select((edge, at) => Place(edge.place, edge.Item2, rooms[at], painted, sheet))];
    }

    private static FloorPlaceDrawing Place(FloorPlace place, FloorBox edge, FloorBox room, List<FloorBox> painted, FloorSheet sheet)
    {
        var (text, across) = ClearOf(painted, FloorPlaceText.Inside(room));
        return FloorPlaceText.Fit(place, place.Kind == FloorPlaceKind.Corner ? room : edge, text, across, sheet);
    }

    /// <summary>The widest part of the room clear of what is painted lengthways, and what is left that is painted across it.</summary>
    private static (FloorBox Text, List<FloorBox> Across) ClearOf(List<FloorBox> painted, FloorBox room)
    {
        var here = painted.Where(bar => bar.Overlaps(room)).ToList();
        var edges = new List<double> { room.X };
        foreach (var bar in here.Where(bar => bar.Height > bar.Width).OrderBy(bar => bar.X))
            edges.AddRange([bar.X - 6, bar.Right + 8]);
        edges.Add(room.Right);
        var widest = Enumerable.Range(0, edges.Count / 2).MaxBy(at => edges[(2 * at) + 1] - edges[2 * at]);
        var text = room with { X = edges[2 * widest], Width = Math.Max(0, edges[(2 * widest) + 1] - edges[2 * widest]) };
        return (text, [.. here.Where(bar => bar.Height <= bar.Width).Select(bar => bar.Inset(-4))]);
    }

    private static FloorGearDrawing Gear(FloorGear gear, Scale scale)
    {
        var sweep = scale.Box(gear.Sweep);
        var isAcross = sweep.Width >= sweep.Height;
        ImmutableArray<FloorBox> rails = !gear.OnRails
            ? []
            : isAcross
            ? [sweep with { Height = RailThickness }, sweep with { Y = sweep.Bottom - RailThickness, Height = RailThickness }]
            : [sweep with { Width = RailThickness }, sweep with { X = sweep.Right - RailThickness, Width = RailThickness }];
        return new(gear, sweep, gear.KeepOut is { } zone ? scale.Box(zone) : null, rails);
    }

    private static IEnumerable<FloorBox> Bands(FloorBox? zone)
    {
        if (zone is not { } box)
            return [];
        return
        [
            box with { Height = ZoneBand }, box with { Y = box.Bottom - ZoneBand, Height = ZoneBand },
            box with { Width = ZoneBand }, box with { X = box.Right - ZoneBand, Width = ZoneBand },
        ];
    }

    /// <summary>Metres to units, the shop centred in its room, stretched a little where that fills it better.</summary>
    private sealed record Scale(double X, double Y, FloorBox Walls)
    {
        public static Scale Of(FloorArea shop, FloorBox room)
        {
            var inner = room.Inset(WallThickness);
            var (x, y) = (inner.Width / shop.Width, inner.Height / shop.Depth);
            (x, y) = (Math.Min(x, y * MostStretch), Math.Min(y, x * MostStretch));
            var (width, height) = (x * shop.Width, y * shop.Depth);
            var walls = new FloorBox(inner.X + ((inner.Width - width) / 2), inner.Y + ((inner.Height - height) / 2), width, height);
            return new(x, y, walls);
        }

        public FloorBox Box(FloorArea area) => new(Walls.X + (area.X * X), Walls.Y + (area.Y * Y), area.Width * X, area.Depth * Y);
    }
}

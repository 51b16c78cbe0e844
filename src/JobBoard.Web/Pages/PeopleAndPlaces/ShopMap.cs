using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Places;
using JobBoard.Web.Pages.Floor;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>Draws the shop to scale in centimetres: each place with its name and the cars that stand there.</summary>
internal static class ShopMap
{
    private const double Type = 62;
    private const double Lead = 74;
    private const double Inset = 26;
    private const double Edge = 30;

    // A shop of one bay is not drawn larger than one of three.
    private const double Least = 1600;

    /// <summary>The map; nothing without places.</summary>
    public static ShopMapView? Of(ShopState shop)
    {
        if (shop.Places.IsEmpty) return null;
        var boxes = shop.Places.Values.Select(p => Box(p.Id, p.Area)).ToArray();
        var sweeps = shop.Gear.Values.Where(g => g.Sweep is not null).Select(g => Box(g.Id, g.Sweep!)).ToImmutableArray();
        var all = boxes.Concat(sweeps).ToArray();
        var places = shop.Places.Values.Zip(boxes, (p, b) => new MapPlace(b, Lines(shop, p, b)));
        return new(Math.Max(Least, all.Max(b => b.X + b.Width) + Edge), all.Max(b => b.Y + b.Height) + Edge, [.. places], sweeps);
    }

    private static MapBox Box(string id, Area area) =>
        new(id, ((double)area.X * 100) + Edge, ((double)area.Y * 100) + Edge, (double)area.Width * 100, (double)area.Depth * 100);

    private static ImmutableArray<MapText> Lines(ShopState shop, Place place, MapBox box)
    {
        var room = Math.Max(0, (int)((box.Height - (Inset / 2)) / Lead));
        if (room == 0) return [];
        var width = box.Width - (2 * Inset);
        var name = FloorText.Lines(place.Name, width, Type, bold: false, Math.Min(3, room)).Select(t => (Text: t, IsCar: false));
        var cars = shop.Cars.Values.Where(c => c.Place == place.Id).SelectMany(c => FloorText.Lines(c.Name, width, Type, bold: true, 2)).Select(t => (Text: t, IsCar: true));
        return [.. name.Concat(cars).Take(room).Select((line, i) => new MapText(line.Text, box.X + Inset, box.Y + Inset + Type + (i * Lead) - 8, line.IsCar))];
    }
}

namespace JobBoard.Web.Pages.Floor;

/// <summary>
/// Which floor each place's text may use: a bay's own rectangle; for a corner too small for its text also the free floor beside it,
/// never another place's and never beyond the walls.
/// </summary>
internal static class FloorRooms
{
    private const double Between = 10;

    /// <summary>The room of every place, in the order of <paramref name="places"/>.</summary>
    public static IReadOnlyList<FloorBox> Of(IReadOnlyList<(FloorPlace Place, FloorBox Edge)> places, FloorBox walls, FloorSheet sheet)
    {
        var rooms = places.Select(place => place.Edge).ToList();
        var corners = Enumerable.Range(0, rooms.Count).Where(at => places[at].Place.Kind == FloorPlaceKind.Corner);
        foreach (var at in corners.OrderByDescending(at => Urgency(places[at].Place)))
        {
            rooms[at] = Grow(places[at].Place, rooms[at], [.. rooms.Where((_, other) => other != at)], walls.Inset(Between), sheet);
        }
        return rooms;
    }

    /// <summary>Who is asked first when two want the same free floor.</summary>
    private static int Urgency(FloorPlace place) => (8 * place.Stops.Length) + (4 * place.Dangers.Length) + place.InHand.Length;

    private static FloorBox Grow(FloorPlace place, FloorBox room, List<FloorBox> others, FloorBox walls, FloorSheet sheet)
    {
        var width = FloorPlaceText.NaturalWidth(place, sheet) + (2 * FloorPlaceText.Pad) + 2;
        room = Wider(room, width, others, walls);
        var height = FloorPlaceText.NaturalHeight(place, FloorPlaceText.Inside(room), sheet) + (2 * FloorPlaceText.PadAbove) + 2;
        return Taller(room, height, others, walls);
    }

    private static FloorBox Wider(FloorBox room, double width, List<FloorBox> others, FloorBox walls)
    {
        var beside = others.Where(other => other.Y < room.Bottom && other.Bottom > room.Y).ToList();
        var right = beside.Where(other => other.X >= room.Right).Select(other => other.X - Between).Append(walls.Right).Min();
        var left = beside.Where(other => other.Right <= room.X).Select(other => other.Right + Between).Append(walls.X).Max();
        var growRight = Math.Clamp(width - room.Width, 0, Math.Max(0, right - room.Right));
        var growLeft = Math.Clamp(width - room.Width - growRight, 0, Math.Max(0, room.X - left));
        return room with { X = room.X - growLeft, Width = room.Width + growRight + growLeft };
    }

    private static FloorBox Taller(FloorBox room, double height, List<FloorBox> others, FloorBox walls)
    {
        var stacked = others.Where(other => other.X < room.Right && other.Right > room.X).ToList();
        var bottom = stacked.Where(other => other.Y >= room.Bottom).Select(other => other.Y - Between).Append(walls.Bottom).Min();
        var top = stacked.Where(other => other.Bottom <= room.Y).Select(other => other.Bottom + Between).Append(walls.Y).Max();
        var growDown = Math.Clamp(height - room.Height, 0, Math.Max(0, bottom - room.Bottom));
        var growUp = Math.Clamp(height - room.Height - growDown, 0, Math.Max(0, room.Y - top));
        return room with { Y = room.Y - growUp, Height = room.Height + growDown + growUp };
    }
}

using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Floor;

/// <summary>Writes a place page by page: name, car, stops and signs on every page, the rest in turn. Type never shrinks; what finds room on no page is counted.</summary>
internal static class FloorPlaceText
{
    /// <summary>Free edge between a place's painted sides and its text.</summary>
    public const double Pad = 11;

    /// <summary>Free edge above and below the text.</summary>
    public const double PadAbove = 5;

    /// <summary>Most pages of a place: at ten seconds a page everything has been seen within a minute.</summary>
    public const int MostPages = 6;

    /// <summary>What a rectangle leaves for text.</summary>
    public static FloorBox Inside(FloorBox edge) =>
        new(edge.X + Pad, edge.Y + PadAbove, Math.Max(0, edge.Width - (2 * Pad)), Math.Max(0, edge.Height - (2 * PadAbove)));

    /// <summary>Fits the place's text into <paramref name="room"/>.</summary>
    public static FloorPlaceDrawing Fit(FloorPlace place, FloorBox edge, FloorBox room, IReadOnlyList<FloorBox> painted, FloorSheet sheet)
    {
        var writer = new FloorPageWriter(place, room, painted, sheet);
        var (pages, more) = Dealt(writer, FloorEntry.Turning(place));
        while (more > 0 && pages[^1].Entries.Length > 0 && writer.Write(pages[^1], writer.Mark(pages.Count, pages.Count, more)) is null)
        {
            pages[^1] = pages[^1] with { Entries = pages[^1].Entries[..^1] };
            more++;
        }

        var written = pages.Select((page, at) => writer.Full(page, writer.Mark(at + 1, pages.Count, at == pages.Count - 1 ? more : 0)));
        return new(place, edge, room, [.. written.Select(blocks => blocks.ToImmutableArray())], more + writer.Dropped);
    }

    /// <summary>Entries dealt onto pages in their order, as many on each as find room; and how many find room on none.</summary>
    private static (List<FloorPage> Pages, int More) Dealt(FloorPageWriter writer, ImmutableArray<FloorEntry> entries)
    {
        List<FloorPage> pages = [new([])];
        var more = 0;
        foreach (var entry in entries)
        {
            var together = pages[^1] with { Entries = pages[^1].Entries.Add(entry) };
            if (writer.Write(together, null) is not null)
                pages[^1] = together;
            else if (Alone(writer, entry) is not { } alone || (pages[^1].Entries.Length > 0 && pages.Count == MostPages))
                more++;
            else if (pages[^1].Entries.IsEmpty)
                pages[^1] = alone;
            else
                pages.Add(alone);
        }

        return (pages, more);
    }

    /// <summary>The entry on a page of its own: whole, else without the place's name, else without who is on it, else without both.</summary>
    private static FloorPage? Alone(FloorPageWriter writer, FloorEntry entry)
    {
        var bare = entry with { People = null };
        FloorPage[] ways = [new([entry]), new([entry], IsNamed: false), new([bare]), new([bare], IsNamed: false)];
        return ways.FirstOrDefault(page => writer.Write(page, null) is not null);
    }

    /// <summary>Height the whole text would take at the width of <paramref name="room"/>.</summary>
    public static double NaturalHeight(FloorPlace place, FloorBox room, FloorSheet sheet)
    {
        var column = new FloorColumn(room with { Height = double.MaxValue / 4 }, [], sheet);
        column.Name(place.Name, null, FloorEntry.Signs(place));
        foreach (var entry in FloorPageWriter.CarOf(place).Concat(FloorEntry.Standing(place)).Concat(FloorEntry.Turning(place)))
            column.Write(entry, FloorFullness.Whole);
        return column.Used;
    }

    /// <summary>Width at which no line has to be broken, the place's name between its words aside.</summary>
    public static double NaturalWidth(FloorPlace place, FloorSheet sheet)
    {
        var entries = FloorPageWriter.CarOf(place).Concat(FloorEntry.Standing(place)).Concat(FloorEntry.Turning(place)).ToList();
        var words = place.Name.Split(' ').Select(word => Width(word, FloorStyle.Quiet));
        var titles = entries.Select(entry => entry.Marks.Sum(mark => mark.Box.Width + FloorColumn.MarkGap) + Width(entry.Title, entry.Style));
        var details = entries.SelectMany(entry => entry.More.Append(entry.People!)).OfType<FloorDetail>().Select(detail => Width(detail.Text, detail.Style));
        return words.Concat(titles).Concat(details).Max();

        double Width(string text, FloorStyle style) =>
            FloorFace.Width(text, style == FloorStyle.Name ? sheet.NamesType : sheet.RestType, style <= FloorStyle.Strong);
    }
}

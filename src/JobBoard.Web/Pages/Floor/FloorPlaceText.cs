using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Floor;

/// <summary>Chooses what of a place is written when not everything finds room, the most important first, and counts the rest.</summary>
internal static class FloorPlaceText
{
    /// <summary>Free edge between a place's painted sides and its text.</summary>
    public const double Pad = 11;

    /// <summary>Free edge above and below the text.</summary>
    public const double PadAbove = 5;

    /// <summary>What a rectangle leaves for text.</summary>
    public static FloorBox Inside(FloorBox edge) =>
        new(edge.X + Pad, edge.Y + PadAbove, Math.Max(0, edge.Width - (2 * Pad)), Math.Max(0, edge.Height - (2 * PadAbove)));

    /// <summary>Fits the place's text into <paramref name="room"/>.</summary>
    public static FloorPlaceDrawing Fit(FloorPlace place, FloorBox edge, FloorBox room, IReadOnlyList<FloorBox> painted, FloorSheet sheet)
    {
        var entries = FloorEntry.Of(place);
        var page = new Page(HeadThatFits(place, entries, room, painted, sheet), entries, room, painted, sheet);
        foreach (var kept in new[] { 0, 1 })
        {
            var taken = Choose(page, kept);
            var more = entries.Length - taken.Count(claim => claim.Detail is null);
            if (more > 0 && kept == 0)
                continue;
            if (page.Write(taken, more) is { } blocks)
                return new(place, edge, room, [.. blocks], more);
        }
        return new(place, edge, room, [.. page.Write(Choose(page, 0), 0) ?? []], entries.Length);
    }

    /// <summary>Name and car; in a place too small for both and a stop or danger, less of them.</summary>
    private static ImmutableArray<FloorEntry> HeadThatFits(
        FloorPlace place, ImmutableArray<FloorEntry> entries, FloorBox room, IReadOnlyList<FloorBox> painted, FloorSheet sheet)
    {
        var whole = Head(place);
        List<(FloorEntry, FloorDetail?)> urgent = place.Stops.Length + place.Dangers.Length > 0 ? [(entries[0], null)] : [];
        ImmutableArray<FloorEntry>[] shorter = [whole, [whole[^1]], [whole[0]]];
        return shorter.FirstOrDefault(head => new Page(head, entries, room, painted, sheet).Write(urgent, entries.Length > urgent.Count ? entries.Length : 0) is not null, []);
    }

    /// <summary>Takes claim after claim as long as everything taken still fits, with a line kept for "+2 more" where asked.</summary>
    private static List<(FloorEntry Entry, FloorDetail? Detail)> Choose(Page page, int kept)
    {
        var taken = new List<(FloorEntry Entry, FloorDetail? Detail)>();
        foreach (var claim in Claims(page.Entries))
        {
            var isTitleTaken = claim.Detail is null || taken.Contains((claim.Entry, null));
            if (isTitleTaken && page.Write([.. taken, claim], kept) is not null)
                taken.Add(claim);
        }
        return taken;
    }

    /// <summary>Height the whole text would take at the width of <paramref name="room"/>.</summary>
    public static double NaturalHeight(FloorPlace place, FloorBox room, FloorSheet sheet)
    {
        var column = new FloorColumn(room with { Height = double.MaxValue / 4 }, [], sheet);
        foreach (var entry in Head(place).Concat(FloorEntry.Of(place)))
            column.Write(entry, entry.Details);
        return column.Used;
    }

    /// <summary>Width at which no line of the text has to be broken.</summary>
    public static double NaturalWidth(FloorPlace place, FloorSheet sheet)
    {
        var entries = Head(place).Concat(FloorEntry.Of(place)).ToList();
        var titles = entries.Select(entry => entry.Marks.Sum(mark => mark.Box.Width + FloorColumn.MarkGap) + Width(entry.Title, entry.Style));
        var details = entries.SelectMany(entry => entry.Details).Select(detail => Width(detail.Text, detail.Style));
        return titles.Concat(details).DefaultIfEmpty(0).Max();

        double Width(string text, FloorStyle style) =>
            FloorFace.Width(text, style == FloorStyle.Name ? sheet.NamesType : sheet.RestType, style == FloorStyle.Name);
    }

    /// <summary>Everything that could be written, in the order in which it gets room.</summary>
    private static IEnumerable<(FloorEntry Entry, FloorDetail? Detail)> Claims(IReadOnlyList<FloorEntry> entries)
    {
        var details = entries.SelectMany(entry => entry.Details.Select(detail => (Entry: entry, Detail: (FloorDetail?)detail))).ToList();
        return
        [
            .. entries.Where(entry => !entry.IsNext).Select(entry => (entry, (FloorDetail?)null)),
            .. details.Where(claim => claim.Detail!.Rank == 1),
            .. entries.Where(entry => entry.IsNext).Select(entry => (entry, (FloorDetail?)null)),
            .. details.Where(claim => claim.Detail!.Rank > 1),
        ];
    }

    private static ImmutableArray<FloorEntry> Head(FloorPlace place)
    {
        var name = new FloorEntry("name", FloorStyle.Quiet, place.Name, [], []);
        return place.Car is null ? [name] : [name, new("car", FloorStyle.Name, place.Car, [], [])];
    }

    /// <summary>One attempt after another to write some of the entries into a room.</summary>
    private sealed record Page(
        ImmutableArray<FloorEntry> Head, ImmutableArray<FloorEntry> Entries, FloorBox Room, IReadOnlyList<FloorBox> Painted, FloorSheet Sheet)
    {
        /// <summary>Head, what was taken and the count of the rest; null where it does not fit.</summary>
        public List<FloorBlock>? Write(List<(FloorEntry Entry, FloorDetail? Detail)> taken, int more)
        {
            var column = new FloorColumn(Room, Painted, Sheet);
            var named = more > 0 ? HeadWith(more) : Head;
            var head = named.Select(entry => column.Write(entry, [], gap: 0));
            var body = Entries.Where(entry => taken.Contains((entry, null)))
                .Select(entry => column.Write(entry, entry.Details.Where(detail => taken.Contains((entry, detail)))));
            var foot = more == 0 || named != Head ? [] : new[] { More(more) }.Select(entry => column.Write(entry, []));
            var blocks = head.Concat(body).Concat(foot).ToList();
            return blocks.Contains(null) ? null : [.. blocks.OfType<FloorBlock>()];
        }

        /// <summary>The count beside the place's name where both fit on its line.</summary>
        private ImmutableArray<FloorEntry> HeadWith(int more)
        {
            if (Head.IsEmpty || Head[0].Style != FloorStyle.Quiet)
                return Head;
            var both = $"{Head[0].Title} · {FloorTexts.More(more)}";
            return FloorFace.Width(both, Sheet.RestType, false) <= Room.Width ? Head.SetItem(0, Head[0] with { Title = both }) : Head;
        }

        private static FloorEntry More(int count) => new("more", FloorStyle.Quiet, FloorTexts.More(count), [], []);
    }
}

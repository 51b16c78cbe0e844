using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Floor;

/// <summary>
/// The column of text on one place: lines one below the other, stepping over what is painted across (rails, the edge of a keep-out zone).
/// Whatever does not fit is refused; nothing is ever drawn beyond <paramref name="room"/>.
/// </summary>
internal sealed class FloorColumn(FloorBox room, IReadOnlyList<FloorBox> across, FloorSheet sheet)
{
    /// <summary>Free space after a mark.</summary>
    public const double MarkGap = 10;

    private const double EntryGap = 4;

    private double _y = room.Y;

    /// <summary>Height used so far.</summary>
    public double Used => _y - room.Y;

    /// <summary>Writes an entry with its first <paramref name="details"/> details, or nothing where it does not fit.</summary>
    public FloorBlock? Write(FloorEntry entry, IEnumerable<FloorDetail> details, double gap = EntryGap)
    {
        var start = _y;
        _y += start > room.Y ? gap : 0;
        var rows = new List<FloorRow>();
        var marks = new List<FloorMark>();
        var fits = Title(entry, rows, marks)
            && details.All(detail => Detail(detail, rows));
        if (fits)
            return new(entry.Id, [.. marks], [.. rows]);
        _y = start;
        return null;
    }

    private bool Title(FloorEntry asked, List<FloorRow> rows, List<FloorMark> marks)
    {
        var entry = Sized(asked);
        var indent = entry.Marks.Sum(mark => mark.Box.Width + MarkGap);
        if (indent == 0)
            return Lines(entry.Title, entry.Style, 2, 0, rows);
        var beside = Fit(entry.Title, entry.Style, room.Width - indent, 2);
        var apart = beside.Count == 0 || beside.Any(line => line[^1] == '-' || (line[^1] == '…' && entry.Marks[0].Kind == FloorMarkKind.Sign));
        var line = apart ? 0 : LineHeight(entry.Style);
        var tall = Math.Max(line, entry.Marks.Max(mark => mark.Box.Height));
        if (!Take(tall, out var y))
            return false;
        var x = room.X;
        foreach (var mark in entry.Marks)
        {
            marks.Add(mark with { Box = mark.Box with { X = x, Y = y + ((tall - mark.Box.Height) / 2) } });
            x += mark.Box.Width + MarkGap;
        }
        if (apart)
            return x <= room.Right + MarkGap && (Lines(entry.Title, entry.Style, 2, 0, rows) || SignsAlone(entry, y + tall, rows));
        rows.Add(Row(beside[0], entry.Style, x, y + ((tall - line) / 2)));
        return beside.Skip(1).All(text => Put(text, entry.Style, indent, rows));
    }

    /// <summary>A danger's words in the size of names where they fit on one line beside its signs, else heavy in the size of all else.</summary>
    private FloorEntry Sized(FloorEntry entry)
    {
        if (entry.Marks is not [{ Kind: FloorMarkKind.Sign }, ..])
            return entry;
        var indent = entry.Marks.Sum(mark => mark.Box.Width + MarkGap);
        var isShort = Fit(entry.Title, FloorStyle.Name, room.Width - indent, 2).Count == 1;
        return isShort ? entry : entry with { Style = FloorStyle.Strong };
    }

    /// <summary>A danger's signs stay where its words find no room.</summary>
    private bool SignsAlone(FloorEntry entry, double below, List<FloorRow> rows)
    {
        if (entry.Marks[0].Kind != FloorMarkKind.Sign)
            return false;
        rows.Clear();
        _y = below;
        return true;
    }

    /// <summary>Text and tail on one line where they fit, else below each other.</summary>
    private bool Detail(FloorDetail detail, List<FloorRow> rows)
    {
        if (detail.Tail is null)
            return Lines(detail.Text, detail.Style, detail.MostLines, 0, rows);
        return Fit($"{detail.Text}, {detail.Tail}", detail.Style, room.Width, 1) is [var line] && line.EndsWith(detail.Tail, StringComparison.Ordinal)
            ? Put(line, detail.Style, 0, rows)
            : Lines(detail.Text, detail.Style, detail.MostLines, 0, rows) && Tail(detail, rows);
    }

    /// <summary>The tail on a line of its own; left out where there is none left.</summary>
    private bool Tail(FloorDetail detail, List<FloorRow> rows)
    {
        var before = _y;
        if (!Lines(detail.Tail!, detail.Style, 1, 0, rows))
            _y = before;
        return true;
    }

    private bool Lines(string text, FloorStyle style, int most, double indent, List<FloorRow> rows)
    {
        var lines = Fit(text, style, room.Width - indent, most);
        return lines.Count > 0 && lines.All(line => Put(line, style, indent, rows));
    }

    private bool Put(string text, FloorStyle style, double indent, List<FloorRow> rows)
    {
        if (!Take(LineHeight(style), out var y))
            return false;
        rows.Add(Row(text, style, room.X + indent, y));
        return true;
    }

    /// <summary>Takes a strip of the column below everything taken before and clear of what is painted across.</summary>
    private bool Take(double height, out double y)
    {
        y = _y;
        while (Blocking(new(room.X, y, room.Width, height)) is { } bar)
            y = bar.Bottom;
        _y = y + height;
        return _y <= room.Bottom;
    }

    private FloorBox? Blocking(FloorBox strip)
    {
        foreach (var bar in across)
        {
            if (bar.Overlaps(strip))
                return bar;
        }
        return null;
    }

    private FloorRow Row(string text, FloorStyle style, double x, double y)
    {
        var (type, line) = (Type(style), LineHeight(style));
        var baseline = y + (line / 2) + (type * FloorFace.CapitalHeight / 2);
        return new(text, style, x, baseline, new(x, y, FloorFace.Width(text, type, style <= FloorStyle.Strong), line));
    }

    private IReadOnlyList<string> Fit(string text, FloorStyle style, double width, int most) =>
        FloorText.Lines(text, width, Type(style), style <= FloorStyle.Strong, most);

    private double Type(FloorStyle style) => style == FloorStyle.Name ? sheet.NamesType : sheet.RestType;

    private double LineHeight(FloorStyle style) => style == FloorStyle.Name ? sheet.NamesLine : sheet.RestLine;
}

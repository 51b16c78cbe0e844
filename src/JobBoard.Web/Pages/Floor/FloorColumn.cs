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

    /// <summary>The place's name with what stands beside it, and its signs at the end of the line, or below it where they do not fit.</summary>
    public IEnumerable<FloorBlock?> Name(string name, string? mark, ImmutableArray<FloorMark> signs)
    {
        var taken = signs.Sum(sign => sign.Box.Width + MarkGap);
        if (signs.IsEmpty || FloorFace.Width(name, sheet.RestType, false) + taken > room.Width)
            return signs.IsEmpty ? [NameAlone(name, mark, room.Width)] : [NameAlone(name, mark, room.Width), Row("signs", signs)];
        var tall = Math.Max(sheet.RestLine, signs.Max(sign => sign.Box.Height));
        if (!Take(tall, out var y)) return [null];
        var text = WithMark(name, mark, room.Width - taken);
        var x = room.Right - taken + MarkGap;
        List<FloorMark> marks = [];
        foreach (var sign in signs)
        {
            marks.Add(sign with { Box = sign.Box with { X = x, Y = y + ((tall - sign.Box.Height) / 2) } });
            x += sign.Box.Width + MarkGap;
        }

        return [new("name", [], [Row(text, FloorStyle.Quiet, room.X, y + ((tall - sheet.RestLine) / 2))]), new("signs", [.. marks], [])];
    }

    /// <summary>Marks in a row of their own.</summary>
    public FloorBlock? Row(string id, ImmutableArray<FloorMark> marks)
    {
        var fits = (int)((room.Width + MarkGap) / (marks[0].Box.Width + MarkGap));
        if (fits == 0 || !Take(marks[0].Box.Height, out var y)) return null;
        return new(id, [.. marks.Take(fits).Select((mark, at) => mark with { Box = mark.Box with { X = room.X + (at * (mark.Box.Width + MarkGap)), Y = y } })], []);
    }

    private FloorBlock? NameAlone(string name, string? mark, double width)
    {
        var rows = new List<FloorRow>();
        return Lines(WithMark(name, mark, width), FloorStyle.Quiet, 2, 0, rows) ? new("name", [], [.. rows]) : null;
    }

    /// <summary>Whether a mark finds room in the line of the name, signs at its end or not.</summary>
    public bool HasRoomBeside(string name, string mark, ImmutableArray<FloorMark> signs)
    {
        var taken = signs.Sum(sign => sign.Box.Width + MarkGap);
        var isShared = FloorFace.Width(name, sheet.RestType, false) + taken <= room.Width;
        return WithMark(name, mark, isShared ? room.Width - taken : room.Width) != name;
    }

    /// <summary>Bay 1, 1/2 where both fit on the line, or end on the name's second one.</summary>
    private string WithMark(string name, string? mark, double width)
    {
        var both = $"{name}, {mark?.Replace(' ', '\u00a0')}";
        var lines = Fit(both, FloorStyle.Quiet, width, 2);
        var isHeld = mark is not null && lines.Count > 0 && lines[^1].EndsWith(both[^mark.Length..], StringComparison.Ordinal);
        return isHeld && lines.Count <= Math.Max(1, Fit(name, FloorStyle.Quiet, width, 2).Count) ? both : name;
    }

    /// <summary>Writes an entry, or nothing where it does not fit.</summary>
    public FloorBlock? Write(FloorEntry entry, FloorFullness fullness, double gap = EntryGap)
    {
        var start = _y;
        _y += start > room.Y ? gap : 0;
        var rows = new List<FloorRow>();
        var marks = new List<FloorMark>();
        var fits = Title(entry, rows, marks) && (fullness == FloorFullness.Short ? OneLine(entry.People, rows) : Whole(entry, rows));
        if (fits)
            return new(entry.Id, [.. marks], [.. rows]);
        _y = start;
        return null;
    }

    /// <summary>Who is on it, in as many names as one line holds.</summary>
    private bool OneLine(FloorDetail? people, List<FloorRow> rows)
    {
        if (people is null) return true;
        var fitting = people.Shorter.FirstOrDefault(text => FloorFace.Width(text, Type(people.Style), people.Style <= FloorStyle.Strong) <= room.Width);
        return Lines(fitting ?? people.Text, people.Style, 1, 0, rows);
    }

    private bool Whole(FloorEntry entry, List<FloorRow> rows)
    {
        IEnumerable<FloorDetail> details = entry.People is null ? entry.More : entry.More.Prepend(entry.People);
        return details.All(detail => Lines(detail.Text, detail.Style, detail.MostLines, 0, rows));
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

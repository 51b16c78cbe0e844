using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Floor;

/// <summary>What is written on one page beside what stands on all; without the place's name where that makes room for work in hand.</summary>
internal sealed record FloorPage(ImmutableArray<FloorEntry> Entries, bool IsNamed = true);

/// <summary>Writes one page after another of a place into the same room.</summary>
internal sealed class FloorPageWriter
{
    private readonly FloorPlace _place;
    private readonly FloorBox _room;
    private readonly IReadOnlyList<FloorBox> _painted;
    private readonly FloorSheet _sheet;
    private readonly ImmutableArray<FloorMark> _signs;
    private ImmutableArray<FloorEntry> _standing;
    private bool _isNamed = true;
    private bool _hasCar;

    /// <summary>A writer whose name, car, stops and signs fit; in a place too small for them less and less of them.</summary>
    public FloorPageWriter(FloorPlace place, FloorBox room, IReadOnlyList<FloorBox> painted, FloorSheet sheet)
    {
        (_place, _room, _painted, _sheet) = (place, room, painted, sheet);
        _signs = FloorEntry.Signs(place);
        _standing = FloorEntry.Standing(place);
        _hasCar = place.Car is not null;
        Shorten();
    }

    /// <summary>How many stops and hanging loads found no room at all.</summary>
    public int Dropped { get; private set; }

    /// <summary>The car as an entry.</summary>
    public static IEnumerable<FloorEntry> CarOf(FloorPlace place) => place.Car is null ? [] : [new("car", FloorStyle.Name, place.Car, [])];

    /// <summary>What stands beside the name: which page, or how much is left out.</summary>
    public string? Mark(int page, int pages, int more) =>
        more + Dropped > 0 && page == pages ? FloorTexts.More(more + Dropped) : pages > 1 ? $"{page}/{pages}" : null;

    /// <summary>The page with these entries as short as they go; nothing where they do not fit.</summary>
    public List<FloorBlock>? Write(FloorPage page, string? mark) => Write(page, mark, 0);

    /// <summary>The page with these entries, each as full as room is left for, the first before the last.</summary>
    public List<FloorBlock> Full(FloorPage page, string? mark)
    {
        var best = Write(page, mark, 0) ?? Write(page, null, 0) ?? [];
        for (var whole = 1; whole <= page.Entries.Length + _standing.Length; whole++)
            best = Write(page, mark, whole) ?? best;
        return best;
    }

    private List<FloorBlock>? Write(FloorPage page, string? mark, int whole)
    {
        var entries = page.Entries;
        var isNamed = _isNamed && page.IsNamed;
        var column = new FloorColumn(_room, _painted, _sheet);
        var blocks = new List<FloorBlock?>();
        if (isNamed) blocks.AddRange(column.Name(_place.Name, mark, _signs));
        else if (!_signs.IsEmpty) blocks.Add(column.Row("signs", _signs));
        if (_hasCar) blocks.AddRange(CarOf(_place).Select(car => column.Write(car, FloorFullness.Short, gap: 0)));
        var all = _standing.Select((entry, at) => (entry, Turn: entries.Length + at)).Concat(entries.Select((entry, at) => (entry, Turn: at)));
        blocks.AddRange(all.Select(each => column.Write(each.entry, each.Turn < whole ? FloorFullness.Whole : FloorFullness.Short)));
        if (mark is { } left && left[0] == '+' && !(isNamed && column.HasRoomBeside(_place.Name, left, _signs))) blocks.Add(column.Write(new("more", FloorStyle.Quiet, left, []), FloorFullness.Short));
        return blocks.Contains(null) ? null : [.. blocks.OfType<FloorBlock>()];
    }

    /// <summary>Gives up the place's name before its car, the car before a stop, and stops from the last.</summary>
    private void Shorten()
    {
        while (Write(new([]), null, 0) is null)
        {
            if (_isNamed && _hasCar) _isNamed = false;
            else if (_hasCar) (_hasCar, _isNamed) = (false, true);
            else if (_isNamed && _standing.Length + _signs.Length > 0) _isNamed = false;
            else if (_standing.IsEmpty) return;
            else (_standing, Dropped) = (_standing[..^1], Dropped + 1);
        }
    }
}

using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Floor;

/// <summary>Fits the cars beside the map and the stops below it, page by page.</summary>
internal static class FloorBeside
{
    private const double CarGap = 30;
    private const double LineGap = 24;
    private const double StripPad = 18;
    private const double OctagonRoom = 104;

    /// <summary>Cars in pages of a column of this size; pages are as even as they can be, the order is kept.</summary>
    public static ImmutableArray<ImmutableArray<FloorCarDrawing>> Cars(IReadOnlyList<FloorCar> cars, double width, double height, FloorSheet sheet)
    {
        var drawn = cars.Select(car => Car(car, width, sheet)).ToList();
        var pages = Pages(drawn, height);
        return [.. pages.Select(page => page.ToImmutableArray())];
    }

    /// <summary>Stops in pages of at most two, one below the other, with the height that the tallest page takes.</summary>
    public static (ImmutableArray<ImmutableArray<FloorStopDrawing>> Pages, double Height) Stops(IReadOnlyList<FloorStop> stops, FloorSheet sheet)
    {
        if (stops.Count == 0)
            return ([], 0);
        const double width = FloorSheet.Width - (2 * FloorSheet.Margin) - OctagonRoom;
        var drawn = stops.Select(stop => stops.Count == 1 ? Only(stop, width, sheet) : OneOfSeveral(stop, width, sheet));
        var pages = drawn.Chunk(2).Select(page => page.ToImmutableArray()).ToImmutableArray();
        var tallest = pages.Max(page => page.Sum(stop => stop.Lines.Sum(line => Height(line.Style, sheet))));
        return (pages, tallest + (2 * StripPad) + (stops.Count > 1 ? sheet.RestLine : 0));
    }

    private static List<List<FloorCarDrawing>> Pages(List<FloorCarDrawing> cars, double height)
    {
        var least = Fill(cars, height);
        if (least.Count <= 1)
            return least;
        var even = cars.Sum(car => car.Height + CarGap) / least.Count;
        for (var target = even; target < height; target += 20)
        {
            var pages = Fill(cars, target);
            if (pages.Count <= least.Count)
                return pages;
        }
        return least;
    }

    private static List<List<FloorCarDrawing>> Fill(List<FloorCarDrawing> cars, double height)
    {
        var pages = new List<List<FloorCarDrawing>>();
        var used = double.MaxValue;
        foreach (var car in cars)
        {
            if (used + CarGap + car.Height > height)
            {
                pages.Add([]);
                used = -CarGap;
            }
            pages[^1].Add(car);
            used += CarGap + car.Height;
        }
        return pages;
    }

    private static FloorCarDrawing Car(FloorCar car, double width, FloorSheet sheet)
    {
        List<FloorCarLine> lines =
        [
            .. Pair(car.Name, FloorStyle.Name, car.Stage, FloorStyle.Quiet, width, sheet),
            .. Pair(FloorTexts.Date(car.Date), FloorStyle.Name, car.Date.Moved, FloorStyle.Plain, width, sheet),
        ];
        if (FloorTexts.DateNote(car.Date) is { } note)
            lines.AddRange(Wrapped(note, FloorStyle.Plain, width, 1, sheet));
        if (FloorTexts.Next(car) is { } next)
            lines.AddRange(Wrapped(next, FloorStyle.Quiet, width, 2, sheet));
        return new(car, [.. lines], lines.Sum(line => Height(line.Style, sheet)));
    }

    /// <summary>While somebody has not heard, that is what the strip says largest; afterwards how it stands and who releases it.</summary>
    private static FloorStopDrawing Only(FloorStop stop, double width, FloorSheet sheet)
    {
        var isHeard = stop.NotHeard.Length == 0;
        var heard = isHeard && stop.Note is not null ? $"{FloorTexts.Heard(stop)}. {stop.Note}" : FloorTexts.Heard(stop);
        var style = isHeard ? FloorStyle.Plain : FloorStyle.Name;
        var (title, state) = (FloorTexts.StopTitle(stop), FloorTexts.StopState(stop));
        if (Both(title, FloorStyle.Name, state, width, sheet))
            return new(stop, [new(title, FloorStyle.Name, state, FloorStyle.Quiet), .. Pair(heard, style, FloorTexts.NoEmergencyStop, FloorStyle.Quiet, width, sheet)]);
        var below = $"{FloorTexts.RaisedBy(stop)}. {FloorTexts.NoEmergencyStop}";
        return new(stop,
        [
            .. Wrapped(title, FloorStyle.Name, width, 2, sheet),
            .. Pair(heard, style, Both(heard, style, below, width, sheet) ? below : FloorTexts.NoEmergencyStop, FloorStyle.Quiet, width, sheet),
        ]);
    }

    private static bool Both(string left, FloorStyle style, string right, double width, FloorSheet sheet) =>
        Width(left, style, sheet) + LineGap + Width(right, FloorStyle.Quiet, sheet) <= width;

    private static FloorStopDrawing OneOfSeveral(FloorStop stop, double width, FloorSheet sheet)
    {
        var style = stop.NotHeard.Length == 0 ? FloorStyle.Quiet : FloorStyle.Name;
        return new(stop, [.. Pair(FloorTexts.StopTitle(stop), FloorStyle.Name, FloorTexts.Heard(stop), style, width, sheet)]);
    }

    /// <summary>Left and right on one line where both fit; the right one on a line of its own where not.</summary>
    private static IEnumerable<FloorCarLine> Pair(
        string left, FloorStyle style, string? right, FloorStyle rightStyle, double width, FloorSheet sheet)
    {
        if (right is null)
            return Wrapped(left, style, width, 2, sheet);
        if (Width(left, style, sheet) + LineGap + Width(right, rightStyle, sheet) <= width)
            return [new(left, style, right, rightStyle)];
        return [.. Wrapped(left, style, width, 2, sheet), .. Wrapped(right, rightStyle, width, 1, sheet)];
    }

    private static IEnumerable<FloorCarLine> Wrapped(string text, FloorStyle style, double width, int most, FloorSheet sheet) =>
        FloorText.Lines(text, width, Type(style, sheet), style == FloorStyle.Name, most).Select(line => new FloorCarLine(line, style));

    private static double Width(string text, FloorStyle style, FloorSheet sheet) =>
        FloorFace.Width(text, Type(style, sheet), style == FloorStyle.Name);

    private static double Type(FloorStyle style, FloorSheet sheet) => style == FloorStyle.Name ? sheet.NamesType : sheet.RestType;

    private static double Height(FloorStyle style, FloorSheet sheet) => style == FloorStyle.Name ? sheet.NamesLine : sheet.RestLine;
}

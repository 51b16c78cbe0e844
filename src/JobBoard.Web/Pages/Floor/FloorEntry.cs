using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Floor;

/// <summary>
/// A line under an entry's title. <paramref name="Rank"/>: 1 is wanted before the titles of what can start, 2 after them;
/// <paramref name="Tail"/> goes on the same line where it fits.
/// </summary>
internal sealed record FloorDetail(string Text, FloorStyle Style, int Rank, int MostLines = 1, string? Tail = null);

/// <summary>One thing to write on a place: its marks, its title and what comes under it.</summary>
internal sealed record FloorEntry(
    string Id, FloorStyle Style, string Title, ImmutableArray<FloorMark> Marks, ImmutableArray<FloorDetail> Details, bool IsNext = false)
{
    /// <summary>What a place has to say, the most important first: stop, danger, in hand, held, can start.</summary>
    public static ImmutableArray<FloorEntry> Of(FloorPlace place) =>
    [
        .. place.Stops.Select(Stop),
        .. place.Dangers.Take(1).Select(Danger),
        .. Further(place),
        .. place.InHand.Select(InHand),
        .. place.Held.Select(tag => new FloorEntry($"tag-{tag.Id}", FloorStyle.Plain, FloorTexts.Held(tag.Words), [Mark(FloorMarkKind.Tag, 48)], [])),
        .. place.CanStart.Select(Next),
        .. Empty(place),
    ];

    private static FloorEntry Stop(FloorPlaceStop stop) => new(
        $"stop-{stop.Id}", FloorStyle.Name, FloorTexts.Stop, [Mark(FloorMarkKind.Stop, 52)],
        [.. stop.Words.Select((words, at) => new FloorDetail(words, at == 0 ? FloorStyle.Plain : FloorStyle.Quiet, at == 0 ? 1 : 2, 2))]);

    private static FloorEntry Danger(FloorDanger danger) => new(
        $"danger-{danger.Id}", FloorStyle.Name, danger.Words,
        [.. danger.Signs.Select(sign => new FloorMark(FloorMarkKind.Sign, new(0, 0, 60, 60), sign))], []);

    /// <summary>The signs of further dangers in one row, their words below where there is room: work in hand is to be seen beside them.</summary>
    private static IEnumerable<FloorEntry> Further(FloorPlace place)
    {
        var further = place.Dangers.Skip(1).ToList();
        if (further.Count == 0)
            return [];
        var words = new FloorDetail(string.Join(", ", further.Select(danger => danger.Words)), FloorStyle.Strong, 2, 3);
        var signs = further.SelectMany(danger => danger.Signs).Distinct().Take(4).Select(sign => new FloorMark(FloorMarkKind.Sign, new(0, 0, 60, 60), sign));
        return [new("dangers-further", FloorStyle.Strong, string.Empty, [.. signs], [words])];
    }

    private static FloorEntry InHand(FloorTask task)
    {
        var details = new List<FloorDetail>();
        if (task.Car is not null)
            details.Add(new(task.Car, FloorStyle.Plain, 1, 2));
        details.Add(task.People.Length > 0
            ? new(string.Join(", ", task.People), FloorStyle.Quiet, 1, 2, FloorTexts.Worked(task))
            : new(FloorTexts.Worked(task), FloorStyle.Quiet, 1));
        if (task.OverItsEstimate)
            details.Add(new(FloorTexts.Over, FloorStyle.Plain, 2, 2));
        return new($"task-{task.Id}", FloorStyle.Plain, task.Name, [Mark(FloorMarkKind.InHand, 48)], [.. details]);
    }

    private static FloorEntry Next(FloorNext next) => new(
        $"next-{next.Id}", FloorStyle.Plain, next.Name, [Mark(FloorMarkKind.NotStarted, 48)],
        next.Words is null ? [] : [new(next.Words, FloorStyle.Quiet, 2, 2)], IsNext: true);

    private static IEnumerable<FloorEntry> Empty(FloorPlace place)
    {
        if (place is { Kind: FloorPlaceKind.Bay, Car: null, Stops: [], Dangers: [], InHand: [], Held: [], CanStart: [] })
            yield return new("empty", FloorStyle.Quiet, FloorTexts.Empty, [], []);
    }

    private static FloorMark Mark(FloorMarkKind kind, double size) => new(kind, new(0, 0, size, size));
}

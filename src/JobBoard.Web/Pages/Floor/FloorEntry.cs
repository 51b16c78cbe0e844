using System.Collections.Immutable;
using JobBoard.Web.Marks;

namespace JobBoard.Web.Pages.Floor;

/// <summary>A line under an entry's title; <paramref name="Shorter"/>: what is written instead where there is one line only, the fullest first.</summary>
internal sealed record FloorDetail(string Text, FloorStyle Style, int MostLines, ImmutableArray<string> Shorter);

/// <summary>How much of an entry is written.</summary>
internal enum FloorFullness
{
    /// <summary>Title, and who is on it on one line.</summary>
    Short,

    /// <summary>Everything that belongs to it.</summary>
    Whole,
}

/// <summary>One thing to write on a place: its marks, its title, what comes under it, and what only where room is left.</summary>
internal sealed record FloorEntry(string Id, FloorStyle Style, string Title, ImmutableArray<FloorMark> Marks)
{
    /// <summary>Always written under the title, cut to a line where room is short.</summary>
    public FloorDetail? People { get; init; }

    /// <summary>Written where room is left.</summary>
    public ImmutableArray<FloorDetail> More { get; init; } = [];

    /// <summary>Stands on every page of the place: stops, and a load that hangs.</summary>
    public static ImmutableArray<FloorEntry> Standing(FloorPlace place) => [.. place.Stops.Select(Stop), .. place.Dangers.Where(IsOverhead).Select(Overhead)];

    /// <summary>The signs of the other dangers, each once: they are in sight on every page.</summary>
    public static ImmutableArray<FloorMark> Signs(FloorPlace place) =>
        [.. place.Dangers.Where(danger => !IsOverhead(danger)).SelectMany(danger => danger.Signs).Distinct().Take(4).Select(Sign)];

    /// <summary>What is turned through page by page, the most important first: in hand, the dangers in words, held, what can start next (the list beside the map counts the others).</summary>
    public static ImmutableArray<FloorEntry> Turning(FloorPlace place) =>
    [
        .. place.InHand.Select(InHand),
        .. place.Dangers.Where(danger => !IsOverhead(danger)).Select(InWords),
        .. place.Held.Select(tag => new FloorEntry($"tag-{tag.Id}", FloorStyle.Plain, FloorTexts.Held(tag.Words), [Mark(FloorMarkKind.Tag, 48)])),
        .. place.CanStart.Take(place.InHand.IsEmpty ? 2 : 1).Select(Next),
        .. Empty(place),
    ];

    /// <summary>Nobody may be under it: said in large words and not by its sign alone.</summary>
    private static bool IsOverhead(FloorDanger danger) => danger.Signs.Contains(SafetySignKind.W015);

    private static FloorEntry Stop(FloorPlaceStop stop) => new($"stop-{stop.Id}", FloorStyle.Name, FloorTexts.Stop, [Mark(FloorMarkKind.Stop, 52)])
    {
        More = [.. stop.Words.Select((words, at) => new FloorDetail(words, at == 0 ? FloorStyle.Plain : FloorStyle.Quiet, at == 0 ? 1 : 2, []))],
    };

    private static FloorEntry Overhead(FloorDanger danger) => new($"danger-{danger.Id}", FloorStyle.Name, danger.Words, [.. danger.Signs.Select(Sign)]);

    private static FloorEntry InWords(FloorDanger danger) => new($"danger-{danger.Id}", FloorStyle.Strong, danger.Words, []);

    private static FloorEntry InHand(FloorTask task)
    {
        var people = new FloorDetail(string.Join(", ", task.People), FloorStyle.Quiet, 2, Shorter(task.People));
        var worked = new FloorDetail(FloorTexts.Worked(task), FloorStyle.Quiet, 1, []);
        return new($"task-{task.Id}", FloorStyle.Plain, task.Name, [Mark(FloorMarkKind.InHand, 48)])
        {
            People = task.People.IsEmpty ? null : people,
            More =
            [
                .. task.Car is null ? Array.Empty<FloorDetail>() : [new(task.Car, FloorStyle.Plain, 2, [])],
                worked,
                .. task.OverItsEstimate ? [new(FloorTexts.Over, FloorStyle.Plain, 2, [])] : Array.Empty<FloorDetail>(),
            ],
        };
    }

    /// <summary>Inga, Sol, +2 and so on down to the first name alone.</summary>
    private static ImmutableArray<string> Shorter(ImmutableArray<string> people) =>
        [string.Join(", ", people), .. Enumerable.Range(1, Math.Max(0, people.Length - 1)).Select(left => $"{string.Join(", ", people.Take(people.Length - left))}, +{left}")];

    private static FloorEntry Next(FloorNext next) => new($"next-{next.Id}", FloorStyle.Plain, next.Name, [Mark(FloorMarkKind.NotStarted, 48)])
    {
        More = next.Words is null ? [] : [new(next.Words, FloorStyle.Quiet, 2, [])],
    };

    private static IEnumerable<FloorEntry> Empty(FloorPlace place)
    {
        if (place is { Kind: FloorPlaceKind.Bay, Car: null, Stops: [], Dangers: [], InHand: [], Held: [], CanStart: [] })
            yield return new("empty", FloorStyle.Quiet, FloorTexts.Empty, []);
    }

    private static FloorMark Sign(SafetySignKind sign) => new(FloorMarkKind.Sign, new(0, 0, 60, 60), sign);

    private static FloorMark Mark(FloorMarkKind kind, double size) => new(kind, new(0, 0, size, size));
}

using System.Collections.Frozen;
using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Places;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Cars.WhenReady.Drawing;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars.WhenReady;

/// <summary>The picture of When ready, placed, with what stands at each bolt.</summary>
public sealed record ReadyPictureView
{
    /// <summary>The car's id.</summary>
    public string Car { get; init; } = "";

    /// <summary>The picture, or nothing when the car is gone.</summary>
    public ReadyDrawing? Drawing { get; init; }

    /// <summary>What stands at each bolt, by id.</summary>
    public FrozenDictionary<string, ReadyUnit> Units { get; init; } = FrozenDictionary<string, ReadyUnit>.Empty;

    /// <summary>Whether finished stages are shown task by task.</summary>
    public bool Unfolded { get; init; }

    /// <summary>How many stages are finished.</summary>
    public int FinishedStages { get; init; }

    /// <summary>When this was evaluated, to the minute.</summary>
    public DateTimeOffset At { get; init; }

    /// <summary>For a car; an empty one when it is gone.</summary>
    public static ReadyPictureView Of(Picture picture, string carId, bool unfolded)
    {
        if (!picture.Shop.Cars.TryGetValue(carId, out var car)) return new();
        var units = ReadyUnits.Of(picture, car, unfolded);
        return new()
        {
            Car = carId,
            Drawing = ReadyLayout.Of(Plan(picture, car, units)),
            Units = units.All.ToFrozenDictionary(u => u.Id, StringComparer.Ordinal),
            Unfolded = unfolded,
            FinishedStages = units.FinishedStages,
            At = picture.Minute,
        };
    }

    /// <summary>The plan that is placed.</summary>
    public static ReadyPlan Plan(Picture picture, CarBoard car, ReadyUnits units)
    {
        var from = units.All.Select(u => u.Start).Append(picture.Now).Min();
        var to = units.All.Select(u => u.Finish).Append(picture.Now).Max();
        var time = new WorkTime(ShopHours.Of(picture.Shop), from.AddDays(-1), car.DateGiven > to ? car.DateGiven.Value : to);
        return new()
        {
            Steps = [.. units.All.Select(u => Step(u, time))],
            Links = [.. units.Links.Select(l => new ReadyLink(l.Task, l.After))],
            Line = units.Line,
            Now = time.Of(picture.Now),
            NowWords = "00:00",
            EndWords = [.. EndWords(picture, units)],
            Days = Days(picture, time, units),
            Given = car.DateGiven is { } given && given > from ? new(time.Of(given), "date given") : null,
        };
    }

    private static ReadyStep Step(ReadyUnit unit, WorkTime time) => new(unit.Id, unit.Name, time.Of(unit.Start), time.Of(unit.Finish))
    {
        InHand = unit.InHand,
        Note = unit.Note,
        Held = unit.Mark != ReadyMark.None,
        Slack = unit.OnLine || unit.Slack is not { TotalMinutes: >= 5 } slack ? null : "slack " + Rough(slack),
    };

    /// <summary>A span for the picture: to the quarter of an hour, from four hours on to the hour.</summary>
    public static string Rough(TimeSpan span)
    {
        var step = span.TotalHours >= 4 ? 60 : span.TotalHours >= 1 ? 15 : 5;
        return ShopTime.Span(TimeSpan.FromMinutes(step * Math.Floor(span.TotalMinutes / step)));
    }

    private static IEnumerable<string> EndWords(Picture picture, ReadyUnits units)
    {
        if (units.Dates.IsDone) return ["Done"];
        if (units.Dates.Earliest is null) return ["Not known", "drawn as if what", "it rests on came now"];
        return [PlannedTime.Of(picture.Local(units.Dates.Earliest.Value), picture.Now), "earliest possible,", "people and places aside"];
    }

    // Days on which nothing ends are left out.
    private static ImmutableArray<ReadyDay> Days(Picture picture, WorkTime time, ReadyUnits units)
    {
        var with = units.All.Select(u => picture.Local(u.Finish).Date).Append(picture.Now.Date).ToHashSet();
        return [.. time.Openings.GroupBy(o => picture.Local(o).Date).Where(g => with.Contains(g.Key)).Select(g => new ReadyDay(time.Of(g.Min()), ShopTime.Day(picture.Local(g.Min()))))];
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Bay;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.Cars.Car;

/// <summary>The head of a car's page.</summary>
public sealed record CarHeadView
{
    /// <summary>When this was evaluated, to the minute.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The car in a few lines, or nothing when it is gone.</summary>
    public CarSummary? Car { get; init; }

    /// <summary>What sets the date, from what is next to the end, at most the first of it.</summary>
    public ImmutableArray<string> SetsTheDate { get; init; } = [];

    /// <summary>Places it can be moved to; empty where this position moves no car.</summary>
    public ImmutableArray<BayChoice> Places { get; init; } = [];

    /// <summary>Where it stands: the id of the place.</summary>
    public string? PlaceId { get; init; }

    /// <summary>Whether this position gives dates.</summary>
    public bool MayGiveDate { get; init; }

    /// <summary>The head for one position.</summary>
    public static CarHeadView Of(Picture picture, string carId, Position position)
    {
        var at = picture.Minute;
        if (!picture.Shop.Cars.TryGetValue(carId, out var car)) return new() { At = at };
        var index = PlanIndex.Of(car.Plan);
        return new()
        {
            At = at,
            Car = CarSummary.Of(picture, car),
            SetsTheDate = [.. picture.Dates.Of(picture.Shop, car, picture.Now).SetsTheDate.Select(s => s.Node).Where(n => !car.Tasks.TryGetValue(n, out var t) || !t.Counts).Select(index.NameOf).Take(4)],
            Places = MayPost.May<MoveCar>(position) ? [.. picture.Shop.Places.Values.Where(p => p.Kind == "bay" || p.Id == car.Place).Select(p => new BayChoice(p.Id, p.Name))] : [],
            PlaceId = car.Place,
            MayGiveDate = MayPost.May<GiveDate>(position),
        };
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Floor;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars;

/// <summary>A car in a few lines: where, how far, when.</summary>
public sealed record CarSummary
{
    /// <summary>The car's id.</summary>
    public required string Id { get; init; }

    /// <summary>The car.</summary>
    public required string Name { get; init; }

    /// <summary>Where it stands, or nothing while nobody has said.</summary>
    public string? Place { get; init; }

    /// <summary>The stage it is in.</summary>
    public required string Stage { get; init; }

    /// <summary>Tasks signed off that stand.</summary>
    public int Done { get; init; }

    /// <summary>All tasks.</summary>
    public int Tasks { get; init; }

    /// <summary>When it can be ready at the earliest, people and places aside; in words.</summary>
    public required string Ready { get; init; }

    /// <summary>Whether everything is signed off and released.</summary>
    public bool IsDone { get; init; }

    /// <summary>The date given, or nothing.</summary>
    public DateTimeOffset? Given { get; init; }

    /// <summary>How the date given stands against the earliest possible one, in words; or nothing.</summary>
    public string? Margin { get; init; }

    /// <summary>What is in hand and by whom: "Mounts bolted, Inga and Sol".</summary>
    public ImmutableArray<string> InHand { get; init; } = [];

    /// <summary>Stops and tags on it, in words.</summary>
    public ImmutableArray<string> Held { get; init; } = [];

    /// <summary>Whether a stop holds it or work on it.</summary>
    public bool IsStopped { get; init; }

    /// <summary>A car as of a picture.</summary>
    public static CarSummary Of(Picture picture, CarBoard car)
    {
        var work = new FloorCarAtWork(picture, car);
        var dates = picture.Dates.Of(picture.Shop, car, picture.Now);
        var stops = picture.Shop.Stops.Values.Where(s => s.Scope == StopScope.Shop || s.Car == car.Id || (s.Place is not null && s.Place == car.Place)).ToArray();
        return new()
        {
            Id = car.Id,
            Name = car.Name,
            Place = car.Place is null ? null : picture.Shop.Places.GetValueOrDefault(car.Place)?.Name ?? car.Place,
            Stage = work.Listed().Stage,
            Done = car.Tasks.Values.Count(t => t.Counts),
            Tasks = car.Tasks.Count,
            Ready = CarDateWords.Ready(picture, car, dates),
            IsDone = dates.IsDone,
            Given = car.DateGiven is { } given ? picture.Local(given) : null,
            Margin = CarDateWords.Margin(car, dates),
            InHand = [.. car.Tasks.Values.Where(t => t.Status == WorkStatus.InHand).Select(t => InHandWords(picture, car, t))],
            Held = [.. stops.Select(s => "Stop: " + picture.Shop.Say(s.Why)), .. work.Held().Select(h => h.Words)],
            IsStopped = stops.Length > 0,
        };
    }

    private static string InHandWords(Picture picture, CarBoard car, TaskState state)
    {
        var name = PlanIndex.Of(car.Plan).NameOf(state.Id);
        return $"{name}, {ShopTime.Names([.. state.Crew.Select(m => picture.Shop.NameOf(m.Person))])}";
    }
}

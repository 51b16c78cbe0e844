using System.Collections.Immutable;
using JobBoard.Domain.Items;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Cars.Car;

namespace JobBoard.Web.Pages.Cars.Readings;

/// <summary>What was and is to be measured on a car: what to fetch for it next, and every reading by where on the car it is.</summary>
public sealed record ReadingsView
{
    /// <summary>The car's id.</summary>
    public required string CarId { get; init; }

    /// <summary>How many readings the plan asks for.</summary>
    public int Count => Stretches.Sum(s => s.Readings.Length);

    /// <summary>How many of them stand.</summary>
    public int Standing => Stretches.Sum(s => s.Readings.Count(r => r.Stands == ReadingStands.Fine));

    /// <summary>What to fetch for readings that can be taken now, what serves most of them first.</summary>
    public ImmutableArray<ToolToFetch> Fetch { get; init; } = [];

    /// <summary>The stretches of the car that have readings, front to back.</summary>
    public ImmutableArray<ReadingStretch> Stretches { get; init; } = [];

    /// <summary>The readings of a car; none when it is gone.</summary>
    public static ReadingsView Of(Picture picture, string carId) =>
        picture.Shop.Cars.TryGetValue(carId, out var car) ? new ReadingsMapping(picture, car).View() : new() { CarId = carId };
}

/// <summary>A tool and what it is wanted for now.</summary>
/// <param name="Tool">The tool, as the plan has it.</param>
/// <param name="For">The readings it is for.</param>
public sealed record ToolToFetch(string Tool, ImmutableArray<MeasuredReading> For);

/// <summary>The readings of one stretch of the car.</summary>
public sealed record ReadingStretch(Along Along, string Name, ImmutableArray<MeasuredReading> Readings);

/// <summary>How a reading stands.</summary>
public enum ReadingStands
{
    /// <summary>Out, too close to call where that holds, or lapsed and holding what comes after.</summary>
    Wrong,

    /// <summary>Not taken or lapsed; its task is in hand or can start.</summary>
    Now,

    /// <summary>In limits, or released, and not lapsed; or taken again by the task that does so.</summary>
    Fine,

    /// <summary>Not taken, or lapsed by plan, and nobody can take it yet.</summary>
    ToCome,
}

/// <summary>A reading of a car.</summary>
public sealed record MeasuredReading
{
    /// <summary>Unique on the page.</summary>
    public required string Key { get; init; }

    /// <summary>The reading as it stands.</summary>
    public required CarReading Reading { get; init; }

    /// <summary>The task or hold point that took it again since it lapsed, or nothing.</summary>
    public string? TakenAgainBy { get; init; }

    /// <summary>Where on the car, as the plan has it.</summary>
    public required string Where { get; init; }

    /// <summary>The condition it is taken in, in words.</summary>
    public required string TakenWhen { get; init; }

    /// <summary>The tool, as the plan has it.</summary>
    public required string Tool { get; init; }

    /// <summary>Where its limit comes from.</summary>
    public required string Source { get; init; }

    /// <summary>Its task's id.</summary>
    public required string TaskId { get; init; }

    /// <summary>Its task.</summary>
    public required string Task { get; init; }

    /// <summary>How its task stands: "in hand, Inga"; "can start"; or nothing.</summary>
    public string? TaskStands { get; init; }

    /// <summary>How it stands.</summary>
    public required ReadingStands Stands { get; init; }
}

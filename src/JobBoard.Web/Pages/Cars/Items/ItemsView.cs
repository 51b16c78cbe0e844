using System.Collections.Immutable;
using JobBoard.Domain.Items;
using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.Cars.Items;

/// <summary>A walk round a car, front to back: every item, its condition, and what will put it right.</summary>
public sealed record ItemsView
{
    /// <summary>The car's id.</summary>
    public required string CarId { get; init; }

    /// <summary>When this was evaluated, to the minute.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>How many items there are.</summary>
    public int Count => Stretches.Sum(s => s.Items.Length);

    /// <summary>How many are still off or temporary.</summary>
    public int StillOff => Stretches.Sum(s => s.Items.Count(i => !i.IsForTheRoad));

    /// <summary>Those still off or temporary that no task to come puts right.</summary>
    public ImmutableArray<WalkedItem> Forgotten { get; init; } = [];

    /// <summary>The stretches of the walk that have items, in its order.</summary>
    public ImmutableArray<WalkStretch> Stretches { get; init; } = [];

    /// <summary>The walk round a car; an empty one when it is gone.</summary>
    public static ItemsView Of(Picture picture, string carId) =>
        picture.Shop.Cars.TryGetValue(carId, out var car) ? new ItemsMapping(picture, car).View() : new() { CarId = carId, At = picture.Minute };
}

/// <summary>One stretch of the walk.</summary>
/// <param name="Along">Where.</param>
/// <param name="Name">Where, in words.</param>
/// <param name="Items">Its items, left to right.</param>
public sealed record WalkStretch(Along Along, string Name, ImmutableArray<WalkedItem> Items);

/// <summary>An item met on the walk.</summary>
public sealed record WalkedItem
{
    /// <summary>The item's id.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>Where on the car, as the plan has it.</summary>
    public required string Where { get; init; }

    /// <summary>On which side.</summary>
    public required Side Side { get; init; }

    /// <summary>Its condition now.</summary>
    public required string Condition { get; init; }

    /// <summary>The condition it has on the road.</summary>
    public required string ForTheRoad { get; init; }

    /// <summary>Whether it is as for the road.</summary>
    public bool IsForTheRoad => Condition == ForTheRoad;

    /// <summary>All its conditions.</summary>
    public ImmutableArray<string> Conditions { get; init; } = [];

    /// <summary>What can be sworn to of it.</summary>
    public ImmutableArray<string> Aspects { get; init; } = [];

    /// <summary>Since when, by whom, by which task.</summary>
    public required string Since { get; init; }

    /// <summary>The task in hand that is changing it, or nothing.</summary>
    public WalkTask? Changing { get; init; }

    /// <summary>The next task that changes it, or nothing.</summary>
    public WalkTask? Next { get; init; }

    /// <summary>The task that leaves it as for the road, or nothing.</summary>
    public WalkTask? PutsRight { get; init; }
}

/// <summary>A task that changes an item.</summary>
/// <param name="Id">The task's id.</param>
/// <param name="Name">What people call it.</param>
/// <param name="When">By whom or by when, in words; empty when not known.</param>
public sealed record WalkTask(string Id, string Name, string When);

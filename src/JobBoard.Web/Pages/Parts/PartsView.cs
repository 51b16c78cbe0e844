using System.Collections.Immutable;
using JobBoard.Domain.Items;

namespace JobBoard.Web.Pages.Parts;

/// <summary>Parts of one car, or of all, as one position sees them.</summary>
public sealed record PartsView
{
    /// <summary>When this was evaluated, to the minute.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Parts that something is to be done about or waited for, the soonest needed first.</summary>
    public ImmutableArray<PartLine> Open { get; init; } = [];

    /// <summary>Parts that are here and checked right.</summary>
    public ImmutableArray<PartLine> Right { get; init; } = [];

    /// <summary>Whether the car is said with every part.</summary>
    public bool NamesCars { get; init; }

    /// <summary>Whether this position orders parts.</summary>
    public bool MayOrder { get; init; }

    /// <summary>Whether this position says that a part is right or wrong.</summary>
    public bool MayCheck { get; init; }
}

/// <summary>A part of a car.</summary>
public sealed record PartLine
{
    /// <summary>The part's id.</summary>
    public required string Id { get; init; }

    /// <summary>The part.</summary>
    public required string Name { get; init; }

    /// <summary>The car's id.</summary>
    public required string CarId { get; init; }

    /// <summary>The car.</summary>
    public required string Car { get; init; }

    /// <summary>How far it is.</summary>
    public required PartStatus Status { get; init; }

    /// <summary>How it stands, in words: "ordered, expected Tue 1 Dec 10:00".</summary>
    public required string Stands { get; init; }

    /// <summary>When it is expected, or nothing.</summary>
    public DateTimeOffset? Expected { get; init; }

    /// <summary>Who said so last, and when.</summary>
    public string? Said { get; init; }

    /// <summary>Tasks not done that need it, in the order of the work.</summary>
    public ImmutableArray<string> HoldsUp { get; init; } = [];

    /// <summary>The latest time it may arrive without moving the date; nothing where that is not known.</summary>
    public DateTimeOffset? NeededBy { get; init; }

    /// <summary>Days in hand, in words; nothing where that is not known.</summary>
    public string? InHand { get; init; }

    /// <summary>Whether the dates rest on it: overdue, or wrong and not ordered again.</summary>
    public bool DatesRestOnIt { get; init; }

    /// <summary>Unique on the page.</summary>
    public string Key => CarId + "-" + Id;
}

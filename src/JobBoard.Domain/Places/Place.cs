using System.Collections.Immutable;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Places;

/// <summary>Where work is done: bay, bench, fuel corner. Its rectangle on the shop's map is in metres from the map's north-west corner.</summary>
public sealed record Place
{
    /// <summary>Unique in the shop.</summary>
    public required string Id { get; init; }

    /// <summary>Shown on screens.</summary>
    public required string Name { get; init; }

    /// <summary>bay, bench, fuel corner, ...; tasks ask for a kind.</summary>
    public required string Kind { get; init; }

    /// <summary>The rectangle it covers.</summary>
    public required Area Area { get; init; }

    /// <summary>How many cars (bays) or tasks (elsewhere) it holds at once, 1 or more.</summary>
    public int Capacity { get; init; } = 1;
}

/// <summary>A rectangle on the map: metres, x to the right, y down, width and depth above 0.</summary>
public sealed record Area(decimal X, decimal Y, decimal Width, decimal Depth)
{
    /// <summary>Whether the two share any floor.</summary>
    public bool Overlaps(Area other) =>
        X < other.X + other.Width && other.X < X + Width && Y < other.Y + other.Depth && other.Y < Y + Depth;

    /// <summary>Shortest distance between the two in metres, 0 when they touch.</summary>
    public double DistanceTo(Area other)
    {
        var dx = (double)Math.Max(0, Math.Max(X - (other.X + other.Width), other.X - (X + Width)));
        var dy = (double)Math.Max(0, Math.Max(Y - (other.Y + other.Depth), other.Y - (Y + Depth)));
        return Math.Sqrt((dx * dx) + (dy * dy));
    }
}

/// <summary>Lifting and other gear with its rated load and inspection.</summary>
public sealed record Gear
{
    /// <summary>Unique in the shop.</summary>
    public required string Id { get; init; }

    /// <summary>Shown on screens.</summary>
    public required string Name { get; init; }

    /// <summary>hoist, load beam, jack, ...; tasks ask for a kind.</summary>
    public required string Kind { get; init; }

    /// <summary>Rated load in kg, or nothing where it lifts nothing.</summary>
    public decimal? RatedKg { get; init; }

    /// <summary>The instant its inspection runs out, or nothing where none is due.</summary>
    public DateTimeOffset? InspectedUntil { get; init; }

    /// <summary>The floor its load can pass over, or nothing.</summary>
    public Area? Sweep { get; init; }

    /// <summary>Out of use, with the reason, or nothing.</summary>
    public string? OutOfUse { get; init; }
}

/// <summary>Something readings are taken with.</summary>
public sealed record Instrument
{
    /// <summary>Unique in the shop.</summary>
    public required string Id { get; init; }

    /// <summary>Shown on screens.</summary>
    public required string Name { get; init; }

    /// <summary>The unit of <see cref="Uncertainty"/>.</summary>
    public required string Unit { get; init; }

    /// <summary>Expanded uncertainty U (k = 2) in <see cref="Unit"/>, 0 or more.</summary>
    public decimal Uncertainty { get; init; }

    /// <summary>Expanded uncertainty as a share of the reading, in percent, 0 or more; the greater of the two counts.</summary>
    public decimal UncertaintyPercent { get; init; }

    /// <summary>The instant its calibration is due, or nothing where it has none.</summary>
    public DateTimeOffset? CalibratedUntil { get; init; }
}

/// <summary>A thing of the shop itself that is in one of its conditions: extraction on or off. Tasks need it as <c>shop/ID</c>.</summary>
public sealed record ShopItem
{
    /// <summary>Unique in the shop.</summary>
    public required string Id { get; init; }

    /// <summary>Shown on screens.</summary>
    public required string Name { get; init; }

    /// <summary>All conditions.</summary>
    public required ImmutableArray<string> Conditions { get; init; }

    /// <summary>The present one.</summary>
    public required string Condition { get; init; }

    /// <summary>Dangers that stand while it is in a condition.</summary>
    public ImmutableArray<ConditionHazard> Dangers { get; init; } = [];
}

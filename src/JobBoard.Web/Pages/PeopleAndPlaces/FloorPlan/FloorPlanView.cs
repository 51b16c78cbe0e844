using System.Collections.Immutable;
using System.Globalization;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Places;

namespace JobBoard.Web.Pages.PeopleAndPlaces.FloorPlan;

/// <summary>The map of the shop as it is laid out, in metres.</summary>
/// <param name="Width">How far the grid goes to the right.</param>
/// <param name="Depth">How far it goes down.</param>
/// <param name="Spots">Places first, then sweeps, each over those before it.</param>
public sealed record FloorPlanView(decimal Width, decimal Depth, ImmutableArray<FloorPlanSpot> Spots)
{
    // There is always floor to move something to.
    private const decimal Room = 3;
    private const decimal LeastWidth = 16;
    private const decimal LeastDepth = 10;

    /// <summary>The map of a shop.</summary>
    public static FloorPlanView Of(ShopState shop)
    {
        ImmutableArray<FloorPlanSpot> spots =
        [
            .. shop.Places.Values.Select(p => new FloorPlanSpot("place-" + p.Id, p.Name, p.Kind, p.Area, "set-place", "place.area", Fields(p))),
            .. shop.Gear.Values.Where(g => g.Sweep is not null).Select(g => new FloorPlanSpot("gear-" + g.Id, g.Name, "sweep", g.Sweep!, "set-gear", "gear.sweep", Fields(g))),
        ];
        decimal Far(Func<Area, decimal> end, decimal least) => Math.Max(least, Math.Ceiling(spots.Select(s => end(s.Area)).Append(0).Max() + Room));
        return new(Far(a => a.X + a.Width, LeastWidth), Far(a => a.Y + a.Depth, LeastDepth), spots);
    }

    private static ImmutableArray<(string, string?)> Fields(Place place) =>
        [("place.id", place.Id), ("place.name", place.Name), ("place.kind", place.Kind), ("place.capacity", place.Capacity.ToString(CultureInfo.InvariantCulture))];

    private static ImmutableArray<(string, string?)> Fields(Gear gear) =>
    [
        ("gear.id", gear.Id), ("gear.name", gear.Name), ("gear.kind", gear.Kind), ("gear.ratedKg", gear.RatedKg is { } kg ? ShopWords.Number(kg) : null),
        ("gear.inspectedUntil", gear.InspectedUntil?.ToString("O", CultureInfo.InvariantCulture)), ("gear.outOfUse", gear.OutOfUse),
    ];
}

/// <summary>A place, or the sweep of a piece of gear, on the map.</summary>
/// <param name="Key">Unique on the page.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Kind">The place's kind, or <c>sweep</c>.</param>
/// <param name="Area">Where it is.</param>
/// <param name="Command">The command that sets it.</param>
/// <param name="Prefix">The command's member for the rectangle.</param>
/// <param name="Fields">What else the command says: as it is now.</param>
public sealed record FloorPlanSpot(string Key, string Name, string Kind, Area Area, string Command, string Prefix, ImmutableArray<(string Name, string? Value)> Fields)
{
    /// <summary>Whether it is the floor a load can pass over.</summary>
    public bool IsSweep => Kind == "sweep" && Command == "set-gear";
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;

namespace JobBoard.Domain.Plans;

/// <summary>What of the shop decides whether a plan can be run there.</summary>
public sealed record ShopFacts
{
    /// <summary>Everybody known; those who left do not count.</summary>
    public ImmutableArray<Person> People { get; init; } = [];

    /// <summary>Bays, benches and the rest.</summary>
    public ImmutableArray<Place> Places { get; init; } = [];

    /// <summary>Lifting and other gear.</summary>
    public ImmutableArray<Gear> Gear { get; init; } = [];

    /// <summary>Dangers the shop knows.</summary>
    public ImmutableArray<HazardKind> Hazards { get; init; } = [];

    /// <summary>Dangers that may not stand at once.</summary>
    public ImmutableArray<KeepApart> KeepApart { get; init; } = [];

    /// <summary>Things of the shop that have conditions.</summary>
    public ImmutableArray<ShopItem> Items { get; init; } = [];

    /// <summary>The instant at which qualifications have to be valid.</summary>
    public DateTimeOffset Now { get; init; }

    /// <summary>The facts of a shop as it stands.</summary>
    public static ShopFacts Of(ShopState shop, DateTimeOffset now) => new()
    {
        People = [.. shop.People.Values],
        Places = [.. shop.Places.Values],
        Gear = [.. shop.Gear.Values],
        Hazards = [.. shop.Hazards.Values],
        KeepApart = [.. shop.KeepApart.Values],
        Items = [.. shop.Items.Values],
        Now = now,
    };
}

using System.Collections.Immutable;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Boards;

/// <summary>
/// The present state of a whole shop: its day book, folded. Immutable; readers hold a reference, the writer makes the next.
/// </summary>
public sealed record ShopState
{
    /// <summary>Nothing has happened yet.</summary>
    public static ShopState Empty { get; } = new();

    /// <summary>Number of the last entry folded in, 0 for none.</summary>
    public long Seq { get; init; }

    /// <summary>When the last entry was recorded.</summary>
    public DateTimeOffset RecordedAt { get; init; }

    /// <summary>What the shop is called.</summary>
    public string Name { get; init; } = "";

    /// <summary>IANA time zone.</summary>
    public string Zone { get; init; } = "Etc/UTC";

    /// <summary>The telephone number customers call; empty for none.</summary>
    public string Phone { get; init; } = "";

    /// <summary>The mail address customers write to; empty for none.</summary>
    public string Mail { get; init; } = "";

    /// <summary>Weekly opening hours.</summary>
    public ImmutableArray<OpenHours> Hours { get; init; } = [];

    /// <summary>Days the shop is closed.</summary>
    public ImmutableArray<DateOnly> Closed { get; init; } = [];

    public ImmutableSortedDictionary<string, Person> People { get; init; } = ById<Person>();

    public ImmutableSortedDictionary<string, Place> Places { get; init; } = ById<Place>();

    public ImmutableSortedDictionary<string, Gear> Gear { get; init; } = ById<Gear>();

    public ImmutableSortedDictionary<string, Instrument> Instruments { get; init; } = ById<Instrument>();

    public ImmutableSortedDictionary<string, ShopItem> Items { get; init; } = ById<ShopItem>();

    public ImmutableSortedDictionary<string, HazardKind> Hazards { get; init; } = ById<HazardKind>();

    public ImmutableSortedDictionary<string, KeepApart> KeepApart { get; init; } = ById<KeepApart>();

    public ImmutableSortedDictionary<string, CarBoard> Cars { get; init; } = ById<CarBoard>();

    /// <summary>Templates of the shop's own, by the plan's id.</summary>
    public ImmutableSortedDictionary<string, Plan> Templates { get; init; } = ById<Plan>();

    /// <summary>All stops ever raised that are not released.</summary>
    public ImmutableSortedDictionary<string, Stop> Stops { get; init; } = ById<Stop>();

    /// <summary>Who last touched what (footprint key), for "changed since you looked".</summary>
    public ImmutableDictionary<string, Touch> Touched { get; init; } = ImmutableDictionary.Create<string, Touch>(StringComparer.Ordinal);

    /// <summary>Commands of the last minute, with the state before each, so that one can be taken back. Oldest first.</summary>
    public ImmutableList<RecentCommand> Recent { get; init; } = [];

    /// <summary>An empty dictionary keyed by id in ordinal order.</summary>
    public static ImmutableSortedDictionary<string, T> ById<T>() => ImmutableSortedDictionary.Create<string, T>(StringComparer.Ordinal);

    /// <summary>The display name of a person; the id when unknown.</summary>
    public string NameOf(string person) => People.TryGetValue(person, out var found) ? found.Name : person;

    /// <summary>Replaces <c>{person-id}</c> in words by names.</summary>
    public string Say(string words) => Wording.Resolve(words, this);
}

/// <summary>Who last touched something.</summary>
/// <param name="Seq">The entry.</param>
/// <param name="Actor">Who.</param>
/// <param name="At">When it was written down.</param>
/// <param name="Kind">Kind of the entry.</param>
/// <param name="Other">The last touch by somebody else, or nothing.</param>
public sealed record Touch(long Seq, string Actor, DateTimeOffset At, string Kind, Touch? Other = null)
{
    /// <summary>The last touch by somebody other than a person, or nothing.</summary>
    public Touch? NotBy(string person) => Actor == person ? Other : this;

    /// <summary>This touch, coming after another of the same thing.</summary>
    public Touch After(Touch? before) => this with { Other = before?.Actor == Actor ? before.Other : before is null ? null : before with { Other = null } };
}

/// <summary>A command of the last minute: what it wrote and the state before it.</summary>
public sealed record RecentCommand(Guid Id, string Actor, DateTimeOffset At, ShopState Before, ImmutableList<Entries.Entry> Entries, ImmutableHashSet<string> Footprint);

using System.Collections.Immutable;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Entries;

/// <summary>The shop's name, zone and hours were set.</summary>
public sealed record ShopSet(string Name, string Zone, ImmutableArray<OpenHours> Hours, ImmutableArray<DateOnly> Closed) : Fact
{
    public override IEnumerable<string> Footprint => ["shop"];
}

/// <summary>A person's work data was set. The name is in <see cref="PersonNamed"/>.</summary>
public sealed record PersonSet(string Person, Position Position, bool Outside, string? WorksUnder, ImmutableArray<QualifiedFor> Qualifications, ImmutableArray<OpenHours> Hours) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.Person(Person)];
}

/// <summary>A person's name was given: the one entry that holds personal text, and the one that may be blanked.</summary>
public sealed record PersonNamed(string Person, string Name) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.Person(Person)];
}

/// <summary>A person came in.</summary>
public sealed record PersonCameIn(string Person) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.Presence(Person)];
}

/// <summary>A person went out.</summary>
public sealed record PersonWentOut(string Person) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.Presence(Person)];
}

/// <summary>A person will be away.</summary>
public sealed record PersonAway(string Person, DateTimeOffset From, DateTimeOffset To, string Why) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.Person(Person)];
}

/// <summary>A person no longer works here.</summary>
public sealed record PersonLeft(string Person) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.Person(Person)];
}

/// <summary>A place was set.</summary>
public sealed record PlaceSet(Place Place) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.Place(Place.Id)];
}

/// <summary>A place was taken out.</summary>
public sealed record PlaceTakenOut(string Place) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.Place(Place)];
}

/// <summary>Gear was set.</summary>
public sealed record GearSet(Gear Gear) : Fact
{
    public override IEnumerable<string> Footprint => ["gear:" + Gear.Id];
}

/// <summary>An instrument was set.</summary>
public sealed record InstrumentSet(Instrument Instrument) : Fact
{
    public override IEnumerable<string> Footprint => ["instrument:" + Instrument.Id];
}

/// <summary>A hazard kind was set.</summary>
public sealed record HazardSet(HazardKind Hazard) : Fact
{
    public override IEnumerable<string> Footprint => ["hazard:" + Hazard.Id];
}

/// <summary>A keep-apart rule was set.</summary>
public sealed record KeepApartSet(KeepApart Rule) : Fact
{
    public override IEnumerable<string> Footprint => ["keep-apart:" + Rule.Id];
}

/// <summary>A keep-apart rule was taken out.</summary>
public sealed record KeepApartTakenOut(string Rule, string Why) : Fact
{
    public override IEnumerable<string> Footprint => ["keep-apart:" + Rule];
}

/// <summary>A thing of the shop was set.</summary>
public sealed record ShopItemSet(ShopItem Item) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.ShopItem(Item.Id)];
}

/// <summary>A thing of the shop changed its condition.</summary>
public sealed record ShopItemChanged(string Item, string From, string To, string Why) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.ShopItem(Item)];
}

/// <summary>A stop was raised, by a person or by a clash in the same append.</summary>
public sealed record StopRaised(string Stop, StopScope Scope, string? Car, string? Task, string? Place, string Why, string? Clash, ImmutableArray<string> Told, ImmutableArray<string> Tasks) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.Stop(Stop)];
}

/// <summary>A person confirmed having heard a stop.</summary>
public sealed record StopHeard(string Stop, string Person) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.Stop(Stop)];
}

/// <summary>Work under a stop was made safe: by whom and how it was left.</summary>
public sealed record StopMadeSafe(string Stop, string How) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.Stop(Stop)];
}

/// <summary>A stop was released.</summary>
public sealed record StopReleased(string Stop, string Why, string Evidence) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.Stop(Stop)];
}

/// <summary>A command of the last minute was not what its sender meant: what it wrote is taken back.</summary>
/// <param name="Command">The command.</param>
/// <param name="Touches">What it had touched.</param>
public sealed record TakenBack(Guid Command, ImmutableArray<string> Touches) : Fact
{
    public override IEnumerable<string> Footprint => Touches;
}

/// <summary>Something was done although a hold stood, learnt afterwards: kept as it is, and told to the foreman.</summary>
public sealed record DeviationNoted(string Car, string? Task, string Words) : Fact
{
    public override IEnumerable<string> Footprint => [];

    public override string Stream => Car;
}

/// <summary>A plan was kept as a template of the shop's own.</summary>
public sealed record TemplateSaved(Plan Plan) : Fact
{
    public override IEnumerable<string> Footprint => [Foot.Template(Plan.Id)];
}

using System.Collections.Immutable;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Commands;

/// <summary>Sets the shop's name, IANA zone, weekly hours and closed days.</summary>
public sealed record SetShop(string Name, string Zone, ImmutableArray<OpenHours> Hours, ImmutableArray<DateOnly> Closed) : Command
{
    public override IEnumerable<string> Footprint => ["shop"];
}

/// <summary>Sets a person: a new id makes a new person.</summary>
public sealed record SetPerson(string Person, string Name, Position Position) : Command
{
    public bool Outside { get; init; }

    public string? WorksUnder { get; init; }

    public ImmutableArray<QualifiedFor> Qualifications { get; init; } = [];

    public ImmutableArray<OpenHours> Hours { get; init; } = [];

    public override IEnumerable<string> Footprint => [Foot.Person(Person)];
}

/// <summary>Says that a person came in: oneself, or by the foreman.</summary>
public sealed record ComeIn(string Person) : Command;

/// <summary>Says that a person went out; what they had in hand goes on without them.</summary>
public sealed record GoOut(string Person) : Command;

/// <summary>Says that a person will be away.</summary>
public sealed record BeAway(string Person, DateTimeOffset From, DateTimeOffset To, string Why) : Command;

/// <summary>Says that a person no longer works here.</summary>
public sealed record LeaveShop(string Person) : Command;

/// <summary>Sets a place.</summary>
public sealed record SetPlace(Place Place) : Command
{
    public override IEnumerable<string> Footprint => [Foot.Place(Place.Id)];
}

/// <summary>Takes out a place where nothing stands.</summary>
public sealed record TakeOutPlace(string Place) : Command
{
    public override IEnumerable<string> Footprint => [Foot.Place(Place)];
}

/// <summary>Sets gear.</summary>
public sealed record SetGear(Gear Gear) : Command
{
    public override IEnumerable<string> Footprint => ["gear:" + Gear.Id];
}

/// <summary>Sets an instrument.</summary>
public sealed record SetInstrument(Instrument Instrument) : Command
{
    public override IEnumerable<string> Footprint => ["instrument:" + Instrument.Id];
}

/// <summary>Sets a hazard kind.</summary>
public sealed record SetHazard(HazardKind Hazard) : Command
{
    public override IEnumerable<string> Footprint => ["hazard:" + Hazard.Id];
}

/// <summary>Sets a keep-apart rule.</summary>
public sealed record SetKeepApart(KeepApart Rule) : Command
{
    public override IEnumerable<string> Footprint => ["keep-apart:" + Rule.Id];
}

/// <summary>Takes out a keep-apart rule, with a reason.</summary>
public sealed record TakeOutKeepApart(string Rule, string Why) : Command
{
    public override IEnumerable<string> Footprint => ["keep-apart:" + Rule];
}

/// <summary>Sets a thing of the shop.</summary>
public sealed record SetShopItem(ShopItem Item) : Command
{
    public override IEnumerable<string> Footprint => [Foot.ShopItem(Item.Id)];
}

/// <summary>Says that a thing of the shop is now in another condition.</summary>
public sealed record ChangeShopItem(string Item, string To, string Why) : Command;

/// <summary>Raises a stop. Anybody may, always.</summary>
public sealed record RaiseStop(StopScope Scope, string Why) : Command
{
    public string? Car { get; init; }

    public string? Task { get; init; }

    public string? Place { get; init; }
}

/// <summary>Confirms having heard a stop.</summary>
public sealed record HearStop(string Stop) : Command;

/// <summary>Makes the work under a stop safe: answers each standing danger and says how each task was left.</summary>
public sealed record MakeSafe(string Stop, string How) : Command
{
    /// <summary>Each standing danger in scope (<see cref="Hazards"/> ids) and whether it has ended.</summary>
    public ImmutableArray<HazardAnswer> Answers { get; init; } = [];

    /// <summary>The condition items of the tasks in hand are really in, by <c>car/item</c>.</summary>
    public ImmutableSortedDictionary<string, string> Items { get; init; } = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);
}

/// <summary>Whether a standing danger has ended.</summary>
/// <param name="Hazard">Key of the danger (<c>Dangers.Key</c>).</param>
/// <param name="Ended">Ended, or still standing (then it goes on keeping apart).</param>
public sealed record HazardAnswer(string Hazard, bool Ended);

/// <summary>Releases a stop: the foreman, with reason and evidence.</summary>
public sealed record ReleaseStop(string Stop, string Why, string Evidence) : Command
{
    public override IEnumerable<string> Footprint => [Foot.Stop(Stop)];
}

/// <summary>Leaves everything the actor has in hand part-done for the night.</summary>
public sealed record KnockOff : Command
{
    /// <summary>How each was left where it is asked, by <c>car/task</c>.</summary>
    public ImmutableSortedDictionary<string, string> How { get; init; } = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    /// <summary>The condition items are really in where it is not the one before the start, by <c>car/item</c>.</summary>
    public ImmutableSortedDictionary<string, string> Items { get; init; } = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);
}

/// <summary>Takes back one's own command of the last minute.</summary>
public sealed record TakeBack(Guid CommandId) : Command;

/// <summary>Keeps a plan as a template of the shop's own: a new id makes a new one, a known id puts it in the place of the one before.</summary>
public sealed record SaveTemplate(Plan Plan) : Command
{
    public override IEnumerable<string> Footprint => [Foot.Template(Plan.Id)];
}

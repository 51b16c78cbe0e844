using System.Collections.Immutable;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Floor;

/// <summary>Everything the wall shows at one instant. Ids become parts of element ids and stay the same between pushes.</summary>
public sealed record FloorView
{
    /// <summary>The fragment's stamp, as the live protocol writes it.</summary>
    public required string Stamp { get; init; }

    /// <summary>The shop's name.</summary>
    public required string ShopName { get; init; }

    /// <summary>When this was evaluated, with the shop's offset.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The whole floor, metres, from (0, 0) at the north-west corner.</summary>
    public required FloorArea Shop { get; init; }

    /// <summary>Places with what stands and goes on there.</summary>
    public ImmutableArray<FloorPlace> Places { get; init; } = [];

    /// <summary>Lifting gear that has a sweep.</summary>
    public ImmutableArray<FloorGear> Gear { get; init; } = [];

    /// <summary>Each car with its date, in the order to be shown beside the map.</summary>
    public ImmutableArray<FloorCar> Cars { get; init; } = [];

    /// <summary>Stops not yet released, the youngest first.</summary>
    public ImmutableArray<FloorStop> Stops { get; init; } = [];
}

/// <summary>A rectangle on the map: metres, x to the right, y down, width and depth above 0.</summary>
public sealed record FloorArea(double X, double Y, double Width, double Depth);

/// <summary>How a place's edges are painted.</summary>
public enum FloorPlaceKind
{
    /// <summary>Two long lines, open at both ends: a car stands between them.</summary>
    Bay,

    /// <summary>Corners only: bench, fuel corner.</summary>
    Corner,
}

/// <summary>One place on the map. What matters most is shown first; what does not fit is counted ("+2 more").</summary>
public sealed record FloorPlace
{
    /// <summary>The place's id.</summary>
    public required string Id { get; init; }

    /// <summary>Bay 1.</summary>
    public required string Name { get; init; }

    /// <summary>How it is painted.</summary>
    public required FloorPlaceKind Kind { get; init; }

    /// <summary>Its rectangle.</summary>
    public required FloorArea Area { get; init; }

    /// <summary>The car standing there, or nothing.</summary>
    public string? Car { get; init; }

    /// <summary>Stops whose scope is here.</summary>
    public ImmutableArray<FloorPlaceStop> Stops { get; init; } = [];

    /// <summary>Dangers that stand here.</summary>
    public ImmutableArray<FloorDanger> Dangers { get; init; } = [];

    /// <summary>Tasks in hand here.</summary>
    public ImmutableArray<FloorTask> InHand { get; init; } = [];

    /// <summary>Tags: what is held here.</summary>
    public ImmutableArray<FloorTag> Held { get; init; } = [];

    /// <summary>What can start here now, the most wanted first.</summary>
    public ImmutableArray<FloorNext> CanStart { get; init; } = [];
}

/// <summary>A stop as written on the bay floor. <paramref name="Words"/>: short lines in order of weight, such as "made safe", "fuel weep", "heard by 4 of 4".</summary>
public sealed record FloorPlaceStop(string Id, ImmutableArray<string> Words);

/// <summary>A standing danger: one or two words ("hanging", "line open") and its signs, none to three.</summary>
public sealed record FloorDanger(string Id, string Words, ImmutableArray<SafetySignKind> Signs);

/// <summary>A task in hand.</summary>
public sealed record FloorTask
{
    /// <summary>The task's id.</summary>
    public required string Id { get; init; }

    /// <summary>Engine in.</summary>
    public required string Name { get; init; }

    /// <summary>The car, where the place does not already say it (bench, fuel corner).</summary>
    public string? Car { get; init; }

    /// <summary>First names of those on it.</summary>
    public ImmutableArray<string> People { get; init; } = [];

    /// <summary>Work done on it so far, at <see cref="FloorView.At"/>.</summary>
    public TimeSpan SoFar { get; init; }

    /// <summary>The usual estimate.</summary>
    public TimeSpan Estimate { get; init; }

    /// <summary>Past its high estimate.</summary>
    public bool OverItsEstimate { get; init; }
}

/// <summary>What is held here: the hold point or reading that holds.</summary>
public sealed record FloorTag(string Id, string Words);

/// <summary>A task that can start and who would do it, such as "nobody on it".</summary>
public sealed record FloorNext(string Id, string Name, string? Words);

/// <summary>Lifting gear: the floor its load can pass over, and whether a load hangs on it.</summary>
public sealed record FloorGear
{
    /// <summary>The gear's id.</summary>
    public required string Id { get; init; }

    /// <summary>Gantry.</summary>
    public required string Name { get; init; }

    /// <summary>Its whole sweep.</summary>
    public required FloorArea Sweep { get; init; }

    /// <summary>It runs on rails, drawn along the sweep's two long edges.</summary>
    public bool OnRails { get; init; }

    /// <summary>The striped keep-out zone while it is loaded, or nothing.</summary>
    public FloorArea? KeepOut { get; init; }
}

/// <summary>A car in the list beside the map.</summary>
public sealed record FloorCar
{
    /// <summary>The car's id.</summary>
    public required string Id { get; init; }

    /// <summary>Heron coupe.</summary>
    public required string Name { get; init; }

    /// <summary>The stage it is in, a word or two.</summary>
    public required string Stage { get; init; }

    /// <summary>What may be said about its date.</summary>
    public required FloorDate Date { get; init; }

    /// <summary>Names of tasks that can start next, the most wanted first.</summary>
    public ImmutableArray<string> CanStart { get; init; } = [];

    /// <summary>What it waits on where nothing can start, in words.</summary>
    public string? WaitsOn { get; init; }
}

/// <summary>What kind of date this is.</summary>
public enum FloorDateKind
{
    /// <summary>Earliest possible, people and places aside.</summary>
    Earliest,

    /// <summary>The date kept in eight cases of ten.</summary>
    CountOn,

    /// <summary>The date the foreman gave.</summary>
    Given,

    /// <summary>Not known: rests on something overdue, named in <see cref="FloorDate.RestsOn"/>.</summary>
    NotKnown,

    /// <summary>Everything is signed off.</summary>
    Done,
}

/// <summary>A date and what it means.</summary>
/// <param name="Kind">What kind of date.</param>
/// <param name="When">The instant, or nothing where not known.</param>
/// <param name="Likely">The even-chance date, with <see cref="FloorDateKind.CountOn"/> only.</param>
/// <param name="RestsOn">What it rests on where not known.</param>
/// <param name="Moved">What it moved by since this morning, such as "+1 d", or nothing.</param>
public sealed record FloorDate(
    FloorDateKind Kind, DateTimeOffset? When = null, DateTimeOffset? Likely = null, string? RestsOn = null, string? Moved = null);

/// <summary>A stop in the strip below the map.</summary>
public sealed record FloorStop
{
    /// <summary>The stop's id.</summary>
    public required string Id { get; init; }

    /// <summary>What it stops: task, car, place or the shop.</summary>
    public required string Scope { get; init; }

    /// <summary>Why, in the words of who raised it.</summary>
    public required string Why { get; init; }

    /// <summary>Who raised it, or "the board" for a clash.</summary>
    public required string RaisedBy { get; init; }

    /// <summary>When.</summary>
    public required DateTimeOffset RaisedAt { get; init; }

    /// <summary>Told to stop, or made safe.</summary>
    public required StopState State { get; init; }

    /// <summary>Names of those it touches who have not said heard.</summary>
    public ImmutableArray<string> NotHeard { get; init; } = [];

    /// <summary>How many people it touches.</summary>
    public int Touches { get; init; }

    /// <summary>How it was made safe, or who releases it, as one sentence; nothing until known.</summary>
    public string? Note { get; init; }
}

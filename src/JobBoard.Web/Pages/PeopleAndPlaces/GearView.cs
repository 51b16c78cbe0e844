using System.Collections.Immutable;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>Gear and instruments, as one person sees them.</summary>
/// <param name="Overdue">What must not be used until it was looked at, in words.</param>
/// <param name="Gear">Gear by name.</param>
/// <param name="Instruments">Instruments by name.</param>
/// <param name="MayChange">Whether the reader sets them.</param>
public sealed record GearView(ImmutableArray<string> Overdue, ImmutableArray<ThingLine> Gear, ImmutableArray<ThingLine> Instruments, bool MayChange);

/// <summary>A piece of gear or an instrument.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="What">Kind and rated load, or unit and uncertainty.</param>
/// <param name="Until">Until when it is inspected or calibrated, in words.</param>
/// <param name="IsOverdue">Whether that is over.</param>
/// <param name="Out">Why it is out of use, or nothing.</param>
public sealed record ThingLine(string Id, string Name, string What, string Until, bool IsOverdue, string? Out);

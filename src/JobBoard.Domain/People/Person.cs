using System.Collections.Immutable;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.People;

/// <summary>Somebody who works in the shop. The name is the only personal text and has an entry of its own.</summary>
public sealed record Person
{
    /// <summary>Unique in the shop; stands for the person in every entry.</summary>
    public required string Id { get; init; }

    /// <summary>Shown on screens; the id until a name is given or after it was blanked.</summary>
    public required string Name { get; init; }

    /// <summary>What they are in the shop.</summary>
    public required Position Position { get; init; }

    /// <summary>An outside specialist: may be qualified, is in only when said so.</summary>
    public bool Outside { get; init; }

    /// <summary>The person an apprentice works beside; required for an apprentice, empty for others.</summary>
    public string? WorksUnder { get; init; }

    /// <summary>What they may do.</summary>
    public ImmutableArray<QualifiedFor> Qualifications { get; init; } = [];

    /// <summary>Own weekly hours, or the shop's when empty.</summary>
    public ImmutableArray<OpenHours> Hours { get; init; } = [];

    /// <summary>Days and hours away, known beforehand.</summary>
    public ImmutableArray<Absence> Absences { get; init; } = [];

    /// <summary>Whether they are in now, and since when.</summary>
    public DateTimeOffset? InSince { get; init; }

    /// <summary>Whether they no longer work here; kept because entries name them.</summary>
    public bool Left { get; init; }

    /// <summary>True while in and still with the shop.</summary>
    public bool IsIn => InSince is not null && !Left;

    /// <summary>Whether they are qualified for <paramref name="what"/> at <paramref name="now"/>; nothing asked is always met.</summary>
    public bool IsQualified(string? what, DateTimeOffset now) =>
        what is null || Qualifications.Any(q => q.For == what && (q.Until is null || q.Until > now));
}

/// <summary>What a person may do, with its expiry.</summary>
/// <param name="For">lifting, signalling, fuel, auto-electric, welding, coolant, inspection, ...</param>
/// <param name="Until">The instant it expires, or never.</param>
public sealed record QualifiedFor(string For, DateTimeOffset? Until = null);

/// <summary>Time a person is away, half open.</summary>
public sealed record Absence(DateTimeOffset From, DateTimeOffset To, string Why = "");

/// <summary>Opening hours of one weekday, local time; several per day are allowed (a lunch break between).</summary>
public sealed record OpenHours(DayOfWeek Day, TimeOnly From, TimeOnly To);

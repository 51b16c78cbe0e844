using System.Collections.Immutable;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>Who is in and what they can do, as one person sees it.</summary>
public sealed record PeopleView
{
    /// <summary>When this was evaluated, to the minute.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The reader; nothing for somebody who is gone.</summary>
    public PersonLine? Me { get; init; }

    /// <summary>Others who are in, by name.</summary>
    public ImmutableArray<PersonLine> In { get; init; } = [];

    /// <summary>Others who are not in, by name.</summary>
    public ImmutableArray<PersonLine> Out { get; init; } = [];

    /// <summary>Qualifications that hang on one person, or on nobody.</summary>
    public ImmutableArray<LoneQualification> Lone { get; init; } = [];

    /// <summary>Whether the reader sets people.</summary>
    public bool MayChange { get; init; }
}

/// <summary>One person.</summary>
public sealed record PersonLine
{
    /// <summary>Their id.</summary>
    public required string Id { get; init; }

    /// <summary>Their name.</summary>
    public required string Name { get; init; }

    /// <summary>What they are in the shop.</summary>
    public required string Position { get; init; }

    /// <summary>In since, in the shop's time; nothing while out.</summary>
    public DateTimeOffset? InSince { get; init; }

    /// <summary>What they may do.</summary>
    public ImmutableArray<QualificationWords> Qualifications { get; init; } = [];

    /// <summary>What they have in hand.</summary>
    public ImmutableArray<InHandWords> InHand { get; init; } = [];

    /// <summary>Times away that are not over.</summary>
    public ImmutableArray<string> Away { get; init; } = [];

    /// <summary>Own hours, none where the shop's count.</summary>
    public ImmutableArray<string> Hours { get; init; } = [];

    /// <summary>Whether the reader may say in, out and away for them.</summary>
    public bool MaySay { get; init; }
}

/// <summary>What somebody may do. <paramref name="Until"/>: "until Mon 7 Dec 2026"; <paramref name="IsOver"/>: it has run out.</summary>
public sealed record QualificationWords(string For, string? Until, bool IsOver);

/// <summary>A task somebody has in hand.</summary>
public sealed record InHandWords(string CarId, string TaskId, string Car, string Task, DateTimeOffset? Since);

/// <summary>A qualification that work still to do asks for and one person alone, or nobody, has.</summary>
/// <param name="Title">"Noor alone is qualified for fuel".</param>
/// <param name="Note">Which cars ask for it, and when it runs out.</param>
public sealed record LoneQualification(string Title, string Note);

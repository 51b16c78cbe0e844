using System.Collections.Immutable;

namespace JobBoard.Web.Paper;

/// <summary>One printed page: the state of a car or of the shop, cut so that it is one page at A4 and at Letter.</summary>
public sealed record PaperView
{
    /// <summary>The shop.</summary>
    public required string Shop { get; init; }

    /// <summary>The car, or what the sheet is of.</summary>
    public required string Title { get; init; }

    /// <summary>Under the title: what it is, where it stands.</summary>
    public string Under { get; init; } = "";

    /// <summary>Beside the title, each a line: dates and what sets them, who to ask.</summary>
    public ImmutableArray<PaperFact> Facts { get; init; } = [];

    /// <summary>The lists, left column then right, each cut to what finds room.</summary>
    public ImmutableArray<ImmutableArray<PaperList>> Columns { get; init; } = [];

    /// <summary>What it is the state of: instant, entry, who printed it.</summary>
    public required string Stamp { get; init; }
}

/// <summary>A fact in the head of a sheet.</summary>
/// <param name="Name">What.</param>
/// <param name="Words">How it is.</param>
public sealed record PaperFact(string Name, string Words);

/// <summary>A list of a sheet.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Lines">Its lines, the most important first.</param>
/// <param name="More">How many more are on the board.</param>
public sealed record PaperList(string Title, ImmutableArray<string> Lines, int More = 0);

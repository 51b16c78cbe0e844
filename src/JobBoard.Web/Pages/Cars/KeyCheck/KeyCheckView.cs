using System.Collections.Immutable;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Bay;

namespace JobBoard.Web.Pages.Cars.KeyCheck;

/// <summary>May we turn the key? As one person sees it.</summary>
public sealed record KeyCheckView
{
    /// <summary>When this was evaluated.</summary>
    public DateTimeOffset At { get; init; }

    public required string CarId { get; init; }

    public required string Car { get; init; }

    /// <summary>Where the car stands, or nothing while nobody has said.</summary>
    public string? Place { get; init; }

    /// <summary>The hold point; nothing where the plan of the car has no key check.</summary>
    public string? Hold { get; init; }

    /// <summary>What it asks, in the plan's words.</summary>
    public string Asks { get; init; } = "";

    public ImmutableArray<KeyRowView> Rows { get; init; } = [];

    /// <summary>The first of what is still open, in an order in which it can be done.</summary>
    public ImmutableArray<KeyStepView> Open { get; init; } = [];

    /// <summary>How many more are open.</summary>
    public int More { get; init; }

    /// <summary>The earliest moment by the present dates; nothing where it is not known.</summary>
    public DateTimeOffset? Earliest { get; init; }

    public ImmutableArray<KeyCallView> Call { get; init; } = [];

    /// <summary>The reader, when they are in and have to answer.</summary>
    public string? Me { get; init; }

    /// <summary>Whether the reader may tap what others call out.</summary>
    public bool TapsForOthers { get; init; }

    /// <summary>Who gave the word and when, while it stands.</summary>
    public string? Word { get; init; }

    /// <summary>Whether the word still lets the start begin: nothing behind the call has changed.</summary>
    public bool WordStands { get; init; }

    /// <summary>Whether the reader may give the word now.</summary>
    public bool MayGiveWord { get; init; }

    /// <summary>Why there is no word yet, in a few words.</summary>
    public string NotYet { get; init; } = "";

    /// <summary>What became of the start, once it was begun.</summary>
    public string? Outcome { get; init; }

    /// <summary>Whether the reader can say that the start failed.</summary>
    public bool MayFail { get; init; }

    /// <summary>What a failed start can undo: task and name, the latest first.</summary>
    public ImmutableArray<(string Task, string Name, string Stage)> MayUndo { get; init; } = [];

    /// <summary>Conditions to be said when the start is left.</summary>
    public ImmutableArray<BayHowLeft> ItemsToSay { get; init; } = [];
}

/// <summary>One system.</summary>
/// <param name="Key">Unique on the page.</param>
/// <param name="Name">Fuel.</param>
/// <param name="Mark">How its bolt is drawn.</param>
/// <param name="Go">Nothing recorded stands against it.</param>
/// <param name="Words">What stands against it, or the readings that speak for it.</param>
/// <param name="More">How many more stand against it.</param>
/// <param name="Evidence">Everything behind it, one tap deep.</param>
public sealed record KeyRowView(string Key, string Name, BoltState Mark, bool Go, ImmutableArray<string> Words, int More, ImmutableArray<KeyEvidenceView> Evidence);

/// <summary>One piece of evidence.</summary>
public sealed record KeyEvidenceView(string Name, string Words, BoltState Mark);

/// <summary>One thing still open.</summary>
public sealed record KeyStepView(string What, string Who, DateTimeOffset? When);

/// <summary>One person in the call.</summary>
/// <param name="Id">The person.</param>
/// <param name="Name">Their name.</param>
/// <param name="State">go, no go, lapsed or not called.</param>
/// <param name="Words">The state in words, with the reason of a no or what made it lapse.</param>
public sealed record KeyCallView(string Id, string Name, string State, string Words);

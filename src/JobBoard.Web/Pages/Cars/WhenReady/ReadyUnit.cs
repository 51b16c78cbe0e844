using System.Collections.Immutable;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Bay;

namespace JobBoard.Web.Pages.Cars.WhenReady;

/// <summary>What hangs beside a bolt.</summary>
public enum ReadyMark
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>A tag: a reading holds.</summary>
    Tag,

    /// <summary>An octagon: a stop.</summary>
    Stop,
}

/// <summary>A task, a hold point or a folded stage, as the picture and the table show it.</summary>
public sealed record ReadyUnit
{
    /// <summary>The node's id, or <c>stage:ID</c>.</summary>
    public required string Id { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Its stage's name.</summary>
    public string Stage { get; init; } = "";

    /// <summary>Where it leads; nothing for a folded stage.</summary>
    public string? Path { get; init; }

    /// <summary>Its bolt; nothing for a hold point that is not released: a tag.</summary>
    public BoltState? Bolt { get; init; }

    /// <summary>What hangs beside it.</summary>
    public ReadyMark Mark { get; init; }

    /// <summary>A few words over its name in the picture, or nothing.</summary>
    public string? Note { get; init; }

    /// <summary>How it stands, in words.</summary>
    public required string State { get; init; }

    /// <summary>When it starts or started.</summary>
    public required DateTimeOffset Start { get; init; }

    /// <summary>When it ends or ended.</summary>
    public required DateTimeOffset Finish { get; init; }

    /// <summary>Whether its times are actual ones.</summary>
    public bool IsDone { get; init; }

    /// <summary>Whether its times are only what they would be if a part came now.</summary>
    public bool NotKnown { get; init; }

    /// <summary>Whether it is in hand.</summary>
    public bool InHand { get; init; }

    /// <summary>Whether it is on the line that sets the date.</summary>
    public bool OnLine { get; init; }

    /// <summary>Its slack in shop hours, or nothing.</summary>
    public TimeSpan? Slack { get; init; }

    /// <summary>What it comes after.</summary>
    public ImmutableArray<ReadyNeighbour> After { get; init; } = [];

    /// <summary>What comes after it.</summary>
    public ImmutableArray<ReadyNeighbour> Then { get; init; } = [];

    /// <summary>Everything it waits on now.</summary>
    public ImmutableArray<BayWait> WaitsOn { get; init; } = [];

    /// <summary>An id for elements.</summary>
    public string Key => Id.Replace(':', '-');
}

/// <summary>Another one it is linked to.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="How">The link in words, where it is more than one after the other.</param>
public sealed record ReadyNeighbour(string Id, string Name, string? How)
{
    /// <summary>An id for elements.</summary>
    public string Key => Id.Replace(':', '-');
}

using System.Collections.Immutable;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Holds;

/// <summary>The present state of a hold point.</summary>
/// <param name="Id">The hold point.</param>
/// <param name="Released">Who released it, when; nothing while it holds.</param>
/// <param name="Why">Why.</param>
/// <param name="Evidence">On what evidence, in words.</param>
public sealed record HoldState(string Id, SignOff? Released = null, string? Why = null, string? Evidence = null)
{
    /// <summary>Released, and the release has not lapsed in a way that holds.</summary>
    public bool Counts => Released is not null and not { LapsedBy.Holds: true };
}

/// <summary>What a stop holds.</summary>
public enum StopScope
{
    Task,
    Car,
    Place,
    Shop,
}

/// <summary>A stop that is not released yet.</summary>
public sealed record Stop
{
    public required string Id { get; init; }

    public required StopScope Scope { get; init; }

    /// <summary>The car, for task and car stops.</summary>
    public string? Car { get; init; }

    /// <summary>The task, for task stops.</summary>
    public string? Task { get; init; }

    /// <summary>The place, for place stops.</summary>
    public string? Place { get; init; }

    /// <summary>Why, in the raiser's or the rule's words.</summary>
    public required string Why { get; init; }

    /// <summary>The clash that raised it (a key of the rule and its subjects), or nothing when a person did.</summary>
    public string? Clash { get; init; }

    public required string RaisedBy { get; init; }

    public required DateTimeOffset RaisedAt { get; init; }

    /// <summary>Each person it touches, and when they confirmed having heard it.</summary>
    public ImmutableSortedDictionary<string, DateTimeOffset?> Told { get; init; } = ImmutableSortedDictionary.Create<string, DateTimeOffset?>(StringComparer.Ordinal);

    /// <summary>Who made it safe, when and how; nothing until then.</summary>
    public MadeSafe? Safe { get; init; }

    /// <summary>Tasks (car/task) that were in hand in its scope when it was raised: their crews may not release it.</summary>
    public ImmutableArray<string> Tasks { get; init; } = [];

    /// <summary>Everybody who had worked on those tasks by then; stays when one of them is begun anew.</summary>
    public ImmutableSortedSet<string> WorkedBy { get; init; } = ImmutableSortedSet.Create<string>(StringComparer.Ordinal);
}

/// <summary>Someone's word that work was left safe to walk away from, and how. The program never says it is.</summary>
public sealed record MadeSafe(string By, DateTimeOffset At, string How);

namespace JobBoard.Domain.Commands;

/// <summary>What somebody wants done or has seen, before the rules looked at it.</summary>
/// <param name="Id">From the sender; sent twice it is done once.</param>
/// <param name="Actor">The person who sent it.</param>
/// <param name="OccurredAt">When it happened, by the sender; may lie hours back for what comes from a dead spot.</param>
/// <param name="Seen">Number of the last entry its sender was looking at, or nothing.</param>
/// <param name="Command">What.</param>
public sealed record Envelope(Guid Id, string Actor, DateTimeOffset OccurredAt, long? Seen, Command Command);

/// <summary>A command. An intent can be refused by the rules; an observation is always accepted once it makes sense.</summary>
public abstract record Command
{
    /// <summary>What it touches (<see cref="Entries.Foot"/>), for "changed since you looked".</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public virtual IEnumerable<string> Footprint => [];
}

/// <summary>A command about one car.</summary>
public abstract record CarCommand : Command
{
    /// <summary>The car.</summary>
    public required string Car { get; init; }
}

/// <summary>A command about one task of a car.</summary>
public abstract record TaskCommand : CarCommand
{
    /// <summary>The task.</summary>
    public required string Task { get; init; }

    /// <inheritdoc/>
    public override IEnumerable<string> Footprint => [Entries.Foot.Task(Car, Task)];
}

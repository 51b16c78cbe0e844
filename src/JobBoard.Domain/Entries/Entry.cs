namespace JobBoard.Domain.Entries;

/// <summary>Something that happened, as recorded.</summary>
/// <param name="Seq">Place in the shop's day book, from 1, without gaps.</param>
/// <param name="Stream">A car's id, or <c>shop</c>.</param>
/// <param name="Actor">Who did it.</param>
/// <param name="OccurredAt">When it happened.</param>
/// <param name="RecordedAt">When it was written down.</param>
/// <param name="CommandId">The command it came from.</param>
/// <param name="Fact">What happened.</param>
public sealed record Entry(long Seq, string Stream, string Actor, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt, Guid CommandId, Fact Fact);

/// <summary>What happened: the body of an entry. Bodies hold person ids, never names (<see cref="PersonNamed"/> alone excepted).</summary>
public abstract record Fact
{
    /// <summary>Name of the shop's own stream.</summary>
    public const string ShopStream = "shop";

    /// <summary>The stream it belongs to: the shop's unless it is about one car.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public virtual string Stream => ShopStream;

    /// <summary>What it touches (<see cref="Foot"/>).</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public abstract IEnumerable<string> Footprint { get; }
}

/// <summary>A fact about one car.</summary>
public abstract record CarFact : Fact
{
    /// <summary>The car.</summary>
    public required string Car { get; init; }

    /// <inheritdoc/>
    [System.Text.Json.Serialization.JsonIgnore]
    public override string Stream => Car;
}

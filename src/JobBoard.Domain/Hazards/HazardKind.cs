namespace JobBoard.Domain.Hazards;

/// <summary>What makes work dangerous to others.</summary>
public sealed record HazardKind
{
    /// <summary>Unique in the shop, for instance <c>suspended-load</c>.</summary>
    public required string Id { get; init; }

    /// <summary>Shown on screens.</summary>
    public required string Name { get; init; }

    /// <summary>ISO 7010 sign, for instance <c>W015</c>.</summary>
    public required string Sign { get; init; }

    /// <summary>How it ends.</summary>
    public required HazardEnd Ends { get; init; }

    /// <summary>What to do about it, in a sentence.</summary>
    public string Caution { get; init; } = "";

    /// <summary>Whether a car on which it stands may not be moved.</summary>
    public bool PinsCar { get; init; }

    /// <summary>Whether it is a load that hangs in gear: the gear stays taken until the item leaves that condition.</summary>
    public bool HangsInGear { get; init; }
}

/// <summary>When a hazard ends. Condition hazards always end with the condition.</summary>
public enum HazardEnd
{
    /// <summary>With the work: nobody is on it.</summary>
    WithTheWork,

    /// <summary>When somebody made it safe and said how.</summary>
    WhenMadeSafe,

    /// <summary>When the item is no longer in that condition.</summary>
    WithTheCondition,

    /// <summary>By a reading in limits, never by time alone.</summary>
    ByReading,
}

/// <summary>Two dangers that may not stand at once.</summary>
public sealed record KeepApart
{
    /// <summary>Unique in the shop.</summary>
    public required string Id { get; init; }

    /// <summary>One side.</summary>
    public required Side A { get; init; }

    /// <summary>The other side.</summary>
    public required Side B { get; init; }

    /// <summary>How far it reaches.</summary>
    public required Scope Scope { get; init; }

    /// <summary>Metres between the places, for <see cref="Scope.Distance"/>.</summary>
    public decimal? Metres { get; init; }

    /// <summary>Why.</summary>
    public required string Reason { get; init; }

    /// <summary>The reason as a sentence, however its full stop was typed.</summary>
    public string Said() => Reason.TrimEnd(' ', '.') + ".";
}

/// <summary>A side of a keep-apart rule: a hazard, or an item's condition (of any car's item with that id, or <c>shop/ID</c>).</summary>
public sealed record Side(string? Hazard = null, string? Item = null, string? Condition = null);

/// <summary>How far a keep-apart rule reaches. Where a position is unknown it is the whole shop.</summary>
public enum Scope
{
    /// <summary>The same car.</summary>
    Car,

    /// <summary>The same place.</summary>
    Bay,

    /// <summary>Any place under the sweep of gear that either side uses.</summary>
    Sweep,

    /// <summary>Places nearer than a distance.</summary>
    Distance,

    /// <summary>Everywhere.</summary>
    Shop,
}

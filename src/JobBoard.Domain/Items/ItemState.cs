namespace JobBoard.Domain.Items;

/// <summary>The present condition of an item.</summary>
/// <param name="Id">The item.</param>
/// <param name="Condition">Its condition.</param>
/// <param name="Since">Since when.</param>
/// <param name="By">Who left it so.</param>
/// <param name="Task">The task that left it so, or nothing.</param>
public sealed record ItemState(string Id, string Condition, DateTimeOffset Since, string By, string? Task = null);

/// <summary>A disturbance of an aspect.</summary>
/// <param name="Task">The task whose start disturbed it, or nothing for an outside change.</param>
/// <param name="By">Who.</param>
/// <param name="At">When it happened.</param>
public sealed record Disturbance(string? Task, string By, DateTimeOffset At);

/// <summary>Where a part stands.</summary>
/// <param name="Id">The part.</param>
/// <param name="Status">How far it is.</param>
/// <param name="Expected">When it is expected, where known.</param>
/// <param name="Why">Why it was wrong.</param>
/// <param name="Shelf">Where it lies.</param>
/// <param name="By">Who said so last.</param>
/// <param name="At">When.</param>
public sealed record PartState(string Id, PartStatus Status, DateTimeOffset? Expected = null, string? Why = null, string? Shelf = null, string? By = null, DateTimeOffset? At = null);

/// <summary>How far a part is.</summary>
public enum PartStatus
{
    NotOrdered,
    Ordered,
    Arrived,
    CheckedRight,
    Wrong,
}

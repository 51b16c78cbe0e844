using System.Collections.Immutable;

namespace JobBoard.Shop.Dates;

/// <summary>Things taken to be otherwise than the board says, to see what that would do to the dates. Nothing is changed by it.</summary>
public sealed record WhatIf
{
    /// <summary>Shop minutes of work left (0 or more), by task; signed-off tasks stay as they are.</summary>
    public ImmutableDictionary<string, int> Left { get; init; } = ImmutableDictionary.Create<string, int>(StringComparer.Ordinal);

    /// <summary>Parts taken to lie on the shelf, checked right.</summary>
    public ImmutableHashSet<string> PartsHere { get; init; } = ImmutableHashSet.Create<string>(StringComparer.Ordinal);

    /// <summary>Hold points taken to be released no earlier than an instant.</summary>
    public ImmutableDictionary<string, DateTimeOffset> HeldUntil { get; init; } = ImmutableDictionary.Create<string, DateTimeOffset>(StringComparer.Ordinal);
}

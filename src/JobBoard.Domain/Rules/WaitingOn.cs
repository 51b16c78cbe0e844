using System.Collections.Immutable;

namespace JobBoard.Domain.Rules;

/// <summary>One reason why something cannot be done now.</summary>
/// <param name="Rule">The rule that says so (<see cref="RuleBook"/>).</param>
/// <param name="Words">What is missing, with people as <c>{id}</c>.</param>
/// <param name="Who">Who can put it right, ids; empty when only time can.</param>
/// <param name="When">When it ends by itself, where known.</param>
/// <param name="About">What it is about: a node, item, part, hazard, stop or field; stable, for tests and screens.</param>
public sealed record WaitingOn(string Rule, string Words, ImmutableArray<string> Who = default, DateTimeOffset? When = null, string? About = null)
{
    /// <summary>Who can put it right; never default.</summary>
    public ImmutableArray<string> Who { get; init; } = Who.IsDefault ? [] : Who;
}

/// <summary>What the rules made of a command: facts, or a refusal that lists every unmet condition.</summary>
public abstract record Decision
{
    /// <summary>It happened: what to write down (empty when there is nothing new to write).</summary>
    public sealed record Accepted(ImmutableArray<Entries.Fact> Facts) : Decision;

    /// <summary>It did not: everything that stands against it.</summary>
    public sealed record Refused(ImmutableArray<WaitingOn> Reasons) : Decision;
}

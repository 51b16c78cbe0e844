using System.Collections.Immutable;
using System.Text.Json;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;

namespace JobBoard.Shop.Running;

/// <summary>What became of a command.</summary>
public abstract record Outcome
{
    /// <summary>It is written down and on the disk, or there was nothing new to write.</summary>
    /// <param name="First">Its first entry, or nothing.</param>
    /// <param name="Last">Its last entry, or nothing.</param>
    public sealed record Accepted(long? First, long? Last) : Outcome;

    /// <summary>The rules refused it: everything that stands against it. Nothing was changed.</summary>
    public sealed record Refused(ImmutableArray<WaitingOn> Reasons) : Outcome
    {
        /// <summary>Whether the input itself made no sense here: each reason is about a field.</summary>
        public bool IsBadInput => Reasons.All(r => r.Rule == RuleBook.Ids.Input);
    }

    /// <summary>The id was used before for something else. Nothing was changed; the sender needs a new id.</summary>
    public sealed record OtherContent : Outcome;

    /// <summary>The day book could not be written just now. Nothing was changed and no outcome is kept: send it again.</summary>
    public sealed record Unavailable(string Words) : Outcome;

    /// <summary>The outcome as it is kept beside the day book; only what the rules reached is.</summary>
    public string ToJson() => JsonSerializer.Serialize(Kept.Of(this), PlanJson.Options);

    /// <summary>Reads a kept outcome.</summary>
    public static Outcome FromJson(string json) => JsonSerializer.Deserialize<Kept>(json, PlanJson.Options)!.ToOutcome();

    private sealed record Kept(bool Accepted, long? First, long? Last, ImmutableArray<WaitingOn>? Reasons)
    {
        public static Kept Of(Outcome outcome) => outcome switch
        {
            Accepted a => new(true, a.First, a.Last, null),
            Refused r => new(false, null, null, r.Reasons),
            _ => throw new InvalidOperationException($"No outcome is kept of {outcome.GetType().Name}."),
        };

        public Outcome ToOutcome() => Accepted ? new Accepted(First, Last) : new Refused(Reasons ?? []);
    }
}

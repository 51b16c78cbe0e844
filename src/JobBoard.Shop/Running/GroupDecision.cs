using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Rules;
using JobBoard.Shop.Commands;
using JobBoard.Storage;
using JobBoard.Storage.Journal;
using JobBoard.Storage.Outcomes;

namespace JobBoard.Shop.Running;

/// <summary>Decides the commands of one group, one after another, on the tentative state each leaves to the next.</summary>
internal sealed class GroupDecision(IAppendGroup group, RuleBook rules, ShopState state)
{
    /// <summary>Tentative until the group is committed.</summary>
    public ShopState State { get; private set; } = state;

    /// <summary>Decides one command. A fault of the program ends that command alone: its sender gets the exception.</summary>
    public Outcome? Decide(Envelope sent, DateTimeOffset now, TaskCompletionSource<Outcome> answer)
    {
        try
        {
            var whole = sent with { OccurredAt = DateTimeOffset.FromUnixTimeMilliseconds(sent.OccurredAt.ToUnixTimeMilliseconds()) };
            return DecideOnce(whole with { OccurredAt = Deciding.When(whole, now) }, now);
        }
        catch (Exception error) when (error is not StorageException)
        {
            answer.TrySetException(error);
            return null;
        }
    }

    private Outcome DecideOnce(Envelope envelope, DateTimeOffset now)
    {
        var hash = CommandHash.Of(envelope);
        var known = group.Find(envelope.Id, hash);
        if (known.Match == OutcomeMatch.OtherContent) return new Outcome.OtherContent();
        if (known.Match == OutcomeMatch.SameContent) return Outcome.FromJson(known.Outcome!.Outcome);
        return Deciding.Decide(State, envelope, now, rules) switch
        {
            Decision.Accepted accepted => Append(envelope, hash, now, accepted.Facts),
            Decision.Refused refused => Refuse(envelope, hash, now, refused.Reasons),
            var other => throw new InvalidOperationException($"Unknown decision {other}."),
        };
    }

    private Outcome.Refused Refuse(Envelope envelope, byte[] hash, DateTimeOffset now, ImmutableArray<WaitingOn> reasons)
    {
        var outcome = new Outcome.Refused(reasons);
        group.RecordRefusal(Kept(envelope, hash, now, outcome));
        return outcome;
    }

    private Outcome.Accepted Append(Envelope envelope, byte[] hash, DateTimeOffset now, ImmutableArray<Fact> facts)
    {
        var first = group.Head + 1;
        var outcome = facts.IsEmpty ? new Outcome.Accepted(null, null) : new Outcome.Accepted(first, first + facts.Length - 1);
        var rows = group.Append(
            Kept(envelope, hash, now, outcome),
            [.. facts.Select(f => DayBook.ToNew(f, envelope.Actor, envelope.OccurredAt, envelope.Id))]);
        try
        {
            // What is folded is what was written, so that a restart folds the same.
            State = rows.Aggregate(State, DayBook.Apply);
        }
        catch
        {
            group.DropLast();
            throw;
        }

        return outcome;
    }

    private static CommandOutcome Kept(Envelope envelope, byte[] hash, DateTimeOffset now, Outcome outcome) =>
        new(envelope.Id, hash, outcome.ToJson(), envelope.Actor, now.ToUnixTimeMilliseconds());
}

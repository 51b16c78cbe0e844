using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Rules;

namespace JobBoard.Shop.Demo;

/// <summary>Where a scripted crew looks and where it sends its commands: the rules in memory, a running shop, or a shop behind pages.</summary>
/// <param name="Look">The present state.</param>
/// <param name="Send">Sends a command; gives everything that stands against it, nothing when it was accepted.</param>
/// <param name="SetNow">Sets the shop's clock; called before each command, never backwards.</param>
public sealed record CrewDoor(Func<ShopState> Look, Func<Envelope, Task<ImmutableArray<WaitingOn>>> Send, Action<DateTimeOffset> SetNow)
{
    /// <summary>
    /// Where the shop's clock runs by itself: waits until then, or until somebody else did something, and gives the time it is.
    /// Nothing where the crew sets the clock.
    /// </summary>
    public Func<DateTimeOffset, CrewWait, Task<DateTimeOffset>>? Wait { get; init; }
}

/// <summary>What a scripted crew waits for.</summary>
public enum CrewWait
{
    /// <summary>A hand's pause between two commands.</summary>
    Pause,

    /// <summary>The next thing there is for it to do; nothing happens until then.</summary>
    NothingToDo,

    /// <summary>Somebody else: a stop to be released, work in hand that is not its own.</summary>
    Others,
}

/// <summary>A shop in memory alone: the rules and the folding, without a day book.</summary>
public sealed class ShopInMemory(ShopState? state = null, RuleBook? rules = null)
{
    private readonly RuleBook _rules = rules ?? RuleBook.Full;

    /// <summary>The present state.</summary>
    public ShopState State { get; private set; } = state ?? ShopState.Empty;

    /// <summary>The shop's time.</summary>
    public DateTimeOffset Now { get; private set; }

    /// <summary>Every accepted command with the time it was accepted at, in order.</summary>
    public List<(Envelope Envelope, DateTimeOffset At)> Accepted { get; } = [];

    /// <summary>Every entry written, in order.</summary>
    public List<Entry> Entries { get; } = [];

    /// <summary>The way in for a scripted crew.</summary>
    public CrewDoor Door => new(() => State, e => Task.FromResult(Send(e)), SetNow);

    /// <summary>Sets the shop's time, never backwards.</summary>
    public void SetNow(DateTimeOffset now) => Now = now > Now ? now : Now;

    /// <summary>Decides a command and folds what it brings.</summary>
    /// <returns>What stands against it; nothing when it was accepted.</returns>
    public ImmutableArray<WaitingOn> Send(Envelope envelope)
    {
        var decision = Deciding.Decide(State, envelope, Now, _rules);
        if (decision is not Decision.Accepted accepted) return ((Decision.Refused)decision).Reasons;
        foreach (var fact in accepted.Facts)
        {
            var entry = new Entry(State.Seq + 1, fact.Stream, envelope.Actor, Deciding.When(envelope, Now), Now, envelope.Id, fact);
            State = Folding.Apply(State, entry);
            Entries.Add(entry);
        }

        Accepted.Add((envelope, Now));
        return [];
    }
}

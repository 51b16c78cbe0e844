using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Rules;

/// <summary>The one door: what the rules make of a command.</summary>
public static class Deciding
{
    /// <summary>
    /// Decides a command on a state of the shop. Accepted, it gives the facts to append, automatic consequences (lapses, stops for clashes)
    /// included; refused, everything that stands against it: that others changed it meanwhile comes first and is never the only thing said.
    /// </summary>
    public static Decision Decide(ShopState shop, Envelope envelope, DateTimeOffset now, RuleBook rules)
    {
        var ask = new Ask(shop, envelope with { OccurredAt = When(envelope, now) }, now, rules);
        Admission.Check(ask);
        if (ask.Reasons.Any(r => r.Rule != RuleBook.Ids.Stale)) return Refused(ask);
        Dispatch(ask);
        if (ask.Reasons.Count > 0) return Refused(ask);
        if (ask.Facts.Count > 0) ask.Facts.AddRange(Clashes.NewStops(shop, After(ask), envelope, now, rules));
        return new Decision.Accepted([.. ask.Facts]);
    }

    /// <summary>When a command's facts occurred: an observation keeps its sender's time if that is not in the future, an intent happens now.</summary>
    public static DateTimeOffset When(Envelope envelope, DateTimeOffset now) =>
        Admission.IsObservation(envelope.Command) && envelope.OccurredAt < now ? envelope.OccurredAt : now;

    /// <summary>The state as it would be after an ask's facts.</summary>
    internal static ShopState After(Ask ask)
    {
        var state = ask.Shop;
        foreach (var fact in ask.Facts)
            state = Folding.Apply(state, new(state.Seq + 1, fact.Stream, ask.Actor, ask.At, ask.Now, ask.Envelope.Id, fact));
        return state;
    }

    private static Decision.Refused Refused(Ask ask) => new([.. ask.Reasons]);

    private static void Dispatch(Ask ask)
    {
        switch (ask.Envelope.Command)
        {
            case StartTask c: Starting.Start(ask, c); break;
            case JoinTask c: Starting.Join(ask, c); break;
            case LeaveTask c: Leaving.One(ask, c); break;
            case LeavePartDone c: Leaving.PartDone(ask, c); break;
            case KnockOff c: Leaving.KnockOff(ask, c); break;
            case AcknowledgeLeft c: Leaving.Acknowledge(ask, c); break;
            case SignOffTask c: Finishing.SignOff(ask, c); break;
            case SecondCheck c: Finishing.Check(ask, c); break;
            case MarkUndone c: Undoing.Undo(ask, c); break;
            case AnswerAgain c: Undoing.Answer(ask, c); break;
            case TakeBack c: Undoing.TakeBack(ask, c); break;
            case LogReading c: Measuring.Log(ask, c); break;
            case ReleaseReading c: Measuring.Release(ask, c); break;
            case ChangeItem c: Changing.Item(ask, c); break;
            case ChangeShopItem c: Changing.ShopItem(ask, c); break;
            case MakeHazardSafe c: Changing.MakeHazardSafe(ask, c); break;
            case RaiseStop c: StopDecisions.Raise(ask, c); break;
            case HearStop c: StopDecisions.Hear(ask, c); break;
            case MakeSafe c: StopDecisions.MakeSafe(ask, c); break;
            case ReleaseStop c: StopDecisions.Release(ask, c); break;
            case ReleaseHold c: Releasing.Hold(ask, c); break;
            case AnswerCall c: Calling.Answer(ask, c); break;
            case FailStart c: Calling.Failed(ask, c); break;
            case LetThrough c: Releasing.LetThrough(ask, c); break;
            case CarCommand c: CarDecisions.Decide(ask, c); break;
            default: ShopDecisions.Decide(ask, ask.Envelope.Command); break;
        }
    }
}

/// <summary>A command being decided: the state it is decided on, and what has been found so far.</summary>
internal sealed class Ask(ShopState shop, Envelope envelope, DateTimeOffset now, RuleBook rules)
{
    private Places.ShopHours? _hours;

    public ShopState Shop => shop;

    public Envelope Envelope => envelope;

    public string Actor => envelope.Actor;

    /// <summary>When it occurred.</summary>
    public DateTimeOffset At => envelope.OccurredAt;

    public DateTimeOffset Now => now;

    public RuleBook Rules => rules;

    public List<Fact> Facts { get; } = [];

    public List<WaitingOn> Reasons { get; } = [];

    public Places.ShopHours Hours => _hours ??= Places.ShopHours.Of(shop);

    public People.Person Person => shop.People[envelope.Actor];

    public bool Has(string rule) => rules.Has(rule);

    public void Refuse(string rule, string words, ImmutableArray<string> who = default, string? about = null)
    {
        if (rule == RuleBook.Ids.Input || rules.Has(rule)) Reasons.Add(new(rule, words, who, About: about));
    }

    /// <summary>Bad input in a named field.</summary>
    public void Bad(string field, string words) => Reasons.Add(new(RuleBook.Ids.Input, words, About: field));

    /// <summary>The car, or a reason.</summary>
    public CarBoard? Car(string id)
    {
        if (shop.Cars.TryGetValue(id, out var car)) return car;
        Bad("car", $"There is no car '{id}' in this shop.");
        return null;
    }

    /// <summary>A question about a task, or a reason.</summary>
    public TaskQuestion? Task(TaskCommand command)
    {
        if (Car(command.Car) is not { } car) return null;
        if (PlanIndex.Of(car.Plan).Task(command.Task) is { } task) return new(shop, car, task, now, rules, Hours);
        Bad("task", $"{car.Name} has no task '{command.Task}'.");
        return null;
    }
}

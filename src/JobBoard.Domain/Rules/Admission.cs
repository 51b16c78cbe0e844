using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Rules;

/// <summary>Who may send what, and whether the sender was looking at the present state.</summary>
public static class Admission
{
    /// <summary>The least position that may send a command. Own work, qualifications and the like are further rules.</summary>
    public static Position Least(Command command) => command switch
    {
        SetShop or SetPerson or LeaveShop or SetPlace or TakeOutPlace or SetGear or SetInstrument or SetHazard or SetKeepApart or TakeOutKeepApart or SetShopItem or SetContact => Position.Owner,
        TakeInCar or ChangePlan or RevisePlan or SaveTemplate or AnswerAgain or GiveDate or ReleaseStop or ReleaseReading or LetThrough or OrderPart or AskCustomer or ChooseNote => Position.Foreman,
        MoveCar or SecondCheck or MarkUndone or ReviseEstimate or ReleaseHold or FailStart or CheckPart or TakeAnswer => Position.Technician,
        _ => Position.Apprentice,
    };

    /// <summary>Observations are always accepted once they make sense, and keep the time they occurred; intents can be refused.</summary>
    public static bool IsObservation(Command command) => command is LogReading or LeavePartDone or KnockOff or RaiseStop or HearStop or MakeSafe
        or ComeIn or GoOut or BeAway or ChangeItem or ChangeShopItem or MakeHazardSafe or ArrivePart or CheckPart or RaiseSnag or WriteNote
        or AcknowledgeLeft or LeaveTask or SignOffTask { Late: true };

    internal static void Check(Ask ask)
    {
        if (IsFirstOwner(ask)) return;
        if (!ask.Shop.People.TryGetValue(ask.Actor, out var person) || person.Left)
        {
            ask.Bad("actor", $"There is nobody '{ask.Actor}' in this shop.");
            return;
        }

        var least = Least(ask.Envelope.Command);
        if (person.Position < least)
            ask.Refuse(RuleBook.Ids.Position, $"Only {(least == Position.Owner ? "the owner" : $"a {least.ToString().ToLowerInvariant()} or above")} may do that.", WhoIs(ask, least));
        if (!IsObservation(ask.Envelope.Command)) Stale(ask);
    }

    /// <summary>An empty shop takes its first owner from nobody.</summary>
    private static bool IsFirstOwner(Ask ask) =>
        ask.Shop.People.IsEmpty && ask.Envelope.Command is SetPerson { Position: Position.Owner } first && first.Person == ask.Actor;

    private static System.Collections.Immutable.ImmutableArray<string> WhoIs(Ask ask, Position least) =>
        [.. ask.Shop.People.Values.Where(p => !p.Left && p.Position >= least).Select(p => p.Id)];

    private static void Stale(Ask ask)
    {
        if (ask.Envelope.Seen is not { } seen) return;
        foreach (var key in ask.Envelope.Command.Footprint)
        {
            if (ask.Shop.Touched.GetValueOrDefault(key)?.NotBy(ask.Actor) is { } touch && touch.Seq > seen)
                ask.Refuse(RuleBook.Ids.Stale, $"Changed since you looked, by {{{touch.Actor}}}: {touch.Kind.Replace('-', ' ')}.", [touch.Actor], key);
        }
    }
}

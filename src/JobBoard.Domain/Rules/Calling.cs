using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Holds;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>
/// The call before the key is turned: everybody who is in the shop answers go or no go, aloud, tapped by themselves or by the
/// foreman for them. The foreman's word is the release of the key check; it wants a go of everybody, and so does the start after it.
/// </summary>
public static class Calling
{
    /// <summary>Everybody who is asked: whoever is in, for fire and exhaust reach the whole shop.</summary>
    public static IEnumerable<Person> Asked(ShopState shop) => shop.People.Values.Where(p => p.IsIn && !p.Left);

    internal static void Answer(Ask ask, AnswerCall command)
    {
        if (ask.Car(command.Car) is not { } car || KeyCheck(ask, car, command.Hold) is not { } hold) return;
        if (!ask.Shop.People.TryGetValue(command.Person, out var person) || !person.IsIn) ask.Bad("person", $"{{{command.Person}}} is not in: the call asks whoever is in the shop.");
        if (command.Person != ask.Actor && ask.Person.Position < Position.Foreman)
            ask.Refuse(RuleBook.Ids.Position, "Answer for yourself; the foreman may tap what others call out.", [command.Person], "person");
        if (!command.Go && string.IsNullOrWhiteSpace(command.Why)) ask.Bad("why", "Say what is against it.");
        if (ask.Reasons.Count == 0) ask.Facts.Add(new CallAnswered(hold.Id, command.Person, command.Go, command.Go ? "" : command.Why!.Trim()) { Car = car.Id });
    }

    private static HoldPoint? KeyCheck(Ask ask, CarBoard car, string id)
    {
        if (PlanIndex.Of(car.Plan).Hold(id) is { KeyCheck: true } hold) return hold;
        ask.Bad("hold", $"{car.Name} has no key check '{id}'.");
        return null;
    }

    /// <summary>The engine did not start, or was stopped at once: the word is gone, and what has to be done again is.</summary>
    internal static void Failed(Ask ask, FailStart command)
    {
        if (ask.Car(command.Car) is not { } car || KeyCheck(ask, car, command.Hold) is not { } hold) return;
        var index = PlanIndex.Of(car.Plan);
        if (string.IsNullOrWhiteSpace(command.Why)) ask.Bad("why", "Say what happened.");
        if (car.Holds[hold.Id].Released is null) ask.Refuse(RuleBook.Ids.TaskState, $"{hold.Name}: nobody gave the word, so nothing was started.", about: hold.Id);
        var behind = Behind(index, hold.Id).Select(t => car.Tasks[t]).ToArray();
        if (behind.All(t => t.StartedAt is null || t.Status == WorkStatus.SignedOff)) ask.Refuse(RuleBook.Ids.TaskState, "The start is not in hand.", about: hold.Id);
        foreach (var task in command.Undo) CheckUndo(ask, car, hold, task);
        if (ask.Reasons.Count > 0) return;
        foreach (var state in behind.Where(t => t.Status == WorkStatus.InHand))
            Leaving.Leave(ask, new(ask.Shop, car, index.Task(state.Id)!, ask.Now, ask.Rules, ask.Hours), command.How ?? command.Why, command.Items, "");
        ask.Facts.Add(new StartFailed(hold.Id, command.Why.Trim(), command.Undo) { Car = car.Id });
        var undone = index.InOrder.Where(command.Undo.Contains).Reverse().ToArray();
        for (var i = 0; i < undone.Length; i++)
            ask.Facts.Add(Undoing.Of(car, undone[i], command.Why, undone[..i]));
        if (ask.Reasons.Count > 0) ask.Facts.Clear();
    }

    private static void CheckUndo(Ask ask, CarBoard car, HoldPoint hold, string task)
    {
        var index = PlanIndex.Of(car.Plan);
        if (index.Task(task) is not { } found) ask.Bad("undo", $"{car.Name} has no task '{task}'.");
        else if (!index.IsAfter(hold.Id, task)) ask.Bad("undo", $"{found.Name} is not behind {hold.Name}.");
        else if (car.Tasks[task].Status is not (WorkStatus.SignedOff or WorkStatus.ForSecondCheck)) ask.Bad("undo", $"{found.Name} is not signed off.");
    }

    /// <summary>Tasks the key check lets start: those directly after it.</summary>
    public static IEnumerable<string> Behind(PlanIndex index, string hold) =>
        index.LinksFrom(hold).Where(l => index.Task(l.Task) is not null).Select(l => l.Task).Distinct(StringComparer.Ordinal);

    /// <summary>What a task waits on of the calls of key checks directly before it; those not released are named as hold points.</summary>
    internal static IEnumerable<WaitingOn> Of(TaskQuestion q)
    {
        if (!q.Has(RuleBook.Ids.Call)) yield break;
        foreach (var link in q.Index.LinksInto(q.Task.Id))
        {
            if (q.Index.Hold(link.After) is { KeyCheck: true } hold && q.Car.Holds[hold.Id].Released is not null && !q.LetThrough(hold.Id) && Open(q, hold) is { } waiting) yield return waiting;
        }
    }

    /// <summary>What is missing of the call of one key check, or nothing.</summary>
    internal static WaitingOn? Open(TaskQuestion q, HoldPoint hold)
    {
        var missing = Asked(q.Shop).Select(p => (Person: p.Id, Answer: q.Car.Call.GetValueOrDefault(CallAnswer.Key(hold.Id, p.Id)))).Where(a => a.Answer is not { Counts: true }).ToArray();
        if (missing.Length == 0) return null;
        var no = missing.Where(m => m.Answer is { Go: false, Lapsed: null }).Select(m => $"{{{m.Person}}} says no go: {m.Answer!.Why}");
        var lapsed = missing.Where(m => m.Answer?.Lapsed is not null).Select(m => $"{{{m.Person}}}").ToArray();
        var silent = missing.Where(m => m.Answer is null).Select(m => $"{{{m.Person}}}").ToArray();
        string[] words = [.. no, .. Said(lapsed, "answered before something changed"), .. Said(silent, silent.Length == 1 ? "has not answered" : "have not answered")];
        return new(RuleBook.Ids.Call, $"The call: {string.Join("; ", words)}.", [.. missing.Select(m => m.Person)], About: hold.Id);
    }

    private static IEnumerable<string> Said(string[] who, string what) => who.Length == 0 ? [] : [$"{string.Join(", ", who)} {what}"];
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>Marking undone, "again or not?", and "not what I meant".</summary>
internal static class Undoing
{
    public static void Undo(Ask ask, MarkUndone command)
    {
        if (ask.Task(command) is not { } q) return;
        if (string.IsNullOrWhiteSpace(command.Why)) ask.Bad("why", "Say why it has to be done again.");
        if (q.State.Status is not (WorkStatus.SignedOff or WorkStatus.ForSecondCheck)) ask.Bad("task", $"{q.Task.Name} is not signed off.");
        if (ask.Reasons.Count > 0) return;
        ask.Facts.Add(Of(q.Car, q.Task.Id, command.Why, []));
    }

    /// <summary>The fact of one task undone, asking of everything done after it but what is undone with it.</summary>
    public static TaskUndone Of(CarBoard car, string task, string why, IReadOnlyCollection<string> undoneToo)
    {
        var later = PlanIndex.Of(car.Plan).AllAfter(task)
            .Where(n => !undoneToo.Contains(n) && car.Tasks.TryGetValue(n, out var t) && t.Status is WorkStatus.SignedOff or WorkStatus.ForSecondCheck)
            .Order(StringComparer.Ordinal).ToImmutableArray();
        return new(why.Trim(), later) { Car = car.Id, Task = task };
    }

    public static void Answer(Ask ask, AnswerAgain command)
    {
        if (ask.Task(command) is not { } q) return;
        if (!q.Car.Questions.ContainsKey(q.Task.Id)) ask.Bad("task", $"Nobody asks whether {q.Task.Name} has to be done again.");
        if (string.IsNullOrWhiteSpace(command.Why)) ask.Bad("why", "Say why.");
        if (ask.Reasons.Count == 0) ask.Facts.Add(new AgainAnswered(command.Again, command.Why.Trim()) { Car = q.Car.Id, Task = q.Task.Id });
    }

    public static void TakeBack(Ask ask, TakeBack command)
    {
        var at = ask.Shop.Recent.FindIndex(r => r.Id == command.CommandId);
        if (at < 0 || ask.Now - ask.Shop.Recent[at].At > Folding.TakeBackWithin)
        {
            // Nothing can be restored once the minute is over: no rule, the state before is gone.
            ask.Bad("command", "Only what you did within the last minute can be taken back.");
            return;
        }

        var recent = ask.Shop.Recent[at];
        if (recent.Actor != ask.Actor) ask.Refuse(RuleBook.Ids.TakeBack, $"That was done by {{{recent.Actor}}}.", [recent.Actor], "command");
        if (recent.Entries.Any(e => e.Fact is TakenBack)) ask.Bad("command", "Taking back is not taken back: do it again.");
        var built = ask.Shop.Recent.Skip(at + 1).FirstOrDefault(r => r.Footprint.Overlaps(recent.Footprint));
        if (built is not null) ask.Bad("command", $"Something was built on it since, by {{{built.Actor}}}.");
        if (ask.Reasons.Count > 0) return;
        ask.Facts.Add(new TakenBack(command.CommandId, [.. recent.Footprint.Order(StringComparer.Ordinal)]));
        foreach (var words in BuiltOn.Find(ask, at)) ask.Refuse(RuleBook.Ids.TakeBack, $"Something was built on it since. {words}", about: "command");
        Shaken(ask);
    }

    /// <summary>Work that rests on what would be taken back stands against it.</summary>
    private static void Shaken(Ask ask)
    {
        var before = Clashes.Of(ask.Shop, ask.Now, ask.Rules);
        foreach (var clash in Clashes.Of(Deciding.After(ask), ask.Now, ask.Rules).Values.Where(c => !before.ContainsKey(c.Key)))
            ask.Refuse(RuleBook.Ids.TakeBack, $"Something was built on it since. {clash.Words}", about: clash.Key);
    }
}

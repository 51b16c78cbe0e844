using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>Leaving work: part-done, one of a crew, everything for the night, and acknowledging how it was left.</summary>
internal static class Leaving
{
    public static void PartDone(Ask ask, LeavePartDone command)
    {
        if (ask.Task(command) is not { } q || !InHand(ask, q)) return;
        if (q.State.Crew.All(m => m.Person != ask.Actor) && ask.Person.Position < Position.Foreman)
            ask.Refuse(RuleBook.Ids.Position, "Only its crew or the foreman leaves work part-done.", [.. q.State.Crew.Select(m => m.Person)], "task");
        Leave(ask, q, command.How, command.Items, "");
    }

    /// <summary>Adds the fact of a task being left, or what is missing to say so.</summary>
    public static void Leave(Ask ask, TaskQuestion q, string? how, ImmutableSortedDictionary<string, string> items, string prefix)
    {
        how = string.IsNullOrWhiteSpace(how) ? null : how.Trim();
        if (how is null && !q.Task.HowLeft.IsEmpty)
            ask.Refuse(RuleBook.Ids.HowLeft, $"Say how {q.Task.Name} was left: {string.Join(", ", q.Task.HowLeft)}, or in your own words.", about: "how");
        var left = ItemsLeft(ask, q, items, prefix);
        ask.Facts.Add(new TaskLeftPartDone(how, left, Remaining.Done(q.State, ask.Hours, ask.At), Loads.After(q, left)) { Car = q.Car.Id, Task = q.Task.Id });
    }

    /// <summary>The condition each changed item is really in. Where it passes through others or a danger it has to be said.</summary>
    private static ImmutableSortedDictionary<string, string> ItemsLeft(Ask ask, TaskQuestion q, ImmutableSortedDictionary<string, string> given, string prefix)
    {
        var left = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var change in q.Task.Changes)
        {
            var now = q.Car.Items[change.Item].Condition;
            if (!given.TryGetValue(prefix + change.Item, out var said)) said = Loads.HasToBeSaid(q.Shop, q.Car, change) ? null : now;
            var name = q.Index.Item(change.Item)!.Name;
            if (said is null) ask.Bad("items", $"Say what condition {name} is in: {string.Join(", ", change.Path.Distinct())}.");
            else if (said != now && !change.Path.Contains(said)) ask.Bad("items", $"{name} cannot be '{said}' here: {string.Join(", ", change.Path.Distinct())}.");
            else left[change.Item] = said;
        }

        return left.ToImmutable();
    }

    public static void One(Ask ask, LeaveTask command)
    {
        if (ask.Task(command) is not { } q || !InHand(ask, q)) return;
        if (q.State.Crew.All(m => m.Person != command.Person)) ask.Bad("person", $"{{{command.Person}}} is not on {q.Task.Name}.");
        if (q.State.Crew.Length == 1) ask.Refuse(RuleBook.Ids.TaskState, $"Nobody would be on {q.Task.Name}: leave it part-done, or sign it off.", about: q.Task.Id);
        if (command.Person != ask.Actor && ask.Person.Position < Position.Foreman)
            ask.Refuse(RuleBook.Ids.Position, "Leave for yourself; the foreman may take others off.", q.Foremen, "person");
        if (ask.Reasons.Count == 0) ask.Facts.Add(OneLess(ask, q, command.Person));
    }

    private static CrewLeft OneLess(Ask ask, TaskQuestion q, string person)
    {
        var rest = q.State.Crew.RemoveAll(m => m.Person == person);
        return new(person, Crewing.IsFull(ask.Shop, q.Task, rest, ask.Now), Remaining.Done(q.State, ask.Hours, ask.At)) { Car = q.Car.Id, Task = q.Task.Id };
    }

    public static void KnockOff(Ask ask, KnockOff command)
    {
        foreach (var q in Own(ask, ask.Actor).Where(q => !q.Task.NowAndThen))
        {
            var key = q.Car.Id + "/" + q.Task.Id;
            if (q.State.Crew.Length > 1) ask.Facts.Add(OneLess(ask, q, ask.Actor));
            else Leave(ask, q, command.How.GetValueOrDefault(key), command.Items, q.Car.Id + "/");
        }

        if (ask.Facts.Count == 0 && ask.Reasons.Count == 0) ask.Refuse(RuleBook.Ids.TaskState, "You have nothing in hand.");
    }

    /// <summary>Somebody went out: their work goes on with the rest of the crew, or is left as nobody said.</summary>
    public static void WentOut(Ask ask, string person)
    {
        foreach (var q in Own(ask, person).Where(q => !q.Task.NowAndThen))
        {
            if (q.State.Crew.Length > 1)
            {
                ask.Facts.Add(OneLess(ask, q, person));
                continue;
            }

            var items = q.Task.Changes.ToImmutableSortedDictionary(c => c.Item, c => Loads.Worst(q.Shop, q.Car, c), StringComparer.Ordinal);
            var words = string.Join(", ", q.Task.Changes.Where(c => Loads.HasToBeSaid(q.Shop, q.Car, c)).Select(c => $"{q.Index.Item(c.Item)!.Name} taken to be {items[c.Item]}"));
            var how = $"not said, {{{person}}} went out{(words.Length > 0 ? "; " + words : "")}";
            ask.Facts.Add(new TaskLeftPartDone(how, items, Remaining.Done(q.State, ask.Hours, ask.At), Loads.After(q, items)) { Car = q.Car.Id, Task = q.Task.Id });
        }
    }

    private static IEnumerable<TaskQuestion> Own(Ask ask, string person) =>
        from car in ask.Shop.Cars.Values
        from state in Going.On(car).InHand
        where state.Crew.Any(m => m.Person == person)
        select new TaskQuestion(ask.Shop, car, PlanIndex.Of(car.Plan).Task(state.Id)!, ask.Now, ask.Rules, ask.Hours);

    public static void Acknowledge(Ask ask, AcknowledgeLeft command)
    {
        if (ask.Task(command) is not { } q) return;
        if (q.State is not { Status: WorkStatus.PartDone, Left: { } left })
            ask.Refuse(RuleBook.Ids.TaskState, $"{q.Task.Name} was not left with anything to acknowledge.", about: q.Task.Id);
        else if (!left.AcknowledgedBy.Contains(ask.Actor) && left.By != ask.Actor)
            ask.Facts.Add(new LeftAcknowledged(ask.Actor) { Car = q.Car.Id, Task = q.Task.Id });
    }

    internal static bool InHand(Ask ask, TaskQuestion q)
    {
        if (q.State.Status == WorkStatus.InHand) return true;
        ask.Bad("task", $"{q.Task.Name} is not in hand.");
        return false;
    }
}

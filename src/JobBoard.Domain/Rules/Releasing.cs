using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Holds;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>Releasing hold points, and letting one named task through one named hold.</summary>
public static class Releasing
{
    internal static void Hold(Ask ask, ReleaseHold command)
    {
        if (ask.Car(command.Car) is not { } car) return;
        if (PlanIndex.Of(car.Plan).Hold(command.Hold) is not { } hold)
        {
            ask.Bad("hold", $"{car.Name} has no hold point '{command.Hold}'.");
            return;
        }

        if (string.IsNullOrWhiteSpace(command.Why)) ask.Bad("why", "Say why it may go on.");
        if (string.IsNullOrWhiteSpace(command.Evidence)) ask.Bad("evidence", "Say on what evidence.");
        if (car.Holds[hold.Id].Released is { LapsedBy: null }) ask.Bad("hold", $"{hold.Name} is released already.");
        ask.Reasons.AddRange(Against(ask.Shop, car, hold, ask.Person, ask.Now, ask.Rules));
        if (ask.Reasons.Count > 0) return;
        ask.Facts.Add(new HoldReleased(hold.Id, command.Why.Trim(), command.Evidence.Trim()) { Car = car.Id });
        ask.Facts.AddRange(Lapsing.TakenAgain(ask, car, hold.Id, hold.TakesAgain));
    }

    /// <summary>Everything that stands against this person releasing this hold now.</summary>
    public static ImmutableArray<WaitingOn> Against(ShopState shop, CarBoard car, HoldPoint hold, Person person, DateTimeOffset now, RuleBook rules)
    {
        var reasons = ImmutableArray.CreateBuilder<WaitingOn>();
        var q = Question(shop, car, hold, now, rules);
        var may = MayRelease(q, hold);
        if (!may.Contains(person.Id))
        {
            if (person.Position < hold.ReleasedBy || !person.IsQualified(hold.Qualification, now))
                Add(RuleBook.Ids.OwnRelease, $"{hold.Name} is released by a {hold.ReleasedBy.ToString().ToLowerInvariant()} or above{(hold.Qualification is null ? "" : $", qualified for {hold.Qualification}")}.", may);
            else
                Add(RuleBook.Ids.OwnRelease, "Nobody releases their own work.", may);
        }

        if (rules.Has(RuleBook.Ids.ReleaseOrder))
        {
            reasons.AddRange(OrderRules.Of(q).Concat(HoldRules.HoldPoints(q)).Concat(HoldRules.ReadingHolds(q)));
            reasons.AddRange(Before(q));
        }

        if (hold.KeyCheck && rules.Has(RuleBook.Ids.Call) && Calling.Open(q, hold) is { } call) reasons.Add(call);
        if (hold.Handover && rules.Has(RuleBook.Ids.Handover)) reasons.AddRange(Handover.Missing(q));
        return reasons.DrainToImmutable();

        void Add(string rule, string words, ImmutableArray<string> who)
        {
            if (rules.Has(rule)) reasons.Add(new(rule, words, who, About: "actor"));
        }
    }

    /// <summary>Hold points directly before this one.</summary>
    private static IEnumerable<WaitingOn> Before(TaskQuestion q) => q.Index.LinksInto(q.Task.Id)
        .Where(l => q.Car.Holds.TryGetValue(l.After, out var h) && h.Released is null && !q.Has(RuleBook.Ids.HoldPoint))
        .Select(l => new WaitingOn(RuleBook.Ids.ReleaseOrder, $"{q.NameOf(l.After)} is not released.", q.Foremen, About: l.After));

    /// <summary>Who may release a hold: position, qualification, and not for their own work.</summary>
    public static ImmutableArray<string> MayRelease(TaskQuestion q, HoldPoint hold)
    {
        var barred = OwnWork(q, hold.Id);
        return
        [
            .. q.Shop.People.Values.Where(p => !p.Left && (p.Position >= hold.ReleasedBy || p.Position == Position.Owner) && p.IsQualified(hold.Qualification, q.Now) && !barred.Contains(p.Id))
                .Select(p => p.Id),
        ];
    }

    /// <summary>Everybody on the tasks directly before a hold, and whoever took their readings.</summary>
    private static ImmutableHashSet<string> OwnWork(TaskQuestion q, string hold) =>
        [.. q.Index.LinksInto(hold).Where(l => q.Car.Tasks.ContainsKey(l.After)).SelectMany(l => Finishing.OwnWork(q.Car, l.After))];

    /// <summary>A hold point looked at as a task without length, so that the same rules of order judge it.</summary>
    public static TaskQuestion Question(ShopState shop, CarBoard car, HoldPoint hold, DateTimeOffset now, RuleBook rules) =>
        new(shop, car, new() { Id = hold.Id, Name = hold.Name, Stage = hold.Stage, Estimate = new(0, 0, 0), TakesAgain = hold.TakesAgain }, now, rules, Places.ShopHours.Of(shop));

    internal static void LetThrough(Ask ask, LetThrough command)
    {
        if (ask.Car(command.Car) is not { } car) return;
        var index = PlanIndex.Of(car.Plan);
        if (index.Task(command.Task) is not { } task) ask.Bad("task", $"{car.Name} has no task '{command.Task}'.");
        else if (BarredFor(ask, car, command.Hold, task) is { } barred) MayLet(ask, barred);
        if (string.IsNullOrWhiteSpace(command.Why)) ask.Bad("why", "Say why this one task may pass.");
        if (ask.Reasons.Count == 0) ask.Facts.Add(new TaskLetThrough(command.Hold, command.Task, command.Why.Trim()) { Car = car.Id });
    }

    private static void MayLet(Ask ask, ImmutableHashSet<string> barred)
    {
        if (barred.Contains(ask.Actor)) ask.Refuse(RuleBook.Ids.OwnRelease, "Nobody lets work through a hold on their own work.", about: "actor");
    }

    /// <summary>Whose own work the named hold is about, or nothing (and a reason) when there is no such hold.</summary>
    private static ImmutableHashSet<string>? BarredFor(Ask ask, CarBoard car, string hold, PlanTask task)
    {
        var q = new TaskQuestion(ask.Shop, car, task, ask.Now, ask.Rules, ask.Hours);
        if (q.Index.Hold(hold) is not null) return OwnWork(q, hold);
        if (ask.Shop.Stops.TryGetValue(hold, out var stop)) return StopDecisions.OwnWork(ask.Shop, stop);
        if (hold.Split('/') is [var of, var reading] && q.Index.Task(of)?.Readings.Any(r => r.Id == reading) == true) return Finishing.OwnWork(car, of);
        ask.Bad("hold", $"There is no hold point, stop or reading '{hold}'.");
        return null;
    }
}

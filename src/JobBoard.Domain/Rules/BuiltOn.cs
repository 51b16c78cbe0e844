using JobBoard.Domain.Boards;
using JobBoard.Domain.Entries;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Rules;

/// <summary>
/// Whether something was built on a command of the last minute: what was done since is looked at again as if that
/// command had not been, and whatever would not have been allowed was built on it.
/// </summary>
internal static class BuiltOn
{
    /// <summary>What stands against taking the command at <paramref name="at"/> of <see cref="ShopState.Recent"/> back.</summary>
    public static IEnumerable<string> Find(Ask ask, int at)
    {
        var state = ask.Shop.Recent[at].Before;
        foreach (var since in ask.Shop.Recent.Skip(at + 1))
        {
            foreach (var entry in since.Entries)
            {
                foreach (var words in Against(ask, state, entry).Concat(NotLapsed(ask, state, entry, since))) yield return words;
                state = Folding.Fold(state, entry);
            }
        }
    }

    /// <summary>Evidence that comes back with the command gone, and would have lapsed by what was disturbed since.</summary>
    private static IEnumerable<string> NotLapsed(Ask ask, ShopState shop, Entry entry, RecentCommand since)
    {
        var (aspects, task) = entry.Fact switch
        {
            TaskStarted f => (f.Disturbs, f.Task),
            ItemChanged f => (f.Disturbs, (string?)null),
            _ => ([], null),
        };
        if (aspects.IsDefaultOrEmpty || !ask.Has(RuleBook.Ids.Lapse) || !shop.Cars.TryGetValue(entry.Stream, out var car)) return [];
        var then = new Ask(shop, ask.Envelope with { Actor = entry.Actor, OccurredAt = entry.OccurredAt }, entry.RecordedAt, ask.Rules);
        var said = since.Entries.Select(e => e.Fact).OfType<EvidenceLapsed>().Select(f => (f.Car, f.Kind, f.Id)).ToHashSet();
        return Lapsing.OfDisturbance(then, car, aspects, task).OfType<EvidenceLapsed>()
            .Where(f => !said.Contains((f.Car, f.Kind, f.Id)))
            .Select(f => $"{PlanIndex.Of(car.Plan).NameOf(f.Id.Split('/')[0])} would have lapsed by it.");
    }

    private static IEnumerable<string> Against(Ask ask, ShopState shop, Entry entry)
    {
        if (!shop.People.TryGetValue(entry.Actor, out var person)) return [$"{{{entry.Actor}}} has done something since."];
        return entry.Fact switch
        {
            CarTakenIn f => Missing(shop, f.Place),
            CarFact f when !shop.Cars.ContainsKey(f.Car) => [$"Something was done on {f.Car} since."],
            CarMoved f => Missing(shop, f.Place),
            TaskFact f when shop.Cars[f.Car].Tasks.ContainsKey(f.Task) => OfTask(ask, shop, entry, f, person),
            HoldReleased f => OfHold(ask, shop, entry, f, person),
            _ => [],
        };
    }

    private static IEnumerable<string> Missing(ShopState shop, string? place) =>
        place is null || shop.Places.ContainsKey(place) ? [] : [$"A car was put in {place} since."];

    private static IEnumerable<string> OfTask(Ask ask, ShopState shop, Entry entry, TaskFact fact, Person person)
    {
        var car = shop.Cars[fact.Car];
        var q = new TaskQuestion(shop, car, PlanIndex.Of(car.Plan).Task(fact.Task)!, entry.RecordedAt, ask.Rules, ShopHours.Of(shop));
        var against = fact switch
        {
            TaskStarted f => StartCheck.Of(q, new(f.Crew, f.Place)),
            CrewJoined f => Work.Crewing.Lacks(shop, car, q.Task, q.State.Crew.Add(f.Member), entry.RecordedAt, ask.Rules)
                .Where(w => w.About == f.Member.Person).Concat(HoldRules.Stops(q, q.State.Place ?? car.Place)),
            TaskSignedOff => Finishing.Missing(q),
            SecondChecked when !Finishing.MayCheck(q, person) => [new(RuleBook.Ids.OwnCheck, "It was checked a second time.")],
            _ => [],
        };
        return against.Select(w => $"{q.Task.Name}: {w.Words}");
    }

    private static IEnumerable<string> OfHold(Ask ask, ShopState shop, Entry entry, HoldReleased fact, Person person)
    {
        var car = shop.Cars[fact.Car];
        var hold = PlanIndex.Of(car.Plan).Hold(fact.Hold)!;
        return Releasing.Against(shop, car, hold, person, entry.RecordedAt, ask.Rules).Select(w => $"{hold.Name}: {w.Words}");
    }
}

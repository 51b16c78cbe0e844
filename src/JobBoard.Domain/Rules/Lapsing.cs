using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>What lapses when aspects are disturbed, and what is taken again.</summary>
internal static class Lapsing
{
    /// <summary>Evidence of other nodes on these aspects that is older than the disturbance.</summary>
    public static IEnumerable<Fact> OfDisturbance(Ask ask, CarBoard car, ImmutableArray<string> aspects, string? task)
    {
        var index = PlanIndex.Of(car.Plan);
        var done = new HashSet<string>(StringComparer.Ordinal);
        foreach (var aspect in aspects)
        {
            foreach (var (node, reading) in index.EvidenceOn(aspect))
            {
                if (node == task) continue;
                var lapse = new Lapse(aspect, task, ask.Actor, ask.At, task is not null && index.LapsesByPlan(node, task));
                if (reading is not null && done.Add(node + "/" + reading) && HasStanding(car, node + "/" + reading, ask.At))
                    yield return new EvidenceLapsed(EvidenceKind.Reading, node + "/" + reading, lapse) { Car = car.Id };
                if (done.Add(node) && OfWord(car, node, lapse) is { } fact) yield return fact;
            }
        }
    }

    /// <summary>The readings of a task's earlier life, when it is begun anew.</summary>
    public static IEnumerable<Fact> OwnReadings(Ask ask, TaskQuestion q) =>
        q.State.StartedAt is null
            ? []
            : q.Task.Readings.Where(r => HasStanding(q.Car, q.Task.Id + "/" + r.Id, ask.At))
                .Select(r => new EvidenceLapsed(EvidenceKind.Reading, q.Task.Id + "/" + r.Id, new("", q.Task.Id, ask.Actor, ask.At, ByPlan: false)) { Car = q.Car.Id });

    /// <summary>What makes a reading lapse that comes late from before its task was begun anew, or nothing.</summary>
    public static Lapse? OfEarlierLife(Ask ask, TaskQuestion q) =>
        q.State.AgainSince is { } since && since > ask.At ? new("", q.Task.Id, q.State.Crew.FirstOrDefault()?.Person ?? ask.Actor, since, ByPlan: false) : null;

    private static bool HasStanding(CarBoard car, string key, DateTimeOffset at) =>
        car.Readings.TryGetValue(key, out var all) && all.Any(r => r.LapsedBy is null && r.At < at);

    /// <summary>A sign-off or release on the node that stands and is older.</summary>
    private static EvidenceLapsed? OfWord(CarBoard car, string node, Lapse lapse)
    {
        if (car.Tasks.TryGetValue(node, out var task))
        {
            return task is { Status: WorkStatus.SignedOff or WorkStatus.ForSecondCheck, SignedOff: { } word } && Older(car, word, lapse)
                ? new EvidenceLapsed(EvidenceKind.SignOff, node, lapse) { Car = car.Id }
                : null;
        }

        return car.Holds.TryGetValue(node, out var hold) && hold.Released is { } release && Older(car, release, lapse)
            ? new EvidenceLapsed(EvidenceKind.Release, node, lapse) { Car = car.Id }
            : null;
    }

    /// <summary>Stands and is older; a lapse that was taken again or that the plan foresaw can lapse anew.</summary>
    private static bool Older(CarBoard car, SignOff word, Lapse lapse) => StandsSince(car, word) < lapse.At && word.LapsedBy is not { Holds: true } && word.LapsedBy?.At != lapse.At
        && (word.LapsedBy is null || word.LapsedBy.TakenAgainBy is not null || !lapse.ByPlan);

    /// <summary>When it was given, or last taken again by another node.</summary>
    private static DateTimeOffset StandsSince(CarBoard car, SignOff word)
    {
        if (word.LapsedBy?.TakenAgainBy is not { } by) return word.At;
        var again = car.Tasks.TryGetValue(by, out var task) ? task.SignedOff : car.Holds.GetValueOrDefault(by)?.Released;
        return again?.At > word.At ? again.At : word.At;
    }

    /// <summary>
    /// What made evidence of a task that comes late lapse before it was written down, or nothing: the first disturbance that
    /// the plan does not foresee, else the first.
    /// </summary>
    public static Lapse? Since(Ask ask, TaskQuestion q, IEnumerable<Aspect> standsOn)
    {
        var since = from aspect in standsOn
                    from d in q.Car.Disturbed.GetValueOrDefault(aspect.Key, [])
                    where d.Task != q.Task.Id && d.At > ask.At
                    let foreseen = d.Task is { } task && q.Index.LapsesByPlan(q.Task.Id, task)
                    orderby foreseen, d.At
                    select new Lapse(aspect.Key, d.Task, d.By, d.At, foreseen);
        return since.FirstOrDefault();
    }

    /// <summary>Nodes whose lapsed word counts again because this one takes it again.</summary>
    public static IEnumerable<Fact> TakenAgain(Ask ask, CarBoard car, string by, ImmutableArray<string> nodes)
    {
        foreach (var node in nodes)
        {
            var word = car.Tasks.TryGetValue(node, out var task) ? (task.Lapsed ? task.SignedOff : null) : car.Holds.GetValueOrDefault(node)?.Released;
            if (word is { LapsedBy: { TakenAgainBy: null } lapse } && lapse.At <= ask.At) yield return new EvidenceTakenAgain(node, by) { Car = car.Id };
        }
    }
}

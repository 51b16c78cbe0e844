using JobBoard.Domain.Boards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>The three holds: hold points, stops, and readings out or too close.</summary>
internal static class HoldRules
{
    public static IEnumerable<WaitingOn> Of(TaskQuestion q, string? place) => HoldPoints(q).Concat(Calling.Of(q)).Concat(Stops(q, place)).Concat(ReadingHolds(q));

    /// <summary>Hold points before the task that are not released, or whose release has lapsed.</summary>
    public static IEnumerable<WaitingOn> HoldPoints(TaskQuestion q)
    {
        foreach (var node in q.Index.HoldsBefore(q.Task.Id))
        {
            if (!q.Car.Holds.TryGetValue(node, out var hold) || hold.Counts || q.LetThrough(node)) continue;
            if (hold.Released is { LapsedBy: { } lapse })
            {
                if (q.Has(RuleBook.Ids.Lapsed) && !q.Task.TakesAgain.Contains(node) && !OnTheWayBack(q, node))
                    yield return new(RuleBook.Ids.Lapsed, $"The release of {q.NameOf(node)} has lapsed: {Cause(q, lapse)}.", q.Foremen, About: node);
            }
            else if (q.Has(RuleBook.Ids.HoldPoint) && (IsDirect(q, node) || PassedByOther(q, node)))
            {
                yield return new(RuleBook.Ids.HoldPoint, $"{q.NameOf(node)} is not released.", q.Foremen, About: node);
            }
        }
    }

    private static bool IsDirect(TaskQuestion q, string hold)
    {
        foreach (var link in q.Index.LinksInto(q.Task.Id))
        {
            if (link.After == hold) return true;
        }

        return false;
    }

    /// <summary>A task that comes before the hold in the plan and was itself lapsed is done again before the release can be.</summary>
    private static bool OnTheWayBack(TaskQuestion q, string hold) => q.Index.IsAfter(hold, q.Task.Id);

    private static bool PassedByOther(TaskQuestion q, string hold) =>
        !q.Car.LetThrough.IsEmpty && q.Car.LetThrough.Keys.Any(k => k.StartsWith(hold + "|", StringComparison.Ordinal));

    /// <summary>Stops whose scope holds the task, done at a place.</summary>
    public static IEnumerable<WaitingOn> Stops(TaskQuestion q, string? place)
    {
        if (q.Shop.Stops.IsEmpty || !q.Has(RuleBook.Ids.Stop)) yield break;
        foreach (var stop in q.Shop.Stops.Values)
        {
            if (Covers(stop, q.Car, q.Task.Id, place) && !q.LetThrough(stop.Id))
                yield return new(RuleBook.Ids.Stop, $"Stop by {{{stop.RaisedBy}}}: {stop.Why}", q.Foremen, About: stop.Id);
        }
    }

    /// <summary>Whether a stop's scope holds a task.</summary>
    public static bool Covers(Stop stop, CarBoard car, string task, string? place) => stop.Scope switch
    {
        StopScope.Shop => true,
        StopScope.Place => place is not null && stop.Place == place,
        StopScope.Car => stop.Car == car.Id,
        _ => stop.Car == car.Id && stop.Task == task,
    };

    /// <summary>Readings of earlier tasks that hold what rests on them.</summary>
    public static IEnumerable<WaitingOn> ReadingHolds(TaskQuestion q)
    {
        if (!q.Has(RuleBook.Ids.ReadingHold)) yield break;
        foreach (var (task, need) in Going.On(q.Car).NotInLimits.Where(r => q.Index.IsAfter(q.Task.Id, r.Task.Id)))
        {
            var key = task.Id + "/" + need.Id;
            if (Holding(q.Car, task, need) is { } reading && !q.LetThrough(key))
                yield return new(RuleBook.Ids.ReadingHold, $"{need.Name} ({task.Name}) is {Words(reading.Verdict)}: {reading.Text} {reading.Unit}.", q.Foremen, About: key);
        }
    }

    /// <summary>
    /// The latest reading, when it holds what rests on it: until taken again in limits or released, so that a
    /// disturbance that makes it lapse does not end its hold.
    /// </summary>
    public static Reading? Holding(CarBoard car, PlanTask task, ReadingNeed need) =>
        LastTaken(car, task.Id + "/" + need.Id) is { } r && r.Released is null && (r.Verdict == Verdict.Out || (r.Verdict == Verdict.TooCloseToCall && need.HoldsWhenTooClose)) ? r : null;

    /// <summary>The latest reading by the time it was taken, lapsed or not.</summary>
    public static Reading? LastTaken(CarBoard car, string key) =>
        car.Readings.TryGetValue(key, out var all) ? all.OrderBy(r => r.At).ThenBy(r => r.Seq).LastOrDefault() : null;

    /// <summary>The latest reading by the time it was taken that has not lapsed.</summary>
    public static Reading? Latest(CarBoard car, string task, string reading) =>
        car.Readings.TryGetValue(task + "/" + reading, out var all) ? all.Where(r => r.LapsedBy is null).OrderBy(r => r.At).ThenBy(r => r.Seq).LastOrDefault() : null;

    /// <summary>The words for a verdict.</summary>
    public static string Words(Verdict verdict) => verdict switch
    {
        Verdict.InLimits => "in limits",
        Verdict.Out => "out",
        _ => "too close to call",
    };

    /// <summary>What made evidence lapse, in words.</summary>
    public static string Cause(TaskQuestion q, Lapse lapse)
    {
        var aspect = lapse.Aspect.Split('/');
        var item = q.Index.Item(aspect[0])?.Name ?? aspect[0];
        var what = lapse.Task is null ? "changed outside the plan" : $"disturbed by {q.NameOf(lapse.Task)}";
        return $"{item}{(aspect.Length > 1 ? " (" + aspect[1] + ")" : "")} {what}, {{{lapse.By}}}";
    }
}

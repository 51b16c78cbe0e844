using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>One thing that stands between a task and its start, by the name the rule has in the program's list.</summary>
/// <param name="Kind">The rule.</param>
/// <param name="About">What it is about.</param>
/// <param name="Sure">False for what only repeats another: it may be named too, but need not be.</param>
public readonly record struct Wait(string Kind, string About, bool Sure = true);

/// <summary>Everything a task waits on, asked of the picture question by question.</summary>
public sealed partial class Waits(Picture shop, CarPicture car, string id, DateTimeOffset now)
{
    private PlanTask Plan => car.Task(id);

    private TaskPicture Task => car.Tasks[id];

    /// <summary>Everything, for these people at this place.</summary>
    public List<Wait> All(IReadOnlyList<CrewMember> crew, string? place) =>
    [
        .. State(), .. Before(), .. Call(), .. Stops(PlaceOf(place)), .. Conditions(), .. Parts(), .. TakesAway(), .. Room(place), .. GearTaken(),
        .. Apart(place), .. People(crew), .. HowLeft(crew),
    ];

    /// <summary>What has to have happened before: also asked of hold points.</summary>
    public List<Wait> Before() => [.. Links(), .. OpenAgain(), .. HoldPoints(), .. ReadingHolds(), .. Lapsed(), .. Questions()];

    /// <summary>A task that is in hand, done or waits for its second check is not started.</summary>
    private IEnumerable<Wait> State()
    {
        if (Task.InHand || (Task.Status is WorkStatus.SignedOff or WorkStatus.ForSecondCheck && !Task.Lapsed)) yield return new("task-state", id);
    }

    private IEnumerable<Wait> Links()
    {
        foreach (var link in car.Plan.Links.Where(l => l.Task == id && car.Tasks.ContainsKey(l.After)))
        {
            var early = car.Tasks[link.After];
            DateTimeOffset? since = link.Kind switch
            {
                LinkKind.FinishStart => early.Status == WorkStatus.SignedOff || Led(early, -link.Lag) ? early.EndedAt ?? now : null,
                LinkKind.StartStart => early.StartedAt,
                _ => DateTimeOffset.MinValue,
            };
            if (since is null) yield return new("link", link.After);
            else if (link.Kind is LinkKind.FinishStart or LinkKind.StartStart && !RunOut(since.Value, link)) yield return new("lag", link.After);
        }
    }

    /// <summary>Whether a link lets its later task be signed off.</summary>
    public bool Finishes(Link link)
    {
        var early = car.Tasks[link.After];
        var since = link.Kind == LinkKind.FinishFinish ? (early.Status == WorkStatus.SignedOff ? early.EndedAt : null) : early.StartedAt;
        return since is { } from && RunOut(from, link);
    }

    private bool RunOut(DateTimeOffset from, Link link) =>
        link.Lag <= 0 || (link.Clock == LagClock.Elapsed ? from.AddMinutes(link.Lag) : shop.Calendar.After(from, link.Lag)) <= now;

    /// <summary>A lead is met while the earlier one is in hand and has no more left than the lead.</summary>
    private bool Led(TaskPicture early, int lead) => lead > 0 && early.InHand && Remaining(early) <= lead;

    private int Remaining(TaskPicture task)
    {
        var estimate = task.Revised ?? car.Task(task.Id).Estimate;
        var done = task.Done + (task.FullSince is { } since ? (int)shop.Calendar.Between(since, now).TotalMinutes : 0);
        return done < estimate.Usual ? estimate.Usual - done : done < estimate.High ? estimate.High - done : 5;
    }

    /// <summary>What was done once before this and is open again.</summary>
    private IEnumerable<Wait> OpenAgain() =>
        car.Before(id).Where(n => car.Tasks.TryGetValue(n, out var t) && t.OpenAgain && t.Status != WorkStatus.SignedOff).Select(n => new Wait("link", n));

    private bool Through(string hold) => car.LetThrough.Contains((hold, id));

    /// <summary>
    /// Hold points before this that are not released. One that lies behind undone work need not be named: the work is.
    /// </summary>
    private IEnumerable<Wait> HoldPoints()
    {
        var near = Order.BeforeOver(car.Plan, id, n => car.Tasks.TryGetValue(n, out var t) ? t.Status == WorkStatus.SignedOff : car.Holds[n].Released is not null);
        foreach (var node in car.Before(id))
            if (car.Holds.TryGetValue(node, out var hold) && hold.Released is null && !Through(node)) yield return new("hold-point", node, near.Contains(node));
    }

    /// <summary>The key check just before this was released on a call that no longer stands.</summary>
    private IEnumerable<Wait> Call() => car.Plan.Links
        .Where(l => l.Task == id && car.Holds.TryGetValue(l.After, out var hold) && hold.Released is not null && car.Hold(l.After).KeyCheck && !Through(l.After) && !shop.IsCalled(car, l.After))
        .Select(l => new Wait("call", l.After));

    private IEnumerable<Wait> Stops(string? place)
    {
        foreach (var (stop, what) in shop.Stops)
            if (what.Covers(car.Id, id, place) && !Through(stop)) yield return new("stop", stop);
    }

    /// <summary>The last of each reading before this task that is out, or too close where that holds.</summary>
    private IEnumerable<Wait> ReadingHolds()
    {
        foreach (var before in car.Before(id).Where(car.Tasks.ContainsKey))
            foreach (var need in car.Task(before).Readings)
                if (Held(need, car.Last(before + "/" + need.Id)) && !Through(before + "/" + need.Id))
                    yield return new("reading-hold", before + "/" + need.Id);
    }

    public static bool Held(ReadingNeed need, ReadingPicture? last) =>
        last is { Released: false } && (last.Verdict == Verdict.Out || (last.Verdict == Verdict.TooCloseToCall && need.HoldsWhenTooClose));

    private IEnumerable<Wait> Lapsed()
    {
        var takes = car.Tasks.ContainsKey(id) ? Plan.TakesAgain : car.Hold(id).TakesAgain;
        foreach (var before in car.Before(id).Where(n => !takes.Contains(n)))
            if (Picture.OfNode(car, before).Any(w => w.Holds) && !Through(before)) yield return new("lapsed", before);
    }

    private IEnumerable<Wait> Questions() => car.Before(id).Where(car.Questions.Contains).Select(n => new Wait("again-or-not", n));

    /// <summary>Conditions needed, and those that what it changes has to be in.</summary>
    private IEnumerable<Wait> Conditions() =>
        Needs().Concat(Plan.Changes.SelectMany(c => Condition(c.Item, Task.StartedAt is null ? [c.From] : c.Path)));

    private IEnumerable<Wait> Needs() => Plan.Needs.SelectMany(n => Condition(n.Item, n.Conditions));

    private IEnumerable<Wait> Condition(string item, IEnumerable<string> allowed)
    {
        if (item.StartsWith("shop/", StringComparison.Ordinal))
        {
            if (!allowed.Contains(shop.Items[item[5..]].Condition)) yield return new("condition", item);
            yield break;
        }

        if (car.Tasks.Values.Any(t => t.InHand && t.Id != id && car.Task(t.Id).Changes.Any(c => c.Item == item))) yield return new("in-work", item);
        if (!allowed.Contains(car.Items[item])) yield return new("condition", item);
    }

    private IEnumerable<Wait> Parts() =>
        Plan.Parts.Where(p => car.Parts[p] != PartStatus.CheckedRight).Select(p => new Wait("part-right", p));
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>Links with their lags, and what is open again before the task.</summary>
internal static class OrderRules
{
    public static IEnumerable<WaitingOn> Of(TaskQuestion q)
    {
        foreach (var link in q.Index.LinksInto(q.Task.Id))
        {
            if (OfLink(q, link) is { } waiting) yield return waiting;
        }

        foreach (var waiting in Upstream(q)) yield return waiting;
    }

    /// <summary>Whether one link into the start is met.</summary>
    private static WaitingOn? OfLink(TaskQuestion q, Link link)
    {
        if (link.Kind is LinkKind.FinishFinish or LinkKind.StartFinish || !q.Car.Tasks.TryGetValue(link.After, out var before)) return null;
        return link.Kind == LinkKind.StartStart
            ? Since(q, link, before, before.StartedAt, "is not started")
            : AfterFinish(q, link, before);
    }

    private static WaitingOn? AfterFinish(TaskQuestion q, Link link, TaskState before)
    {
        if (link.Lag < 0 && before.Status == WorkStatus.InHand)
        {
            var task = q.Index.Task(link.After)!;
            var left = Remaining.Minutes(task, before, q.Hours, q.Now);
            if (left <= -link.Lag) return null;
            return q.Has(RuleBook.Ids.Link)
                ? new(RuleBook.Ids.Link, $"{task.Name} has {left} min left; this may start {-link.Lag} min before its end.", Crew(before), q.Hours.AddWorking(q.Now, left + link.Lag), link.After)
                : null;
        }

        return Since(q, link, before, before.Status == WorkStatus.SignedOff ? before.WorkEndedAt : null, Undone(before));
    }

    private static WaitingOn? Since(TaskQuestion q, Link link, TaskState before, DateTimeOffset? since, string not)
    {
        if (since is null)
        {
            var who = before.Crew.IsEmpty ? "" : ", " + string.Join(", ", before.Crew.Select(m => "{" + m.Person + "}"));
            return q.Has(RuleBook.Ids.Link) ? new(RuleBook.Ids.Link, $"{q.NameOf(link.After)} {not}{who}.", Crew(before), About: link.After) : null;
        }

        if (link.Lag <= 0 || !q.Has(RuleBook.Ids.Lag)) return null;
        var until = link.Clock == LagClock.Elapsed ? since.Value.AddMinutes(link.Lag) : q.Hours.AddWorking(since.Value, link.Lag);
        return until > q.Now ? new(RuleBook.Ids.Lag, $"{link.Lag} min after {q.NameOf(link.After)} are not over.", [], until, link.After) : null;
    }

    private static string Undone(TaskState before) => before.Status switch
    {
        WorkStatus.InHand => "is in hand",
        WorkStatus.PartDone => "is left part-done",
        WorkStatus.ForSecondCheck => "waits for its second check",
        WorkStatus.Undone => "has to be done again",
        _ => "is not done",
    };

    private static ImmutableArray<string> Crew(TaskState state) => [.. state.Crew.Select(m => m.Person)];

    /// <summary>Tasks further up that were done once and are open again, and open questions.</summary>
    private static IEnumerable<WaitingOn> Upstream(TaskQuestion q)
    {
        var unsettled = Going.On(q.Car).Unsettled;
        if (unsettled.IsEmpty) yield break;
        var direct = q.Index.LinksInto(q.Task.Id).Where(l => l.Kind == LinkKind.FinishStart && l.Lag >= 0).Select(l => l.After).ToHashSet(StringComparer.Ordinal);
        foreach (var before in unsettled.Where(t => q.Index.IsAfter(q.Task.Id, t.Id)))
        {
            var node = before.Id;
            if (q.Has(RuleBook.Ids.Link) && before.Reopened && before.Status != WorkStatus.SignedOff && !direct.Contains(node))
                yield return new(RuleBook.Ids.Link, $"{q.NameOf(node)} {(before.Status == WorkStatus.Undone ? "has to be done again" : "is being done again")}.", Crew(before), About: node);
            if (q.Has(RuleBook.Ids.Lapsed) && before is { Status: WorkStatus.SignedOff or WorkStatus.ForSecondCheck, SignedOff.LapsedBy: { Holds: true } lapse } && !q.Task.TakesAgain.Contains(node))
                yield return new(RuleBook.Ids.Lapsed, $"{q.NameOf(node)} has lapsed: {HoldRules.Cause(q, lapse)}.", [], About: node);
            if (q.Has(RuleBook.Ids.AgainOrNot) && q.Car.Questions.TryGetValue(node, out var undone))
                yield return new(RuleBook.Ids.AgainOrNot, $"{q.NameOf(node)}: again or not, after {q.NameOf(undone)} was undone?", q.Foremen, About: node);
        }
    }
}

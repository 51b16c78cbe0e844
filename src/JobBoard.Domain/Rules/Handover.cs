using JobBoard.Domain.Hazards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>What handover waits for: nothing off, temporary, held, lapsed or missing.</summary>
internal static class Handover
{
    public static IEnumerable<WaitingOn> Missing(TaskQuestion q) =>
        Items(q).Concat(Evidence(q)).Concat(Open(q));

    private static IEnumerable<WaitingOn> Items(TaskQuestion q)
    {
        foreach (var item in q.Car.Plan.Items)
        {
            var state = q.Car.Items[item.Id];
            if (state.Condition != item.AsForTheRoad)
                yield return new(RuleBook.Ids.Handover, $"{item.Name} is {state.Condition}; for the road it is {item.AsForTheRoad}.", [state.By], About: item.Id);
        }

        foreach (var danger in q.Car.Standing)
            yield return new(RuleBook.Ids.Handover, $"{q.Shop.Hazards.GetValueOrDefault(danger.Hazard)?.Name ?? danger.Hazard} still stands.", [danger.By], About: danger.Id);
    }

    private static IEnumerable<WaitingOn> Evidence(TaskQuestion q)
    {
        foreach (var task in q.Car.Plan.Tasks)
        {
            var state = q.Car.Tasks[task.Id];
            if (state.Lapsed) yield return new(RuleBook.Ids.Handover, $"{task.Name} has lapsed and is not taken again.", About: task.Id);
            if (state.Status != WorkStatus.SignedOff && !q.Index.IsAfter(task.Id, q.Task.Id)) yield return new(RuleBook.Ids.Handover, $"{task.Name} is not finished.", About: task.Id);
            foreach (var need in task.Readings)
            {
                if (HoldRules.Holding(q.Car, task, need) is not null) yield return new(RuleBook.Ids.Handover, $"{need.Name} ({task.Name}) is not in limits.", About: task.Id + "/" + need.Id);
            }
        }

        foreach (var hold in q.Car.Holds.Values)
        {
            if (hold.Released is { LapsedBy.TakenAgainBy: null } && hold.Id != q.Task.Id) yield return new(RuleBook.Ids.Handover, $"The release of {q.NameOf(hold.Id)} has lapsed.", q.Foremen, About: hold.Id);
            else if (hold.Released is null && hold.Id != q.Task.Id && !q.Index.IsAfter(hold.Id, q.Task.Id)) yield return new(RuleBook.Ids.Handover, $"{q.NameOf(hold.Id)} is not released.", q.Foremen, About: hold.Id);
        }
    }

    private static IEnumerable<WaitingOn> Open(TaskQuestion q)
    {
        foreach (var snag in q.Car.Snags.Values.Where(s => s.DoneAt is null))
            yield return new(RuleBook.Ids.Handover, $"Snag: {snag.Words}", [snag.RaisedBy], About: snag.Id);
        foreach (var question in q.Car.Questions.Keys)
            yield return new(RuleBook.Ids.Handover, $"{q.NameOf(question)}: again or not?", q.Foremen, About: question);
        foreach (var stop in q.Shop.Stops.Values.Where(s => s.Car == q.Car.Id || s.Scope == StopScope.Shop || (s.Scope == StopScope.Place && s.Place == q.Car.Place)))
            yield return new(RuleBook.Ids.Handover, $"Stop by {{{stop.RaisedBy}}}: {stop.Why}", q.Foremen, About: stop.Id);
    }
}

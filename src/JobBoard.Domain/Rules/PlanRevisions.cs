using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>
/// A running plan that was gone over as a whole: made whole or not at all, refused where somebody changed the plan since, where it
/// alters what was begun, and for the faults it adds.
/// </summary>
internal static class PlanRevisions
{
    private const int MostTold = 8;

    public static void Revise(Ask ask, CarBoard car, RevisePlan c)
    {
        if (string.IsNullOrWhiteSpace(c.Why)) ask.Bad("why", "Say why the plan changes.");
        CheckFresh(ask, car, c.Of);
        var differs = PlanDifference.Between(car.Plan, c.Plan);
        if (differs.IsNothing) ask.Bad("plan", "Nothing is changed.");
        CheckBegun(ask, car, c.Plan, differs);
        CheckItems(ask, car, c.Plan, differs);
        CheckHolds(ask, car, c.Plan, differs.LinksAdded);
        foreach (var id in differs.PartsTakenOut.Where(p => car.Parts[p].Status != Items.PartStatus.NotOrdered))
            ask.Refuse(RuleBook.Ids.TaskState, $"{car.Plan.Parts.First(p => p.Id == id).Name} was ordered: it stays in the plan.", about: id);
        if (ask.Has(RuleBook.Ids.PlanFault))
            ask.Reasons.AddRange(PlanFaults.Added(car.Plan, c.Plan, ShopFacts.Of(ask.Shop, ask.Now)).Select(PlanChanges.Reason));
        if (ask.Reasons.Count == 0) ask.Facts.Add(new PlanRevised(c.Plan, differs, c.Why.Trim()) { Car = car.Id });
    }

    /// <summary>A template may still have faults, which a car with it is refused for; what is in it can be told apart.</summary>
    public static void Save(Ask ask, Plan plan)
    {
        foreach (var fault in PlanFaults.Find(plan, ShopFacts.Of(ask.Shop, ask.Now)).Where(f => f.Code is "too-many" or "id-form" or "id-twice"))
            ask.Bad("plan." + fault.At, fault.Words);
        if (string.IsNullOrWhiteSpace(plan.Name)) ask.Bad("plan.name", "Give the template a name.");
        ask.Facts.Add(new TemplateSaved(plan));
    }

    private static void CheckFresh(Ask ask, CarBoard car, long of)
    {
        if (of == car.PlanAt) return;
        var since = car.PlanSteps.FindAll(s => s.Seq > of);
        foreach (var step in since)
        {
            var more = step.Words.Length > MostTold ? $" And {step.Words.Length - MostTold} more." : "";
            ask.Refuse(RuleBook.Ids.Stale, $"The plan was changed since you looked, by {{{step.By}}} ({step.Why}): {string.Join(" ", step.Words.Take(MostTold))}{more}", [step.By], "plan");
        }

        if (since.IsEmpty) ask.Refuse(RuleBook.Ids.Stale, "The plan is not the one you looked at: something was taken back since.", about: "plan");
    }

    /// <summary>Work that was begun and hold points that were released stay in the plan as they are; links to them may change.</summary>
    private static void CheckBegun(Ask ask, CarBoard car, Plan plan, PlanDifference differs)
    {
        foreach (var id in differs.NodesAltered.Concat(differs.NodesTakenOut))
        {
            var verb = PlanIndex.Of(plan).IsNode(id) ? "stays as it is" : "stays in the plan";
            if (car.Tasks.TryGetValue(id, out var task))
            {
                var name = PlanIndex.Of(car.Plan).NameOf(id);
                if (IsBegun(car, task)) ask.Refuse(RuleBook.Ids.TaskState, $"{name} was begun: it {verb}.", task.WorkedBy.IsEmpty ? default : [.. task.WorkedBy], id);
                else if (Stopped(ask, car, id) && !PlanIndex.Of(plan).IsNode(id)) ask.Refuse(RuleBook.Ids.TaskState, $"{name} is under a stop: it {verb} until that is released.", about: id);
            }
            else if (car.Holds.GetValueOrDefault(id)?.Released is { } released)
            {
                ask.Refuse(RuleBook.Ids.TaskState, $"{PlanIndex.Of(car.Plan).NameOf(id)} was released: it {verb}.", [released.By], id);
            }
        }

        foreach (var id in differs.NodesAltered.Where(n => car.Tasks.ContainsKey(n) != (PlanIndex.Of(plan).Task(n) is not null)))
            ask.Bad("plan", $"'{id}' is a task and a hold point by turns: give one of them another id.");
    }

    /// <summary>A hold point that is not released cannot be put before what was begun or released: that has passed it already.</summary>
    public static void CheckHolds(Ask ask, CarBoard car, Plan plan, IEnumerable<Link> added)
    {
        var index = PlanIndex.Of(plan);
        foreach (var link in added.Where(l => index.Hold(l.After) is not null && car.Holds.GetValueOrDefault(l.After) is not { Counts: true }))
        {
            var passed = car.Tasks.TryGetValue(link.Task, out var task) ? IsBegun(car, task) : car.Holds.GetValueOrDefault(link.Task)?.Released is not null;
            if (passed) ask.Refuse(RuleBook.Ids.TaskState, $"{index.NameOf(link.Task)} has passed already: {index.NameOf(link.After)} is not released and cannot be put before it. Put it before what is still to do.", about: link.Task);
        }
    }

    private static void CheckItems(Ask ask, CarBoard car, Plan plan, PlanDifference differs)
    {
        foreach (var id in differs.ItemsAltered)
        {
            var (was, now) = (PlanIndex.Of(car.Plan).Item(id)!, PlanIndex.Of(plan).Item(id)!);
            if (!now.Conditions.Contains(car.Items[id].Condition)) ask.Refuse(RuleBook.Ids.TaskState, $"{was.Name} is {car.Items[id].Condition} now: that stays one of its conditions.", about: id);
            if (now.AtTakeIn != was.AtTakeIn) ask.Refuse(RuleBook.Ids.TaskState, $"{was.Name} came in {was.AtTakeIn}: that stays so.", about: id);
        }

        foreach (var id in differs.ItemsTakenOut)
        {
            var was = PlanIndex.Of(car.Plan).Item(id)!;
            if (car.Items[id].Condition != was.AtTakeIn || Changed(car, id)) ask.Refuse(RuleBook.Ids.TaskState, $"{was.Name} was worked on: it stays in the plan.", about: id);
        }
    }

    private static bool IsBegun(CarBoard car, TaskState task) =>
        task.Status != WorkStatus.NotStarted || car.Readings.Keys.Any(k => k.StartsWith(task.Id + "/", StringComparison.Ordinal));

    private static bool Changed(CarBoard car, string item) =>
        car.HangsIn.ContainsKey(item) || car.Items[item].Task is not null || car.Disturbed.Keys.Any(k => k.StartsWith(item + "/", StringComparison.Ordinal));

    private static bool Stopped(Ask ask, CarBoard car, string task) =>
        ask.Shop.Stops.Values.Any(s => s.Scope == StopScope.Task && s.Car == car.Id && s.Task == task);
}

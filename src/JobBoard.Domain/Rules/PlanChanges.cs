using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>Changes to a running plan: whole or not at all, refused for faults they add.</summary>
internal static class PlanChanges
{
    public static void Change(Ask ask, CarBoard car, ChangePlan c)
    {
        if (c.Add.IsEmpty && c.TakeOut.IsEmpty && c.AddLinks.IsEmpty && c.TakeOutLinks.IsEmpty) ask.Bad("change", "Nothing is changed.");
        if (string.IsNullOrWhiteSpace(c.Why)) ask.Bad("why", "Say why the plan changes.");
        foreach (var task in c.Add.Where(t => PlanIndex.Of(car.Plan).IsNode(t.Id))) ask.Bad("add", $"There is '{task.Id}' in the plan already.");
        foreach (var id in c.TakeOut) CheckTakeOut(ask, car, id);
        foreach (var link in c.TakeOutLinks.Where(l => !car.Plan.Links.Contains(l))) ask.Bad("links", $"{link.Task} is not after {link.After} by such a link.");
        PlanRevisions.CheckHolds(ask, car, car.Plan, c.AddLinks);
        if (ask.Reasons.Count > 0) return;
        var fact = new PlanChanged(c.Add, c.TakeOut, c.AddLinks, c.TakeOutLinks, c.Why.Trim()) { Car = car.Id };
        if (ask.Has(RuleBook.Ids.PlanFault))
        {
            var added = PlanFaults.Added(car.Plan, fact.ApplyTo(car.Plan), ShopFacts.Of(ask.Shop, ask.Now));
            ask.Reasons.AddRange(added.Select(Reason));
        }

        if (ask.Reasons.Count == 0) ask.Facts.Add(fact);
    }

    private static void CheckTakeOut(Ask ask, CarBoard car, string id)
    {
        if (!car.Tasks.TryGetValue(id, out var state)) ask.Bad("takeOut", $"{car.Name} has no task '{id}'.");
        else if (state.Status != WorkStatus.NotStarted || car.Readings.Keys.Any(k => k.StartsWith(id + "/", StringComparison.Ordinal)))
            ask.Refuse(RuleBook.Ids.TaskState, $"{PlanIndex.Of(car.Plan).Task(id)?.Name} was begun: it stays in the plan.", about: id);
    }

    /// <summary>Every fault of a plan in this shop today, as reasons against it.</summary>
    public static IEnumerable<WaitingOn> Faults(Ask ask, Plan plan) => PlanFaults.Find(plan, ShopFacts.Of(ask.Shop, ask.Now)).Select(Reason);

    /// <summary>A fault as a reason against.</summary>
    public static WaitingOn Reason(PlanFault fault) =>
        new(RuleBook.Ids.PlanFault, $"{fault.Words}{(fault.Repair is null ? "" : " " + fault.Repair)}", About: fault.At);
}

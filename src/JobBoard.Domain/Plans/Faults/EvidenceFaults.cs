using System.Collections.Immutable;

namespace JobBoard.Domain.Plans.Faults;

/// <summary>Evidence that other work disturbs.</summary>
internal static class EvidenceFaults
{
    public static IEnumerable<Found> Order(PlanCheck check) =>
        from d in Disturbances(check)
        where !check.AreOrdered(d.Node, d.By)
        select Found.Linked(
            check,
            d.At,
            $"{check.Say(d.Node)} stands on {Say(check, d.On)}, which {check.Say(d.By)} disturbs, and neither comes after the other.",
            d.Node,
            d.By);

    public static IEnumerable<Found> NotTakenAgain(PlanCheck check) =>
        from d in Disturbances(check)
        where check.Index.IsAfter(d.By, d.Node) && !check.Index.LapsesByPlan(d.Node, d.By)
        let again = Again(check, d.On, d.By)
        select new Found(
            d.At,
            $"{check.Say(d.Node)} stands on {Say(check, d.On)}, {check.Say(d.By)} disturbs it afterwards, and nothing takes it again.",
            $"let {(again is null ? $"a task after {check.Say(d.By)}" : check.Say(again))} take {check.Say(d.Node)} again",
            again is null ? null : new(again, d.Node, TakesAgain: true));

    public static IEnumerable<Found> TakesAgainEarly(PlanCheck check) =>
        from a in check.Tasks.Select(t => (t.Task.Id, t.Task.TakesAgain, t.At)).Concat(check.Holds.Select(h => (h.Hold.Id, h.Hold.TakesAgain, h.At)))
        from again in PlanCheck.Each(a.TakesAgain, a.At + ".takesAgain")
        where check.Index.IsNode(again.Value) && !check.Index.IsAfter(a.Id, again.Value)
        select again.Value == a.Id
            ? new Found(again.At, $"{check.Say(a.Id)} takes itself again.", "take it out")
            : check.Index.IsAfter(again.Value, a.Id)
                ? new Found(again.At, $"{check.Say(a.Id)} takes {check.Say(again.Value)} again without coming after it.")
                : Found.Linked(check, again.At, $"{check.Say(a.Id)} takes {check.Say(again.Value)} again without coming after it.", a.Id, again.Value);

    /// <summary>Each node with each other task that disturbs what it stands on, once.</summary>
    private static IEnumerable<(string Node, Aspect On, string At, string By)> Disturbances(PlanCheck check) =>
        (from e in check.Tasks.SelectMany(OfTask).Concat(check.Holds.SelectMany(h => Each(h.Hold.Id, h.Hold.StandsOn, h.At)))
         from other in check.Index.DisturbedBy(e.On.Key)
         where other != e.Node
         select (e.Node, e.On, e.At, By: other)).DistinctBy(d => (d.Node, d.By));

    private static IEnumerable<(string Node, Aspect On, string At)> OfTask((PlanTask Task, string At) t) =>
        Each(t.Task.Id, t.Task.StandsOn, t.At)
            .Concat(PlanCheck.Each(t.Task.Readings, t.At + ".readings").SelectMany(r => Each(t.Task.Id, r.Value.StandsOn, r.At)));

    private static IEnumerable<(string Node, Aspect On, string At)> Each(string node, ImmutableArray<Aspect> standsOn, string at) =>
        PlanCheck.Each(standsOn, at + ".standsOn").Select(a => (node, a.Value, a.At));

    /// <summary>The first node after the disturbance whose evidence stands on the same, or nothing.</summary>
    private static string? Again(PlanCheck check, Aspect on, string by)
    {
        var later = check.Index.EvidenceOn(on.Key).Select(e => e.Node).Where(n => check.Index.IsAfter(n, by)).ToHashSet(StringComparer.Ordinal);
        return check.Index.InOrder.FirstOrDefault(later.Contains);
    }

    private static string Say(PlanCheck check, Aspect aspect) => $"{check.SayItem(aspect.Item)} {aspect.Name}";
}

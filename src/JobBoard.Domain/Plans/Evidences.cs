namespace JobBoard.Domain.Plans;

/// <summary>What each node's evidence stands on, and which nodes take which again, as pairs.</summary>
internal static class Evidences
{
    /// <summary>Aspect keys with what stands on them: the node, and the reading or nothing for a sign-off or release.</summary>
    public static IEnumerable<(string Key, (string Node, string? Reading) Evidence)> Of(Plan plan) =>
        plan.Tasks.SelectMany(OfTask)
            .Concat(plan.Holds.SelectMany(h => h.StandsOn.Select(a => (a.Key, (h.Id, (string?)null)))));

    /// <summary>Nodes with those that take them again.</summary>
    public static IEnumerable<(string Node, string By)> TakesAgain(Plan plan) =>
        plan.Tasks.SelectMany(t => t.TakesAgain.Select(again => (again, t.Id)))
            .Concat(plan.Holds.SelectMany(h => h.TakesAgain.Select(again => (again, h.Id))));

    private static IEnumerable<(string Key, (string Node, string? Reading) Evidence)> OfTask(PlanTask task) =>
        task.StandsOn.Concat(task.Readings.SelectMany(r => r.StandsOn)).Select(a => (a.Key, (task.Id, (string?)null)))
            .Concat(task.Readings.SelectMany(r => r.StandsOn.Select(a => (a.Key, (task.Id, (string?)r.Id)))));
}

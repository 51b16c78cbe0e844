using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>Who comes after whom, walked anew at every question.</summary>
public static class Order
{
    /// <summary>All nodes before a node, over finish-start links without leads.</summary>
    public static HashSet<string> Before(Plan plan, string node) => Walk(node, n => Ordering(plan).Where(l => l.Task == n).Select(l => l.After));

    /// <summary>Nodes before a node that are reached over nothing but nodes of a kind.</summary>
    public static HashSet<string> BeforeOver(Plan plan, string node, Func<string, bool> over) =>
        Walk(node, n => n == node || over(n) ? Ordering(plan).Where(l => l.Task == n).Select(l => l.After) : []);

    /// <summary>All nodes after a node, over finish-start links without leads.</summary>
    public static HashSet<string> After(Plan plan, string node) => Walk(node, n => Ordering(plan).Where(l => l.After == n).Select(l => l.Task));

    public static bool IsAfter(Plan plan, string later, string earlier) => After(plan, earlier).Contains(later);

    /// <summary>Nodes that take the evidence of a node again.</summary>
    public static IEnumerable<string> Takers(Plan plan, string node) =>
        plan.Tasks.Where(t => t.TakesAgain.Contains(node)).Select(t => t.Id)
            .Concat(plan.Holds.Where(h => h.TakesAgain.Contains(node)).Select(h => h.Id));

    /// <summary>Whether a disturbance was foreseen: it comes after the evidence, and the evidence is taken again by it or after it.</summary>
    public static bool Foreseen(Plan plan, string evidence, string disturber) =>
        IsAfter(plan, disturber, evidence)
        && Takers(plan, evidence).Any(t => t == disturber || IsAfter(plan, t, disturber));

    private static IEnumerable<Link> Ordering(Plan plan) => plan.Links.Where(l => l.Kind == LinkKind.FinishStart && l.Lag >= 0);

    private static HashSet<string> Walk(string from, Func<string, IEnumerable<string>> next)
    {
        var seen = new HashSet<string>();
        var open = new Queue<string>([from]);
        while (open.TryDequeue(out var node))
            foreach (var step in next(node))
                if (seen.Add(step)) open.Enqueue(step);
        return seen;
    }
}

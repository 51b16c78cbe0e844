namespace JobBoard.Domain.Plans.Faults;

/// <summary>Links that go round: of any kinds and lags, because each of them makes something wait.</summary>
internal static class CircleFaults
{
    /// <summary>One fault for each knot of circles, with one circle of it spelled out.</summary>
    public static IEnumerable<Found> Find(PlanCheck check)
    {
        var left = Knotted(check, check.Index.Nodes);
        while (left.Count > 0)
        {
            var circle = Walk(check, left);
            yield return Spell(check, circle);
            left = Knotted(check, left.Except(Knot(check, circle[0], left)));
        }
    }

    /// <summary>Nodes in a circle or between two: what is left when nodes with nothing before or after are taken off in turn.</summary>
    private static HashSet<string> Knotted(PlanCheck check, IEnumerable<string> nodes)
    {
        var left = nodes.ToHashSet(StringComparer.Ordinal);
        var ends = new Queue<string>(left);
        while (ends.TryDequeue(out var node))
        {
            if (!left.Contains(node) || (check.Index.LinksInto(node).Any(l => left.Contains(l.After)) && check.Index.LinksFrom(node).Any(l => left.Contains(l.Task))))
                continue;
            left.Remove(node);
            foreach (var link in check.Index.LinksInto(node))
                ends.Enqueue(link.After);
            foreach (var link in check.Index.LinksFrom(node))
                ends.Enqueue(link.Task);
        }

        return left;
    }

    /// <summary>From the first node that is left always forward, until a node comes a second time.</summary>
    private static List<string> Walk(PlanCheck check, HashSet<string> left)
    {
        var path = new List<string>();
        var at = new Dictionary<string, int>(StringComparer.Ordinal);
        var node = check.Index.Nodes.First(left.Contains);
        while (at.TryAdd(node, path.Count))
        {
            path.Add(node);
            node = check.Index.LinksFrom(node).First(l => left.Contains(l.Task)).Task;
        }

        return path[at[node]..];
    }

    private static Found Spell(PlanCheck check, List<string> circle)
    {
        var last = PlanCheck.Each(check.Plan.Links, "links").First(l => l.Value.Task == circle[0] && l.Value.After == circle[^1]);
        var round = string.Join(" before ", circle.Append(circle[0]).Select(check.Say));
        return new Found(last.At, $"The links go round in a circle: {round}.", $"take one of them out, for instance {check.Say(circle[0])} after {check.Say(circle[^1])}");
    }

    /// <summary>Everything joined to the circle among what is left: reached from it and reaching it.</summary>
    private static IEnumerable<string> Knot(PlanCheck check, string node, HashSet<string> left)
    {
        var forward = Reach(node, left, n => check.Index.LinksFrom(n).Select(l => l.Task));
        forward.IntersectWith(Reach(node, left, n => check.Index.LinksInto(n).Select(l => l.After)));
        return forward;
    }

    private static HashSet<string> Reach(string node, HashSet<string> left, Func<string, IEnumerable<string>> next)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal) { node };
        var open = new Queue<string>(reached);
        while (open.TryDequeue(out var from))
            foreach (var to in next(from).Where(n => left.Contains(n) && reached.Add(n)))
                open.Enqueue(to);
        return reached;
    }
}

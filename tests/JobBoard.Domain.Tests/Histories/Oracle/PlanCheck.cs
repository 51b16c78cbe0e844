using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>Faults of a plan, each looked for in the plainest way; a few of many, those that a history plants.</summary>
public static class PlanCheck
{
    public static IEnumerable<string> Faults(Picture shop, Plan plan) => Unknown(shop, plan).Concat(Circle(plan)).Concat(Chains(plan)).Concat(Lapses(plan));

    private static IEnumerable<string> Unknown(Picture shop, Plan plan)
    {
        var nodes = plan.Tasks.Select(t => t.Id).Concat(plan.Holds.Select(h => h.Id)).ToList();
        if (nodes.Distinct().Count() != nodes.Count) yield return "two nodes of one name";
        foreach (var link in plan.Links.Where(l => !nodes.Contains(l.Task) || !nodes.Contains(l.After))) yield return $"a link to nothing ({link.Task})";
        foreach (var task in plan.Tasks)
        {
            if (task.Estimate.Low <= 0 || task.Estimate.Usual < task.Estimate.Low || task.Estimate.High < task.Estimate.Usual) yield return "an estimate upside down";
            if (task.Hazards.Any(h => !shop.Hazards.ContainsKey(h.Hazard))) yield return "an unknown hazard";
            if (task.Needs.Any(n => !n.Item.StartsWith("shop/", StringComparison.Ordinal) && !plan.Items.Any(i => i.Id == n.Item))) yield return "an item that is not there";
            if (task.Place != "car" && !shop.Places.Values.Any(p => p.Kind == task.Place)) yield return "a place that is not there";
            if (task.Gear.Any(n => !shop.Gear.Values.Any(g => g.Kind == n.Kind && (n.MinRatedKg is not { } least || g.RatedKg >= least)))) yield return "gear that is not there";
            if (task.Crew.Any(n => n.Qualification is { } what && !shop.People.Values.Any(p => !p.Left && p.Qualifications.Any(q => q.For == what)))) yield return "a duty nobody can do";
        }
    }

    private static IEnumerable<string> Circle(Plan plan)
    {
        var left = plan.Tasks.Select(t => t.Id).Concat(plan.Holds.Select(h => h.Id)).ToHashSet();
        while (left.FirstOrDefault(n => !plan.Links.Any(l => l.Task == n && left.Contains(l.After))) is { } first) left.Remove(first);
        if (left.Count > 0) yield return "a circle";
    }

    private static IEnumerable<string> Chains(Plan plan)
    {
        foreach (var item in plan.Items)
        {
            var changers = plan.Tasks.Where(t => t.Changes.Any(c => c.Item == item.Id)).OrderBy(t => Order.Before(plan, t.Id).Count).ToList();
            var condition = item.AtTakeIn;
            for (var i = 0; i < changers.Count; i++)
            {
                var change = changers[i].Changes.First(c => c.Item == item.Id);
                if (change.From != condition) yield return $"{item.Id} is not {change.From} at {changers[i].Id}";
                if (i > 0 && !Order.IsAfter(plan, changers[i].Id, changers[i - 1].Id)) yield return $"{item.Id} is changed in no order";
                condition = change.To;
            }

            if (condition != item.AsForTheRoad) yield return $"{item.Id} is left {condition}";
        }

        foreach (var task in plan.Tasks)
            foreach (var need in task.Needs.Where(n => plan.Items.FirstOrDefault(i => i.Id == n.Item) is { } item && !Met(plan, task, n, item))) yield return $"{task.Id} needs {need.Item} as it is not";
    }

    private static bool Met(Plan plan, PlanTask task, Need need, Item item)
    {
        var changers = plan.Tasks.Where(t => t.Id != task.Id && t.Changes.Any(c => c.Item == item.Id)).ToList();
        if (changers.Any(c => !Order.IsAfter(plan, task.Id, c.Id) && !Order.IsAfter(plan, c.Id, task.Id))) return false;
        var last = changers.Where(c => Order.IsAfter(plan, task.Id, c.Id)).MaxBy(c => Order.Before(plan, c.Id).Count);
        return need.Conditions.Contains(last?.Changes.First(c => c.Item == item.Id).To ?? item.AtTakeIn);
    }

    private static IEnumerable<string> Lapses(Plan plan)
    {
        foreach (var task in plan.Tasks)
        {
            var aspects = task.Touches.Select(a => a.Key).Concat(task.Changes.SelectMany(c => plan.Items.Where(i => i.Id == c.Item)).SelectMany(i => i.Aspects.Select(a => i.Id + "/" + a))).ToHashSet();
            var standing = plan.Tasks.Where(t => t.StandsOn.Concat(t.Readings.SelectMany(r => r.StandsOn)).Any(a => aspects.Contains(a.Key))).Select(t => t.Id)
                .Concat(plan.Holds.Where(h => h.StandsOn.Any(a => aspects.Contains(a.Key))).Select(h => h.Id));
            foreach (var node in standing.Where(n => n != task.Id && !Order.IsAfter(plan, n, task.Id) && !task.TakesAgain.Contains(n) && !Order.Foreseen(plan, n, task.Id)))
                yield return $"{node} lapses at {task.Id} and nothing takes it again";
        }
    }
}

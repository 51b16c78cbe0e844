using JobBoard.Engineering.Measures;

namespace JobBoard.Domain.Plans.Faults;

/// <summary>Entries that say nothing, or numbers that cannot be.</summary>
internal static class ContentFaults
{
    /// <summary>Most tasks a plan may have.</summary>
    public const int MostTasks = 2_000;

    private const int MostLinks = 20_000;
    private const int MostOthers = 2_000;
    private const int MostPeople = 20;
    private const int MostMinutes = 60_000;
    private const int LongestLag = 525_600;
    private const int LongestLead = 3_650;
    private const decimal GreatestLimit = 1_000_000_000m;

    public static IEnumerable<Found> TooMany(PlanCheck check) =>
        from list in new (string At, int Count, int Most)[]
        {
            ("stages", check.Plan.Stages.Length, MostOthers), ("items", check.Plan.Items.Length, MostOthers),
            ("parts", check.Plan.Parts.Length, MostOthers), ("tasks", check.Plan.Tasks.Length, MostTasks),
            ("holds", check.Plan.Holds.Length, MostOthers), ("links", check.Plan.Links.Length, MostLinks),
        }
        where list.Count > list.Most
        select new Found(list.At, $"{list.Count} {list.At} are more than the {list.Most} a plan may have.");

    public static IEnumerable<Found> Empty(PlanCheck check)
    {
        var lists = check.Tasks.SelectMany(t => PlanCheck.Each(t.Task.Needs, t.At + ".needs").Select(n => (n.Value.Conditions.Length, n.At + ".conditions")))
            .Concat(check.Tasks.Select(t => (t.Task.Crew.Length, t.At + ".crew")))
            .Concat(check.Items.Select(i => (i.Item.Conditions.Length, i.At + ".conditions")))
            .Append((check.Plan.Stages.Length, "stages")).Append((check.Plan.Tasks.Length, "tasks"));
        return lists.Where(l => l.Item1 == 0).Select(l => new Found(l.Item2, "Nothing is listed here; it takes at least one."))
            .Concat(Texts(check).Where(t => string.IsNullOrWhiteSpace(t.Text)).Select(t => new Found(t.At, "Nothing is written here.")));
    }

    public static IEnumerable<Found> Estimates(PlanCheck check) =>
        from t in check.Tasks
        let e = t.Task.Estimate
        where !(e.Low > 0 && e.Low <= e.Usual && e.Usual <= e.High && e.High <= MostMinutes)
        select new Found(t.At + ".estimate", $"The estimate of {check.Say(t.Task.Id)} is {e.Low}, {e.Usual}, {e.High} minutes; it has to be 0 < low ≤ usual ≤ high ≤ {MostMinutes}.");

    public static IEnumerable<Found> Numbers(PlanCheck check) =>
        Counts(check).Where(n => n.Value < n.Least || n.Value > n.Most)
            .Select(n => new Found(n.At, FormattableString.Invariant($"{n.Value} cannot be right here; it has to be from {n.Least} to {n.Most}.")));

    public static IEnumerable<Found> Limits(PlanCheck check) =>
        from t in check.Tasks
        from r in PlanCheck.Each(t.Task.Readings, t.At + ".readings")
        from words in Wrong(r.Value)
        select new Found(r.At, words);

    private static IEnumerable<string> Wrong(ReadingNeed reading)
    {
        if (Units.Find(reading.Unit) is null)
            yield return Units.UnknownWords(reading.Unit, reading.Name);
        if (reading.Min > reading.Max)
            yield return FormattableString.Invariant($"The least, {reading.Min}, is above the greatest, {reading.Max}.");
        if (new[] { reading.Min, reading.Max }.Any(limit => limit is { } l && Math.Abs(l) > GreatestLimit))
            yield return "A limit is beyond ± 1,000,000,000; choose a larger unit.";
    }

    private static IEnumerable<(string Text, string At)> Texts(PlanCheck check) =>
    [
        (check.Plan.Name, "name"),
        .. PlanCheck.Each(check.Plan.Stages, "stages").Select(s => (s.Value.Name, s.At + ".name")),
        .. check.Items.Select(i => (i.Item.Name, i.At + ".name")),
        .. check.Items.SelectMany(i => PlanCheck.Each(i.Item.Conditions, i.At + ".conditions")),
        .. check.Items.SelectMany(i => PlanCheck.Each(i.Item.Aspects, i.At + ".aspects")),
        .. PlanCheck.Each(check.Plan.Parts, "parts").Select(p => (p.Value.Name, p.At + ".name")),
        .. check.Tasks.Select(t => (t.Task.Name, t.At + ".name")),
        .. check.Tasks.Select(t => (t.Task.Place, t.At + ".place")),
        .. check.Tasks.SelectMany(t => PlanCheck.Each(t.Task.Crew, t.At + ".crew").Select(c => (c.Value.Duty, c.At + ".duty"))),
        .. check.Tasks.SelectMany(t => PlanCheck.Each(t.Task.Readings, t.At + ".readings").Select(r => (r.Value.Name, r.At + ".name"))),
        .. check.Holds.Select(h => (h.Hold.Name, h.At + ".name")),
    ];

    private static IEnumerable<(decimal Value, decimal Least, decimal Most, string At)> Counts(PlanCheck check) =>
    [
        .. check.Tasks.SelectMany(t => PlanCheck.Each(t.Task.Crew, t.At + ".crew").Select(c => ((decimal)c.Value.Count, 1m, (decimal)MostPeople, c.At + ".count"))),
        .. check.Tasks.SelectMany(t => PlanCheck.Each(t.Task.Gear, t.At + ".gear").Where(g => g.Value.MinRatedKg is not null).Select(g => (g.Value.MinRatedKg!.Value, 1m, 1_000_000m, g.At + ".minRatedKg"))),
        .. PlanCheck.Each(check.Plan.Parts, "parts").Select(p => ((decimal)p.Value.LeadDays, 0m, (decimal)LongestLead, p.At + ".leadDays")),
        .. check.Links.Select(l => ((decimal)l.Link.Lag, (decimal)-LongestLag, (decimal)LongestLag, l.At + ".lag")),
    ];
}

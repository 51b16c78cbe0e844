using System.Text.RegularExpressions;

namespace JobBoard.Domain.Plans.Faults;

/// <summary>Ids that are no ids, and ids that stand twice.</summary>
internal static partial class IdFaults
{
    private const int Longest = 60;

    public static IEnumerable<Found> Form(PlanCheck check) =>
        from id in All(check.Plan)
        where id.Id.Length > Longest || !Words().IsMatch(id.Id)
        select new Found(id.At, $"\"{id.Id}\" is not an id: lower-case letters and digits in words joined by hyphens, at most {Longest} characters.");

    public static IEnumerable<Found> Twice(PlanCheck check) =>
        Lists(check.Plan).SelectMany(list => list.GroupBy(e => e.Id).SelectMany(same => same.Skip(1)
            .Select(e => new Found(e.At, $"\"{e.Id}\" stands twice; it is already at {same.First().At}."))));

    private static IEnumerable<(string Id, string At)> All(Plan plan) =>
        Named(plan).SelectMany(list => list).Prepend((plan.Id, "id"));

    /// <summary>Lists of ids.</summary>
    private static IEnumerable<IEnumerable<(string Id, string At)>> Named(Plan plan) =>
    [
        PlanCheck.Each(plan.Stages, "stages").Select(e => (e.Value.Id, e.At)),
        PlanCheck.Each(plan.Items, "items").Select(e => (e.Value.Id, e.At)),
        PlanCheck.Each(plan.Parts, "parts").Select(e => (e.Value.Id, e.At)),
        PlanCheck.Each(plan.Tasks, "tasks").Select(e => (e.Value.Id, e.At))
            .Concat(PlanCheck.Each(plan.Holds, "holds").Select(e => (e.Value.Id, e.At))),
        .. PlanCheck.Each(plan.Tasks, "tasks").Select(t => PlanCheck.Each(t.Value.Readings, t.At + ".readings").Select(e => (e.Value.Id, e.At))),
    ];

    /// <summary>Lists in which nothing may stand twice.</summary>
    private static IEnumerable<IEnumerable<(string Id, string At)>> Lists(Plan plan) =>
    [
        .. Named(plan),
        .. PlanCheck.Each(plan.Items, "items").Select(i => PlanCheck.Each(i.Value.Conditions, i.At + ".conditions")),
        .. PlanCheck.Each(plan.Items, "items").Select(i => PlanCheck.Each(i.Value.Aspects, i.At + ".aspects")),
        .. PlanCheck.Each(plan.Tasks, "tasks").Select(t => PlanCheck.Each(t.Value.Changes, t.At + ".changes").Select(e => (e.Value.Item, e.At))),
        PlanCheck.Each(plan.Links, "links").Select(e => ($"{e.Value.Task} after {e.Value.After}, {e.Value.Kind}", e.At)),
    ];

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*\\z")]
    private static partial Regex Words();
}

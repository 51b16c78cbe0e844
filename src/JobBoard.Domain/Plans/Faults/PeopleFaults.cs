using System.Collections.Immutable;

namespace JobBoard.Domain.Plans.Faults;

/// <summary>Work that nobody may do, check or release.</summary>
internal static class PeopleFaults
{
    public static IEnumerable<Found> Crews(PlanCheck check) =>
        from t in check.Tasks
        where !check.Crews.CanFill(t.Task.Crew)
        select new Found(
            t.At + ".crew",
            $"{check.Say(t.Task.Id)} takes {string.Join(", ", t.Task.Crew.Select(c => Say(check, c)))}; there are not enough different people for it.",
            "qualify somebody, or ask for less");

    public static IEnumerable<Found> SecondChecks(PlanCheck check) =>
        from t in check.Tasks
        where t.Task.SecondCheck && check.Crews.CanFill(t.Task.Crew)
        let asked = t.Task.SecondCheckQualification
        where !check.Crews.Answering.Any(p => check.Crews.IsQualified(p, asked) && check.Crews.CanFill(t.Task.Crew, p.Id))
        select new Found(
            t.At + ".secondCheck",
            $"Nobody{For(asked)} is left to do the second check of {check.Say(t.Task.Id)} once its crew is filled.",
            "qualify somebody else, or ask for less");

    public static IEnumerable<Found> Releases(PlanCheck check) =>
        from h in check.Holds
        let crews = Before(check, h.Hold)
        let least = h.Hold.ReleasedBy == Position.Apprentice ? Position.Technician : h.Hold.ReleasedBy
        where !check.Crews.Answering.Any(p => p.Position >= least
            && check.Crews.IsQualified(p, h.Hold.Qualification)
            && crews.All(crew => check.Crews.CanFill(crew, p.Id)))
        select new Found(
            h.At,
            $"Nobody can release {check.Say(h.Hold.Id)}: it takes a {Word(least)} or above{For(h.Hold.Qualification)} who did not have to do the work before it.",
            "qualify somebody else for the work or for the release");

    /// <summary>Crews of the tasks directly before a hold point, as far as they can be filled at all.</summary>
    private static ImmutableArray<ImmutableArray<CrewNeed>> Before(PlanCheck check, HoldPoint hold) =>
        [.. check.Index.LinksInto(hold.Id).Select(l => check.Index.Task(l.After)).OfType<PlanTask>()
            .Select(t => t.Crew).Where(crew => check.Crews.CanFill(crew))];

    private static string Say(PlanCheck check, CrewNeed need) => need.Qualification is { } what
        ? $"{need.Count} {need.Duty} qualified for {what} ({check.Crews.Qualified(what)} today)"
        : $"{need.Count} {need.Duty}";

    private static string For(string? qualification) => qualification is null ? "" : $" qualified for {qualification} today";

    private static string Word(Position position) => position.ToString().ToLowerInvariant();
}

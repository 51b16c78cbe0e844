namespace JobBoard.Domain.Plans.Faults;

/// <summary>Links that cannot be of their kind where they are.</summary>
internal static class LinkFaults
{
    public static IEnumerable<Found> Leads(PlanCheck check) =>
        from l in check.Links
        where l.Link.Lag < 0 && (l.Link.Kind != LinkKind.FinishStart || IsAtHold(check, l.Link))
        select new Found(
            l.At,
            $"{Say(check, l.Link)} leads by {-l.Link.Lag} minutes; only a finish-start link between two tasks can lead.",
            "write a lag of 0 or more");

    public static IEnumerable<Found> KindsAtHolds(PlanCheck check) =>
        from l in check.Links
        where l.Link.Kind != LinkKind.FinishStart && IsAtHold(check, l.Link)
        select new Found(
            l.At,
            $"{Say(check, l.Link)} has a hold point at one end, which has no length.",
            "make it a finish-start link");

    public static IEnumerable<Found> HoldsAlone(PlanCheck check)
    {
        foreach (var (hold, at) in check.Holds)
        {
            if (!check.Index.LinksInto(hold.Id).Any(IsFinishStart))
                yield return new Found(at, $"Nothing comes before the hold point {check.Say(hold.Id)}, so there is nothing to release.", $"add a link: {check.Say(hold.Id)} after the work it looks at");
            if (!hold.Handover && !check.Index.LinksFrom(hold.Id).Any(IsFinishStart))
                yield return new Found(at, $"Nothing comes after the hold point {check.Say(hold.Id)}, so it holds nothing.", $"add a link: the work it holds after {check.Say(hold.Id)}");
        }
    }

    private static bool IsFinishStart(Link link) => link.Kind == LinkKind.FinishStart;

    private static bool IsAtHold(PlanCheck check, Link link) =>
        check.Index.Hold(link.Task) is not null || check.Index.Hold(link.After) is not null;

    private static string Say(PlanCheck check, Link link) => $"The link {check.Say(link.Task)} after {check.Say(link.After)}";
}

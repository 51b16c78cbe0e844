using System.Collections.Immutable;
using JobBoard.Domain.Plans.Faults;

namespace JobBoard.Domain.Plans;

/// <summary>Finds everything that makes a plan unfit to run in a shop. A plan with faults is refused whole.</summary>
public static class PlanFaults
{
    /// <summary>
    /// Every rule a plan has to keep. Those that rest on the order of tasks are left out while links go round in a circle,
    /// because there is no order then.
    /// </summary>
    public static ImmutableArray<PlanFaultRule> Rules { get; } =
    [
        new("too-many", "No more tasks, links and other entries than a shop can run.", ContentFaults.TooMany),
        new("id-form", "Ids are lower-case words joined by hyphens.", IdFaults.Form),
        new("id-twice", "Ids are unique within their list; tasks and hold points share one.", IdFaults.Twice),
        new("empty", "Names, crews and lists of conditions say something.", ContentFaults.Empty),
        new("unknown-id", "What is named exists in the plan.", ReferenceFaults.Unknown),
        new("estimate", "0 < low ≤ usual ≤ high ≤ 60,000 minutes.", ContentFaults.Estimates),
        new("number", "Counts, loads and lags are of a possible size.", ContentFaults.Numbers),
        new("limit", "Limits have a known unit, and the least is not above the greatest.", ContentFaults.Limits),
        new("circle", "No links go round in a circle.", CircleFaults.Find),
        new("lead", "Only a finish-start link between two tasks can lead.", LinkFaults.Leads),
        new("hold-link", "Hold points are linked finish-start.", LinkFaults.KindsAtHolds),
        new("hold-alone", "A hold point has something before and something after it; the handover may be last.", LinkFaults.HoldsAlone),
        new("change-order", "The tasks that change an item come one after another.", ChangeFaults.Order, NeedsOrder: true),
        new("change-chain", "Each change begins with the condition the one before left.", ChangeFaults.Chain, NeedsOrder: true),
        new("left-off", "The last change of an item leaves it as for the road.", ChangeFaults.LeftOff, NeedsOrder: true),
        new("never-changed", "An item that comes in otherwise than for the road is changed by some task.", ChangeFaults.NeverChanged),
        new("need-order", "A need lies wholly between two changes of its item.", NeedFaults.Order, NeedsOrder: true),
        new("need-unmet", "A need is met by the condition its item is in by then.", NeedFaults.Unmet, NeedsOrder: true),
        new("need-shop", "A thing of the shop that is needed exists and can be in that condition.", NeedFaults.Shop),
        new("lapse-order", "Work that disturbs what evidence stands on comes before or after it.", EvidenceFaults.Order, NeedsOrder: true),
        new("lapse-not-taken-again", "Evidence that lapses by plan is taken again.", EvidenceFaults.NotTakenAgain, NeedsOrder: true),
        new("takes-again-early", "What takes evidence again comes after it.", EvidenceFaults.TakesAgainEarly, NeedsOrder: true),
        new("hazard-unknown", "The shop knows every hazard of the plan.", HazardFaults.Unknown),
        new("hazard-reading", "A hazard that ends by a reading names one of the plan.", HazardFaults.Readings),
        new("hazard-impossible", "No task makes a danger that must keep apart from one that stands all through it.", HazardFaults.Impossible, NeedsOrder: true),
        new("crew", "Every crew can be filled by people qualified today.", PeopleFaults.Crews),
        new("second-check", "Somebody else can do the second check.", PeopleFaults.SecondChecks),
        new("release", "Somebody can release the hold who did not have to do the work before it.", PeopleFaults.Releases),
        new("gear", "The shop has the gear, rated for the load.", ShopFaults.Gear),
        new("place", "The shop has a place of that kind.", ShopFaults.Places),
    ];

    /// <summary>All faults, in the order of the rules and then of the plan.</summary>
    /// <param name="plan">A plan or template.</param>
    /// <param name="shop">Where it is to be run.</param>
    /// <param name="except">Codes of rules to leave out, so that a test can show what each one is for.</param>
    public static ImmutableArray<PlanFault> Find(Plan plan, ShopFacts shop, params IReadOnlyCollection<string> except)
    {
        var check = new PlanCheck(plan, shop);
        return
        [
            .. from rule in Rules
               where !except.Contains(rule.Code) && !(rule.NeedsOrder && check.HasCircle)
               from found in rule.Find(check)
               select new PlanFault(rule.Code, found.At, found.Words, found.Repair) { Tie = found.Tie },
        ];
    }

    /// <summary>
    /// The faults a change to a running plan adds: those that were not there before. Places in the JSON move when entries are
    /// taken out, so a fault is the same when its rule and words are.
    /// </summary>
    public static ImmutableArray<PlanFault> Added(Plan before, Plan after, ShopFacts shop)
    {
        var known = Find(before, shop).GroupBy(Same).ToDictionary(g => g.Key, g => g.Count());
        return [.. Find(after, shop).GroupBy(Same).SelectMany(g => g.Skip(known.GetValueOrDefault(g.Key)))];
    }

    private static (string Code, string Words) Same(PlanFault fault) => (fault.Code, fault.Words);
}

/// <summary>One rule a plan has to keep.</summary>
/// <param name="Code">Its name, for instance <c>need-unmet</c>.</param>
/// <param name="Words">What it asks.</param>
/// <param name="Find">All that breaks it.</param>
/// <param name="NeedsOrder">Whether it makes sense only where links do not go round in a circle.</param>
public sealed record PlanFaultRule(string Code, string Words, Func<PlanCheck, IEnumerable<Found>> Find, bool NeedsOrder = false);

/// <summary>Where a rule is broken, how, and what would put it right.</summary>
public sealed record Found(string At, string Words, string? Repair = null, PlanTie? Tie = null)
{
    /// <summary>One that a link puts right.</summary>
    internal static Found Linked(PlanCheck check, string at, string words, string later, string earlier) =>
        new(at, words, check.AddLink(later, earlier), new(later, earlier));
}

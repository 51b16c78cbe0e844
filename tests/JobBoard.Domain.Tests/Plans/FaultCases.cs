using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using static JobBoard.Domain.Tests.Plans.SmallJob;

namespace JobBoard.Domain.Tests.Plans;

/// <summary>One way to break the small job, the place where it shows, and what puts it right where something other than its links does.</summary>
public sealed record FaultCase(string Name, string Code, string At, Plan Plan, ShopFacts Shop, Plan? Repaired = null)
{
    public override string ToString() => Name;
}

/// <summary>For every rule at least one plan that breaks it and no other.</summary>
internal static class FaultCases
{
    public static IReadOnlyList<FaultCase> All { get; } = [.. Entries(), .. Chains(), .. Evidence(), .. Shops()];

    private static Plan P => SmallJob.Plan;

    private static FaultCase Case(string name, string code, string at, Plan plan, Plan? repaired = null, ShopFacts? shop = null) =>
        new(name, code, at, plan, shop ?? Shop, repaired);

    private static IEnumerable<FaultCase> Entries() =>
    [
        Case("too many parts", "too-many", "parts", P with { Parts = [.. P.Parts, .. Enumerable.Range(0, 2000).Select(n => new Part($"part-{n}", "part"))] }),
        Case("id with a blank", "id-form", "parts[1]", P with { Parts = [.. P.Parts, new Part("big seal", "seal")] }),
        Case("id with a capital", "id-form", "id", P with { Id = "Small" }),
        Case("two items of an id", "id-twice", "items[2]", P with { Items = [.. P.Items, P.Items[0]] }),
        Case("hold with a task's id", "id-twice", "holds[2]", P with { Holds = [.. P.Holds, P.Holds[0] with { Id = "move" }] }),
        Case("two readings of an id", "id-twice", "tasks[3].readings[1]", P.With("test", t => t with { Readings = [t.Readings[0], t.Readings[0]] })),
        Case("a link twice", "id-twice", "links[7]", P.Linked(new Link("open", "weld"))),
        Case("nobody in the crew", "empty", "tasks[0].crew", P.With("weld", t => t with { Crew = [] })),
        Case("no name", "empty", "tasks[0].name", P.With("weld", t => t with { Name = " " })),
        Case("a need of nothing", "empty", "tasks[3].needs[0].conditions", P.With("test", t => t with { Needs = [new Need("line", [])] })),
        Case("unknown stage", "unknown-id", "tasks[0].stage", P.With("weld", t => t with { Stage = "s9" })),
        Case("unknown part", "unknown-id", "tasks[0].parts[0]", P.With("weld", t => t with { Parts = ["gasket"] })),
        Case("unknown node in a link", "unknown-id", "links[7].after", P.Linked(new Link("open", "nothing"))),
        Case("unknown item needed", "unknown-id", "tasks[0].needs[1].item", P.With("weld", t => t with { Needs = [.. t.Needs, new Need("hose", ["on"])] })),
        Case("unknown condition needed", "unknown-id", "tasks[3].needs[0].conditions", P.With("test", t => t with { Needs = [new Need("line", ["closed", "shut"])] })),
        Case("unknown way of a change", "unknown-id", "tasks[0].changes[0]", P.With("weld", t => t with { Changes = [t.Changes[0] with { Through = ["tacked"] }] })),
        Case("unknown aspect", "unknown-id", "tasks[0].touches[0].name", P.With("weld", t => t with { Touches = [new Aspect("line", "shiny")] })),
        Case("unknown node taken again", "unknown-id", "tasks[5].takesAgain[2]", P.With("again", t => t with { TakesAgain = [.. t.TakesAgain, "nothing"] })),
        Case("unknown dangerous condition", "unknown-id", "items[1].dangers[0].condition", P.WithItem("bracket", i => i with { Dangers = [new ConditionHazard("hot", "hot-work")] })),
        Case("estimate backwards", "estimate", "tasks[0].estimate", P.With("weld", t => t with { Estimate = new Estimate(10, 9, 30) })),
        Case("estimate of nothing", "estimate", "tasks[0].estimate", P.With("weld", t => t with { Estimate = new Estimate(0, 9, 30) })),
        Case("estimate of months", "estimate", "tasks[0].estimate", P.With("weld", t => t with { Estimate = new Estimate(1, 9, 60_001) })),
        Case("no people", "number", "tasks[0].crew[0].count", P.With("weld", t => t with { Crew = [new CrewNeed("lead", Count: 0)] })),
        Case("lag of years", "number", "links[7].lag", P.Linked(new Link("test", "open", Lag: 600_000))),
        Case("unknown unit", "limit", "tasks[3].readings[0]", P.With("test", t => t with { Readings = [t.Readings[0] with { Unit = "furlong" }] })),
        Case("limits backwards", "limit", "tasks[3].readings[0]", P.With("test", t => t with { Readings = [t.Readings[0] with { Min = 36m }] })),
        Case("limit beyond reason", "limit", "tasks[3].readings[0]", P.With("test", t => t with { Readings = [t.Readings[0] with { Max = decimal.MaxValue }] })),
    ];

    private static IEnumerable<FaultCase> Chains() =>
    [
        Case("round by a start-start link", "circle", "links[7]", P.Linked(new Link("weld", "close", LinkKind.StartStart)), P),
        Case("after itself", "circle", "links[7]", P.Linked(new Link("weld", "weld")), P),
        Case("lead of a start", "lead", "links[7]", P.Linked(new Link("test", "open", LinkKind.StartStart, -5)), P.Linked(new Link("test", "open", LinkKind.StartStart))),
        Case("lead at a hold", "lead", "links[7]", P.Linked(new Link("no-leak", "close", Lag: -5)), P.Linked(new Link("no-leak", "close"))),
        Case("hold linked by starts", "hold-link", "links[7]", P.Linked(new Link("no-leak", "close", LinkKind.FinishFinish)), P.Linked(new Link("no-leak", "close"))),
        Case("hold of nothing", "hold-alone", "holds[2]", P with { Holds = [.. P.Holds, Hold], Links = [.. P.Links, new Link("look", "weld")] },
            P with { Holds = [.. P.Holds, Hold], Links = [.. P.Links, new Link("look", "weld"), new Link("open", "look")] }),
        Case("hold after nothing", "hold-alone", "holds[2]", P with { Holds = [.. P.Holds, Hold], Links = [.. P.Links, new Link("open", "look")] },
            P with { Holds = [.. P.Holds, Hold], Links = [.. P.Links, new Link("look", "weld"), new Link("open", "look")] }),
        Case("changes beside each other", "change-order", "tasks[2].changes[0]", P.Unlinked("close", "open").Linked(new Link("close", "weld"), new Link("test", "open"))),
        Case("change from elsewhere", "change-chain", "tasks[0].changes[0]", P.With("weld", t => t with { Changes = [new Change("bracket", "fitted", "fitted")] }), P),
        Case("change from what is not left", "change-chain", "tasks[2].changes[0]", P.With("close", t => t with { Changes = [new Change("line", "closed", "closed")] }), P),
        Case("left off", "left-off", "tasks[0].changes[0]", P.With("weld", t => t with { Changes = [new Change("bracket", "off", "off")] }),
            P.With("weld", t => t with { Changes = [new Change("bracket", "off", "off")] }).Added(Task("fit") with { Changes = [new Change("bracket", "off", "fitted")] }, "weld")),
        Case("never changed", "never-changed", "items[1]", P.With("weld", t => t with { Changes = [] }), P),
        Case("need beside a change", "need-order", "tasks[6].needs[0]", P.Added(Task("look") with { Needs = [new Need("line", ["closed"])] }, "open")),
        Case("need of a start beside a change", "need-order", "tasks[6].needs[0]", P.Added(Task("look") with { Needs = [new Need("bracket", ["off"])] }, "open").Unlinked("look", "open")),
        Case("need met otherwise", "need-unmet", "tasks[3].needs[0]", P.With("test", t => t with { Needs = [new Need("line", ["open"])] }), P),
        Case("need of what it changes", "need-unmet", "tasks[0].needs[1]", P.With("weld", t => t with { Needs = [.. t.Needs, new Need("bracket", ["fitted"])] })),
        Case("need before any change", "need-unmet", "tasks[0].needs[1]", P.With("weld", t => t with { Needs = [.. t.Needs, new Need("line", ["open"])] })),
    ];

    private static IEnumerable<FaultCase> Evidence() =>
    [
        Case("disturbed beside", "lapse-order", "tasks[3].readings[0].standsOn[0]", P.Added(Task("wipe") with { Touches = [Tight] }, "close").Linked(new Link("again", "wipe"), new Link("no-leak", "wipe"))),
        Case("disturbed for good", "lapse-not-taken-again", "tasks[5].standsOn[0]", P.Added(Task("wipe") with { Touches = [Tight], TakesAgain = ["test", "no-leak"] }, "again"),
            P.Added(Task("wipe") with { Touches = [Tight], TakesAgain = ["test", "no-leak", "again"] }, "again")),
        Case("taken again before", "lapse-not-taken-again", "holds[0].standsOn[0]", P.With("again", t => t with { TakesAgain = ["test"] }).With("test", t => t with { TakesAgain = [] }), P),
        Case("takes again what is later", "takes-again-early", "tasks[0].takesAgain[0]", P.With("weld", t => t with { TakesAgain = ["test"] }), P),
        Case("takes itself again", "takes-again-early", "tasks[5].takesAgain[2]", P.With("again", t => t with { TakesAgain = [.. t.TakesAgain, "again"] }), P),
        Case("takes again beside", "takes-again-early", "tasks[6].takesAgain[0]", P.Added(Task("look") with { TakesAgain = ["test"] }, "close")),
    ];

    private static IEnumerable<FaultCase> Shops() =>
    [
        Case("thing the shop has not", "need-shop", "tasks[0].needs[0].item", P.With("weld", t => t with { Needs = [new Need("shop/heating", ["on"])] }), P),
        Case("thing never so", "need-shop", "tasks[0].needs[0].conditions", P.With("weld", t => t with { Needs = [new Need("shop/extraction", ["high"])] }), P),
        Case("hazard of a task unknown", "hazard-unknown", "tasks[1].hazards[0]", P.With("open", t => t with { Hazards = [new TaskHazard("wet-floor")] }), P),
        Case("hazard of a condition unknown", "hazard-unknown", "items[1].dangers[0]", P.WithItem("bracket", i => i with { Dangers = [new ConditionHazard("off", "wet-floor")] }), P),
        Case("hazard without its reading", "hazard-reading", "tasks[5].hazards[0]", P.With("again", t => t with { Hazards = [new TaskHazard("hot-coolant")] }), P),
        Case("hazard with no such reading", "hazard-reading", "tasks[5].hazards[0]", P.With("again", t => t with { Hazards = [new TaskHazard("hot-coolant", "test/rise")] }), P),
        Case("weld on an open line", "hazard-impossible", "tasks[0]", P.Unlinked("open", "weld").Linked(new Link("weld", "open"), new Link("close", "weld")),
            P.Unlinked("open", "weld").Linked(new Link("weld", "close"), new Link("test", "weld"))),
        Case("nobody qualified", "crew", "tasks[0].crew", P.With("weld", t => t with { Crew = [new CrewNeed("lead", "welding")] }), P),
        Case("one person twice", "crew", "tasks[0].crew", P.With("weld", t => t with { Crew = [new CrewNeed("lead", "fuel"), new CrewNeed("hand", "fuel")] }), P),
        Case("qualified until now", "crew", "tasks[0].crew", P.With("weld", t => t with { Crew = [new CrewNeed("lead", "signalling")] }), shop: Shop.With("tom", p => p with { Qualifications = [new QualifiedFor("signalling", Now)] })),
        Case("only the checker can do it", "second-check", "tasks[2].secondCheck", P.With("close", t => t with { SecondCheckQualification = "fuel" }), P),
        Case("one person for work and release", "release", "holds[0]", P.With("test", t => t with { Crew = [new CrewNeed("lead", "fuel")] }).WithHold("no-leak", h => h with { ReleasedBy = Position.Technician, Qualification = "fuel" })),
        Case("nobody high enough", "release", "holds[0]", P.WithHold("no-leak", h => h with { Qualification = "signalling" }), P),
        Case("hoist too weak", "gear", "tasks[3].gear", P.With("test", t => t with { Gear = [new GearNeed("hoist", 1001m)] }), P),
        Case("two hoists of one", "gear", "tasks[3].gear", P.With("test", t => t with { Gear = [new GearNeed("hoist"), new GearNeed("hoist")] }), P),
        Case("no such place", "place", "tasks[4].place", P.With("move", t => t with { Place = "paint booth" }), P),
    ];

    private static HoldPoint Hold => new() { Id = "look", Name = "look", Stage = "s1" };
}

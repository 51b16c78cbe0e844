using JobBoard.Domain.Hazards;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Plans;

/// <summary>The smallest plan that has one of everything the rules look at, without a fault, and a shop for it.</summary>
internal static class SmallJob
{
    public static DateTimeOffset Now { get; } = new(2026, 5, 4, 9, 0, 0, TimeSpan.Zero);

    public static Aspect Tight { get; } = new("line", "tight");

    public static ShopFacts Shop { get; } = new()
    {
        Now = Now,
        People =
        [
            Somebody("olive", Position.Owner),
            Somebody("frank", Position.Foreman, "lifting"),
            Somebody("tina", Position.Technician, "fuel", "lifting"),
            Somebody("tom", Position.Technician, "signalling"),
            Somebody("andy", Position.Apprentice) with { WorksUnder = "tina" },
        ],
        Places = [new Place { Id = "bay-1", Name = "bay 1", Kind = "bay", Area = new Area(0, 0, 4, 6) }, new Place { Id = "bench-1", Name = "bench", Kind = "bench", Area = new Area(5, 0, 2, 1) }],
        Gear = [new Gear { Id = "hoist-1", Name = "hoist", Kind = "hoist", RatedKg = 1000m }],
        Hazards =
        [
            Danger("line-open", HazardEnd.WithTheCondition), Danger("hot-work", HazardEnd.WithTheWork),
            Danger("hot-coolant", HazardEnd.ByReading), Danger("suspended-load", HazardEnd.WithTheCondition),
        ],
        KeepApart = [new KeepApart { Id = "k1", A = new Side("hot-work"), B = new Side("line-open"), Scope = Scope.Shop, Reason = "fuel burns." }],
        Items = [new ShopItem { Id = "extraction", Name = "extraction", Conditions = ["on", "off"], Condition = "on" }],
    };

    public static Plan Plan { get; } = new()
    {
        Id = "small-job",
        Name = "small job",
        Stages = [new Stage("s1", "all of it")],
        Items =
        [
            new Item { Id = "line", Name = "fuel line", Conditions = ["closed", "open"], AtTakeIn = "closed", AsForTheRoad = "closed", Aspects = ["tight"], Dangers = [new ConditionHazard("open", "line-open")] },
            new Item { Id = "bracket", Name = "bracket", Conditions = ["off", "fitted"], AtTakeIn = "off", AsForTheRoad = "fitted" },
        ],
        Parts = [new Part("seal", "seal", 2)],
        Tasks =
        [
            Task("weld") with { Changes = [new Change("bracket", "off", "fitted")], Hazards = [new TaskHazard("hot-work")], Needs = [new Need("shop/extraction", ["on"])] },
            Task("open") with { Changes = [new Change("line", "closed", "open")], Crew = [new CrewNeed("lead", "fuel")] },
            Task("close") with { Changes = [new Change("line", "open", "closed")], Crew = [new CrewNeed("lead", "fuel"), new CrewNeed("hand")], Parts = ["seal"], SecondCheck = true },
            Task("test") with { Needs = [new Need("line", ["closed"])], Readings = [Fall], Gear = [new GearNeed("hoist", 500m)] },
            Task("move") with { Name = "move the hose", Touches = [Tight], Place = "bench" },
            Task("again") with { Name = "test again", StandsOn = [Tight], TakesAgain = ["test", "no-leak"], Hazards = [new TaskHazard("hot-coolant", "test/fall")] },
        ],
        Holds =
        [
            new HoldPoint { Id = "no-leak", Name = "no leak", Stage = "s1", StandsOn = [Tight] },
            new HoldPoint { Id = "handover", Name = "handover", Stage = "s1", Handover = true },
        ],
        Links =
        [
            new Link("open", "weld"), new Link("close", "open"), new Link("test", "close"), new Link("no-leak", "test"),
            new Link("move", "no-leak"), new Link("again", "move", Lag: 30, Clock: LagClock.Elapsed), new Link("handover", "again"),
        ],
    };

    private static ReadingNeed Fall => new() { Id = "fall", Name = "fall in ten minutes", Unit = "kPa", Min = 0m, Max = 35m, StandsOn = [Tight] };

    public static PlanTask Task(string id) => new() { Id = id, Name = id, Stage = "s1", Estimate = new Estimate(10, 20, 30) };

    public static Person Somebody(string id, Position position, params string[] qualifications) =>
        new() { Id = id, Name = id, Position = position, Qualifications = [.. qualifications.Select(q => new QualifiedFor(q, Now.AddDays(1)))] };

    /// <summary>The plan with one task changed.</summary>
    public static Plan With(this Plan plan, string task, Func<PlanTask, PlanTask> change) =>
        plan with { Tasks = [.. plan.Tasks.Select(t => t.Id == task ? change(t) : t)] };

    /// <summary>The plan with one item changed.</summary>
    public static Plan WithItem(this Plan plan, string item, Func<Item, Item> change) =>
        plan with { Items = [.. plan.Items.Select(i => i.Id == item ? change(i) : i)] };

    /// <summary>The plan with one hold point changed.</summary>
    public static Plan WithHold(this Plan plan, string hold, Func<HoldPoint, HoldPoint> change) =>
        plan with { Holds = [.. plan.Holds.Select(h => h.Id == hold ? change(h) : h)] };

    /// <summary>The plan with more links.</summary>
    public static Plan Linked(this Plan plan, params Link[] links) => plan with { Links = [.. plan.Links, .. links] };

    /// <summary>The plan without the links between two nodes.</summary>
    public static Plan Unlinked(this Plan plan, string task, string after) =>
        plan with { Links = [.. plan.Links.Where(l => l.Task != task || l.After != after)] };

    /// <summary>The plan with one more task, linked after one node and before the handover.</summary>
    public static Plan Added(this Plan plan, PlanTask task, string after) =>
        (plan with { Tasks = [.. plan.Tasks, task] }).Linked(new Link(task.Id, after), new Link("handover", task.Id));

    /// <summary>The shop with one person changed.</summary>
    public static ShopFacts With(this ShopFacts shop, string person, Func<Person, Person> change) =>
        shop with { People = [.. shop.People.Select(p => p.Id == person ? change(p) : p)] };

    private static HazardKind Danger(string id, HazardEnd ends) => new() { Id = id, Name = id, Sign = "W001", Ends = ends };
}

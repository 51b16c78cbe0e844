using System.Collections.Immutable;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Histories;

/// <summary>
/// One string of work of a made-up plan, totally ordered: an item and everything that changes, touches or stands on it
/// lives in one lane, so that a plan put together from lanes is free of faults by how it is made.
/// </summary>
public sealed record Lane(ImmutableArray<Item> Items, ImmutableArray<PlanTask> Tasks)
{
    public static PlanTask Job(string id) =>
        new() { Id = id, Name = id, Stage = "s1", Estimate = new(20, 40, 90) };

    private static Item Thing(string id, string[] conditions, string takeIn, string road, string[] aspects, ConditionHazard? danger = null) =>
        new() { Id = id, Name = id, Conditions = [.. conditions], AtTakeIn = takeIn, AsForTheRoad = road, Aspects = [.. aspects], Dangers = danger is null ? [] : [danger] };

    private static ReadingNeed Measure(string id, string unit, decimal? min, decimal? max, params Aspect[] on) =>
        new() { Id = id, Name = id, Unit = unit, Min = min, Max = max, Source = "made up", StandsOn = [.. on] };

    /// <summary>A lane so short that a car of it alone comes to its handover.</summary>
    public static Lane Small(Dice dice)
    {
        var badge = Thing("badge", ["off", "fitted"], "off", "fitted", ["straight"]);
        var look = Job("look-over") with { StandsOn = [new("badge", "straight")], SecondCheck = dice.Chance(30) };
        return new([badge], [Job("fit-badge") with { Changes = [new("badge", "off", "fitted")] }, look]);
    }

    public static Lane Lift(Dice dice)
    {
        var engine = Thing("engine", ["out", "hanging", "in"], "out", "in", ["bolted", "aligned"], new("hanging", "suspended-load"));
        ImmutableArray<GearNeed> hoist = [new("hoist", dice.Pick(new decimal?[] { null, 250m, 400m }))];
        ImmutableArray<CrewNeed> pair = [new("lead", dice.Chance(60) ? "lifting" : null), new("guide")];
        var look = Job("look-at-gear") with { Place = dice.Pick(["bench", "car"]) };
        var torque = Job("torque") with { Readings = [Measure("torque", "N·m", 40, 60, new Aspect("engine", "bolted")) with { Calibrated = true }], StandsOn = [new("engine", "bolted")] };
        if (dice.Chance(40)) return new([engine], [look, Job("lift-in") with { Changes = [new("engine", "out", "in") { Through = ["hanging"] }], Gear = hoist, Crew = pair, RunsThrough = true }, torque]);
        return new([engine],
        [
            look,
            .. dice.Chance(50) ? new[] { Job("weigh") with { Gear = hoist } } : [],
            Job("raise") with { Changes = [new("engine", "out", "hanging")], Gear = hoist, Crew = pair },
            Job("swing-over") with { Needs = [new("engine", ["hanging"])], Gear = dice.Chance(70) ? hoist : [], Crew = pair },
            Job("lower") with { Changes = [new("engine", "hanging", "in")], Gear = hoist, Crew = pair, HowLeft = ["hanging", "on blocks"] },
            torque,
        ]);
    }

    public static Lane Fuel(Dice dice)
    {
        var line = Thing("line", ["closed", "open", "blanked"], "closed", "closed", ["tight", "routed"], new("open", "line-open"));
        var tight = new Aspect("line", "tight");
        var test = Job("leak-test") with
        {
            Hazards = [new("fuel-under-pressure")],
            Crew = [new("lead", dice.Chance(50) ? "fuel" : null)],
            Readings = [Measure("pressure", "kPa", 250, 300, tight) with { HoldsWhenTooClose = dice.Chance(50), SeenByTwo = dice.Chance(40), Calibrated = dice.Chance(50) }],
            StandsOn = [tight],
        };
        return new([line],
        [
            Job("open-line") with { Changes = [new("line", "closed", "open")], HowLeft = ["open and blanked", "closed"] },
            Job("join-line") with { Changes = [new("line", "open", "closed")], HowLeft = ["finger-tight", "torqued"] },
            test,
            Job("move-hose") with { Touches = [dice.Chance(70) ? tight : new("line", "routed")] },
        ]);
    }

    public static Lane Electric(Dice dice)
    {
        var loom = Thing("loom", ["dead", "live"], "dead", "dead", ["sound"], new("live", "live-electrics"));
        return new([loom],
        [
            Job("dead-check") with { Readings = [Measure("drop", "V", null, 0.5m, new Aspect("loom", "sound"))], Needs = [new("loom", ["dead"])] },
            Job("switch-on") with { Changes = [new("loom", "dead", "live")], Parts = ["fuse"] },
            Job("live-check") with { Readings = [Measure("charge", "V", 13.8m, 14.8m) with { HoldsWhenTooClose = true }], NowAndThen = dice.Chance(50), Needs = [new("loom", ["live"])] },
            Job("switch-off") with { Changes = [new("loom", "live", "dead")] },
        ]);
    }

    public static Lane Cooling(Dice dice)
    {
        var cap = Thing("cap", ["on", "off"], "on", "on", ["tight"], new("off", "cap-off"));
        return new([cap],
        [
            Job("run-hot") with { Hazards = [new("hot-coolant", "cool-check/warm")], Needs = dice.Chance(50) ? [new("cap", ["on"])] : [] },
            Job("cool-check") with { Readings = [Measure("warm", "°C", null, 40)], NowAndThen = true },
            Job("cap-off") with { Changes = [new("cap", "on", "off")] },
            Job("cap-on") with { Changes = [new("cap", "off", "on")], StandsOn = [new("cap", "tight")] },
        ]);
    }

    public static Lane Under(Dice dice)
    {
        var stand = Thing("stand", ["wheels", "stands"], "wheels", "wheels", ["level"], new("stands", "car-on-stands"));
        return new([stand],
        [
            Job("jack-up") with { Changes = [new("stand", "wheels", "stands")], HowLeft = ["on stands", "on wheels"], SecondCheck = dice.Chance(50) },
            Job("strip-under") with { Hazards = [new("under-the-car")], Needs = [new("stand", ["stands"])], StandsOn = [new("stand", "level")] },
            Job("let-down") with { Changes = [new("stand", "stands", "wheels")] },
            Job("pull-arm") with { Hazards = dice.Chance(70) ? [new("pulling-or-levering")] : [] },
        ]);
    }

    public static Lane Hot(Dice dice)
    {
        var bracket = Thing("bracket", ["off", "fitted"], "off", "fitted", ["sound"]);
        return new([bracket],
        [
            Job("weld") with { Hazards = [new("hot-work")], Crew = [new("lead", dice.Chance(60) ? "welding" : null)], Changes = [new("bracket", "off", "fitted")], Parts = ["bracket"] },
            Job("fire-watch") with { NowAndThen = dice.Chance(60) },
            Job("paint") with { Place = dice.Pick(["bench", "car"]), StandsOn = [new("bracket", "sound")] },
        ]);
    }

    public static Lane Run(Dice dice)
    {
        var plugs = Thing("plugs", ["in", "out"], "in", "in", ["torqued"]);
        return new([plugs],
        [
            Job("belts") with { Hazards = [new("hands-in-belts")] },
            Job("plugs-out") with { Changes = [new("plugs", "in", "out")] },
            Job("crank") with { Hazards = [new("turning-engine")], Needs = [new("plugs", ["out"])] },
            Job("plugs-in") with { Changes = [new("plugs", "out", "in")], Readings = dice.Chance(50) ? [Measure("torque", "N·m", 20, 30, new Aspect("plugs", "torqued")) with { Calibrated = true }] : [] },
            Job("run-engine") with { Hazards = [new("running-exhaust")], Needs = dice.Chance(60) ? [new("shop/extraction", ["on"])] : [] },
        ]);
    }
}

namespace JobBoard.Domain.Tests.Plans;

/// <summary>
/// What the mid-engine template has to contain, stage by stage, in the words the trade uses for it: the yardstick that
/// the map file and the template are held against. A line is a stage and its demands, parted by bars.
/// </summary>
internal static class TemplateDemands
{
    /// <summary>Tasks each stage has at least.</summary>
    public const string Tasks = """
        S1: identity and papers | photos | faults and customer's word | used engine: compression and leak-down
        S2: on rated stands, not under anything that comes off, chocked, in neutral | battery isolated and locked off | fluids drained
        S2: driveshafts, dampers, lower links, crossmember off
        S3: own lift plan | own lift
        S4: engine in on the gear | measured | mounts tacked | out | weld | paint | controller unplugged, battery isolated, fuel off the car or sealed
        S4: fire watch
        S5: flywheel | clutch | release bearing (hydraulics bled and dry) | gearbox mated | mounts and adapter plates
        S5: electric coolant pump beside the bulkhead, hoses lubricated, home and clamped | rear earth strap | rear sensors, sender | starter cable
        S5: heater pipes | ports blanked | tools counted
        S6: lift plan (desk work): mass, centre of gravity, angles | each part of the gear, its inspection date | raise 100 mm, wait, look, then go
        S6: mounts and gearbox support bolted and nipped | load let go | final torque with the weight on
        S7: driveshafts | crossmember, dampers, links | wheels on | down to ride height | rubber-bushed bolts final | hub nuts final
        S8: temporary tank for the first run | feed and return lines | injector feed | filter, bonded to the chassis | return blanked for the static test
        S8: static test | then back | flow test after power on
        S9: radiator, fan, shroud | bleed line from the engine's highest point up to the header tank; header feed into the water manifold
        S9: manifold through the chassis to the radiator | radiator back by the pump to the manifold's other side | heater hoses | dry air test | fill | wet test
        S9: cap on only when dry | bleed again with the pump powered
        S10: filter; mass-air-flow sensor | breather take-offs; both rocker-cover breathers; displaced re-routed | blanks and rags out first
        S11: throttle, returns to stop | clutch | gear linkage, every gear found | neutral found | brakes
        S12: controller mounted | loom plugs mated by key and label | crank and knock sensors
        S12: fan relay, ignition-supply relay, fuel-pump relay with crash cut-off; fuses | temporary console | dead checks | battery on
        S12: live checks (drops, relays, pump run)
        S13: oil in, filter, level | plugs out, coils off, controller unplugged, relay out, tank closed, holes covered
        S13: crank or pressure pot; gauge rises and stays | level again
        S14: plugs in (gap, torque) | coils and leads by firing order and secured | controller and pump relay in with the key off
        S15: manifolds, gaskets | temporary silencer for the first run | clear of hoses and looms
        S16: key-on pump run, lines walked | fault codes | extinguisher, extraction or open air, CO alarm, ear protection, person at the cut-off | start
        S16: hot idle, 2,000 rpm
        S17: cycles in the shop | leaks hot and cold | cold and elapsed before cap off and re-torque | only what the maker allows is re-torqued
        S18: battery isolated | vehicle tank for the temporary one | bond and leak test again | final exhaust and silencer, clearance again | own console
        S18: undertray, covers
        S19: brakes proven | wheel nuts | steering, lights | alignment | insurance and plates
        S20: road check by a licensed driver | first oil and filter change, filter cut open | wheel nuts again | snags closed
        S20: papers (engine number, change notified) | customer briefed on running-in and re-checks | build record
        """;

    /// <summary>Item changes of each stage, one step of a path each.</summary>
    public const string Changes = """
        S2: car wheels > stands | battery live > isolated | engine-oil filled > drained | gearbox-oil filled > drained | coolant filled > drained
        S2: driveshafts fitted > off | dampers fitted > off | links fitted > off | crossmember fitted > off | wheels on > off
        S3: old-engine in > hanging | old-engine hanging > out
        S4: engine out > hanging | engine hanging > trial | engine trial > hanging | engine hanging > out
        S5: gearbox apart > mated | coolant-pump off > fitted | earth-strap off > fitted | port-blanks none > in
        S6: engine out > hanging | engine hanging > in
        S7: driveshafts off > fitted | crossmember off > fitted | dampers off > fitted | links off > fitted | wheels off > on | car stands > wheels
        S8: fuel-supply none > temporary | return-line off > blanked | return-line blanked > on | fuel-pump-relay out > in
        S9: coolant drained > filled | coolant-cap off > on | coolant-cap on > off | coolant-cap off > on
        S10: breathers open > piped | port-blanks in > out
        S11: linkage off > fitted | throttle off > fitted
        S12: controller unplugged > plugged | console none > temporary | battery isolated > live
        S13: engine-oil drained > filled | plugs in > out | coils on > off | controller plugged > unplugged | fuel-pump-relay in > out
        S14: plugs out > in | coils off > on | controller unplugged > plugged | fuel-pump-relay out > in
        S15: exhaust off > temporary
        S16: engine-run never > run
        S17: coolant-cap on > off | coolant-cap off > on
        S18: battery live > isolated | battery isolated > live | fuel-supply temporary > vehicle | exhaust temporary > final | console temporary > own
        S18: undertray off > fitted
        S20: engine-oil filled > drained | engine-oil drained > filled
        """;

    /// <summary>Hazards of each stage.</summary>
    public const string Hazards = """
        S2: car-on-stands | under-the-car | line-open
        S3: suspended-load
        S4: suspended-load | hot-work
        S6: suspended-load
        S7: car-on-stands | under-the-car
        S8: line-open | fuel-under-pressure
        S9: hot-coolant | cap-off
        S12: live-electrics
        S13: turning-engine
        S15: hot-work
        S16: running-exhaust | turning-engine | hot-coolant
        S17: hot-coolant | running-exhaust
        S18: line-open | fuel-under-pressure | hot-work
        """;

    /// <summary>Hold points of each stage.</summary>
    public const string Holds = """
        S1: customer's word before strip
        S3: as S6: before the lift | as S6: before the load is let go
        S4: hot-work permission
        S6: hold before the lift | hold before the load is let go
        S8: hold after the leak test
        S9: hold: no leak
        S12: release after the dead checks | release after the live checks
        S13: pressure seen by two
        S16: key check
        S18: as S8
        S20: foreman: nothing off, temporary, held, lapsed or missing
        """;

    /// <summary>Second checks of each stage.</summary>
    public const string SecondChecks = """
        S2: stands second-checked | lock-off verified by another
        S5: second check before it is buried
        S7: second check, witness marks | second check, witness marks
        S10: blanks out
        S11: throttle return
        S14: firing order
        S19: before moving | before moving
        """;

    /// <summary>Readings and limits of each stage.</summary>
    public const string Readings = """
        S1: compression spread | leak-down
        S2: battery at rest
        S3: mass
        S4: clearances | shaft angle | fire watch 60 min elapsed
        S5: runout | flywheel torque | clutch torque
        S6: mass | leg tension | warn below 45° | refuse below 30° | mount torque | shaft angle
        S7: torque of each
        S8: bond | 10 min at the maker's pressure | fall ≤ 35 kPa | flow against demand
        S9: decay (gas correction only dry) | wet test never above the cap's rating, 15 min | boiling margin | expansion
        S10: straight run | flow at rated power
        S11: free play | travel
        S12: continuity | drops | earths | fuse against cable
        S13: pressure trace | battery while cranking | crank ≤ 10 s, rest ≥ 60 s
        S14: plug torque | gap
        S15: clearance | torque
        S16: oil within 5 s | hot idle and 2,000 rpm oil | charging | fuel pressure | coolant temperature | fan cut-in | CO
        S17: temperature traces between cycles | pressure traces between cycles | cold
        S18: bond again | leak test again | flow again | clearance again | torque again
        S19: wheel nut torque | alignment
        S20: road trace | torque again
        """;

    /// <summary>The links people expect, L1 to L30, each with the number of pairs the map names for it.</summary>
    public const string Links = """
        L: L1 9 | L2 2 | L3 1 | L4 8 | L5 4 | L6 2 | L7 5 | L8 2 | L9 1 | L10 1
        L: L11 4 | L12 11 | L13 5 | L14 5 | L15 1 | L16 4 | L17 6 | L18 3 | L19 2 | L20 2
        L: L21 4 | L22 2 | L23 2 | L24 1 | L25 3 | L26 2 | L27 4 | L28 5 | L29 5 | L30 4
        """;

    /// <summary>Every side of the default keep-apart rules.</summary>
    public const string Sides =
        "suspended-load under-the-car turning-engine hands-in-belts hot-work line-open fuel-under-pressure battery-on-charge live-electrics running-exhaust no-extraction car-on-stands pulling-or-levering hot-coolant cap-off";

    /// <summary>The rows of a table as (stage, demand), sorted.</summary>
    public static IReadOnlyList<(string Stage, string Demand)> Rows(string table) =>
        [.. from line in table.Split('\n')
            let at = line.IndexOf(':')
            from demand in line[(at + 1)..].Split('|')
            let row = (line[..at].Trim(), demand.Trim())
            orderby row.Item1, row.Item2
            select row];
}

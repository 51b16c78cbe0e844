using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Histories;

/// <summary>Makes up a small shop: people, places, gear, instruments, dangers and what is kept apart.</summary>
public sealed class ShopMaker(Dice dice, DateTimeOffset opening)
{
    public const string Owner = "boss";

    public const string Foreman = "fore";

    /// <summary>The commands that set the shop up, in order; all are the owner's.</summary>
    public IEnumerable<Command> Commands()
    {
        yield return new SetPerson(Owner, "Boss", Position.Owner) { Qualifications = [new("inspection"), new("lifting")] };
        yield return new SetShop("Shop", dice.Pick(["Etc/UTC", "Europe/Berlin", "America/New_York"]), Hours(), dice.Chance(50) ? [DateOnly.FromDateTime(opening.Date.AddDays(dice.Between(1, 4)))] : []);
        foreach (var command in People().Concat(Dangers()).Concat(Apart()).Concat(Things())) yield return command;
    }

    /// <summary>Monday to Saturday with a break at noon.</summary>
    private static ImmutableArray<OpenHours> Hours() =>
    [
        .. Enumerable.Range(1, 6).SelectMany(day => new[]
        {
            new OpenHours((DayOfWeek)day, new TimeOnly(8, 0), new TimeOnly(12, 0)),
            new OpenHours((DayOfWeek)day, new TimeOnly(12, 30), new TimeOnly(17, 0)),
        }),
    ];

    private DateTimeOffset? Expiry(int percent) => dice.Chance(percent) ? opening.AddHours(dice.Between(6, 80)) : null;

    private IEnumerable<Command> People()
    {
        yield return new SetPerson(Foreman, "Fore", Position.Foreman) { Qualifications = [new("inspection"), new("lifting"), new("fuel")] };
        yield return new SetPerson("tess", "Tess", Position.Technician) { Qualifications = [new("welding", Expiry(30)), new("lifting"), new("fuel", Expiry(20))] };
        yield return new SetPerson("appie", "Appie", Position.Apprentice) { WorksUnder = "tess", Qualifications = dice.Chance(50) ? [new("signalling")] : [] };
        if (dice.Chance(85)) yield return new SetPerson("udo", "Udo", Position.Technician) { Qualifications = [new("lifting", Expiry(20)), new("signalling", Expiry(40))] };
        if (dice.Chance(60)) yield return new SetPerson("vera", "Vera", Position.Technician) { Qualifications = [new("fuel", Expiry(40)), new("signalling")] };
        if (dice.Chance(30)) yield return new SetPerson("wim", "Wim", Position.Technician) { Outside = true, Qualifications = [new("inspection", Expiry(50))] };
    }

    private static HazardKind Kind(string id, HazardEnd ends, string sign, bool pins = false, bool hangs = false) =>
        new() { Id = id, Name = id, Sign = sign, Ends = ends, Caution = "Keep clear.", PinsCar = pins, HangsInGear = hangs };

    private static IEnumerable<Command> Dangers() => new[]
    {
        Kind("suspended-load", HazardEnd.WithTheCondition, "W015", hangs: true),
        Kind("line-open", HazardEnd.WithTheCondition, "W021"),
        Kind("car-on-stands", HazardEnd.WithTheCondition, "W001", pins: true),
        Kind("live-electrics", HazardEnd.WithTheCondition, "W012"),
        Kind("cap-off", HazardEnd.WithTheCondition, "W017"),
        Kind("no-extraction", HazardEnd.WithTheCondition, "W016"),
        Kind("under-the-car", HazardEnd.WithTheWork, "W001"),
        Kind("hands-in-belts", HazardEnd.WithTheWork, "W025"),
        Kind("pulling-or-levering", HazardEnd.WithTheWork, "W001"),
        Kind("hot-work", HazardEnd.WithTheWork, "W021"),
        Kind("turning-engine", HazardEnd.WithTheWork, "W001"),
        Kind("running-exhaust", HazardEnd.WithTheWork, "W016"),
        Kind("fuel-under-pressure", HazardEnd.WhenMadeSafe, "W021"),
        Kind("hot-coolant", HazardEnd.ByReading, "W017"),
    }.Select(kind => new SetHazard(kind));

    private static KeepApart Rule(string id, Side a, Side b, Scope scope, decimal? metres = null) =>
        new() { Id = id, A = a, B = b, Scope = scope, Metres = metres, Reason = id + ": they may not meet." };

    private IEnumerable<Command> Apart() => new[]
    {
        Rule("load-under", new("suspended-load"), new("under-the-car"), Scope.Sweep),
        Rule("turning-belts", new("turning-engine"), new("hands-in-belts"), Scope.Car),
        Rule("hot-line", new("hot-work"), new("line-open"), Scope.Distance, dice.Pick([4m, 11m, 30m])),
        Rule("hot-fuel", new("hot-work"), new("fuel-under-pressure"), Scope.Shop),
        Rule("live-line", new("live-electrics"), new("line-open"), Scope.Bay),
        Rule("exhaust-air", new("running-exhaust"), new(Item: "shop/extraction", Condition: "off"), Scope.Shop),
        Rule("stands-lever", new(Item: "stand", Condition: "stands"), new("pulling-or-levering"), Scope.Car),
        Rule("coolant-cap", new("hot-coolant"), new(Item: "cap", Condition: "off"), Scope.Car),
    }.Where(_ => dice.Chance(92)).Select(rule => new SetKeepApart(rule));

    /// <summary>A place's area: eight metres of front each, in a row.</summary>
    public static Place Spot(string id, string kind, int column, int capacity = 1) =>
        new() { Id = id, Name = id, Kind = kind, Area = new Area(column * 6, 0, 5, 7), Capacity = capacity };

    private IEnumerable<Command> Things()
    {
        yield return new SetPlace(Spot("bay-1", "bay", 0));
        yield return new SetPlace(Spot("bay-2", "bay", 1));
        if (dice.Chance(60)) yield return new SetPlace(Spot("bay-3", "bay", 3, dice.Between(1, 2)));
        yield return new SetPlace(Spot("bench-1", "bench", 5, dice.Between(1, 2)));
        if (dice.Chance(30)) yield return new SetPlace(Spot("bench-2", "bench", 6));
        if (dice.Chance(70)) yield return new SetPlace(Spot("corner", "fuel corner", 7));
        yield return new SetGear(new Gear { Id = "hoist-1", Name = "Hoist 1", Kind = "hoist", RatedKg = 1000, InspectedUntil = Expiry(60), Sweep = new Area(0, 0, dice.Pick([5m, 11m]), 7) });
        if (dice.Chance(55)) yield return new SetGear(new Gear { Id = "hoist-2", Name = "Hoist 2", Kind = "hoist", RatedKg = 300, InspectedUntil = Expiry(50), Sweep = new Area(6, 0, 5, 7) });
        yield return new SetInstrument(new Instrument { Id = "gauge", Name = "Gauge", Unit = "kPa", Uncertainty = 2, CalibratedUntil = opening.AddHours(dice.Between(10, 100)) });
        yield return new SetInstrument(new Instrument { Id = "wrench", Name = "Wrench", Unit = "N·m", UncertaintyPercent = 4, CalibratedUntil = opening.AddDays(300) });
        yield return new SetInstrument(new Instrument { Id = "old-gauge", Name = "Old gauge", Unit = "bar", Uncertainty = 0.05m });
        yield return new SetShopItem(new ShopItem { Id = "extraction", Name = "Extraction", Conditions = ["on", "off"], Condition = dice.Chance(75) ? "on" : "off", Dangers = [new("off", "no-extraction")] });
    }
}

using System.Collections.Immutable;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Bay;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Gallery;

/// <summary>Invented bay screens to look at: a lift in hand, a stop, a new start of the day, an apprentice.</summary>
public static class BaySamples
{
    private static readonly DateTimeOffset Now = new(2026, 11, 24, 14, 7, 0, TimeSpan.FromHours(1));

    private static readonly BayCaution Load = new(
        SafetySignKind.W015, "Suspended load", "Nobody under it. Only guides beside it, no hands in the gap. One person gives the signals.");

    /// <summary>The sample of this name; the lift in hand for any other name.</summary>
    public static BayView Named(string? name) => name switch
    {
        "stop" => Stopped,
        "morning" => Morning,
        "apprentice" => Usual with { Me = new("ebbe", "Ebbe", true, "Sol"), InHand = [Lift with { SignsNothingOff = "Sol signs this task off.", SignOffWaitsOn = [] }] },
        "ready" => Usual with { InHand = [Lift with { SignOffWaitsOn = [], SecondCheckFollows = true }] },
        _ => Usual,
    };

    /// <summary>The lift in hand.</summary>
    public static BayView Usual { get; } = new()
    {
        Stamp = "sample/1",
        At = Now,
        Me = new("inga", "Inga", true),
        Place = "Bay 1",
        InHand = [Lift],
        CanStart = [Next("mounts", "Mounts bolted", "sets the date, no slack") with { LeaveFirst = new("heron", "lift", "Engine in", false, AskHow) }, Next("console", "Console", "slack 13 h")],
        Waiting =
        [
            new("pressure", "Pressure test", "Heron coupe", [new("coolant: drained, needs filled", "Tove", Now.AddHours(1)), new("hold point: dry test", "the foreman")]),
            new("suspension", "Crossmember, dampers and lower links back", "Heron coupe", [new("Engine in: in hand", "Inga, Sol and Mirek", Now.AddHours(2))]),
        ],
        SecondChecks =
        [
            new("stands", "heron", "On rated stands, chocked", "Heron coupe", "Sol", Now.AddHours(-3)),
            new("strap", "heron", "Rear earth strap", "Heron coupe", "Inga", Now.AddHours(-2), "You did it yourself: another person checks it."),
        ],
        TakeBack = [new("00000000-0000-0000-0000-000000000003", "Logged: mass on the hook 318 kg.", Now.AddSeconds(50))],
        StopScopes = [new("task", "Engine in", Car: "heron", Task: "lift"), new("car", "Heron coupe", Car: "heron"), new("place", "Bay 1", Place: "bay-1"), new("shop", "the whole shop")],
        StopCars = [new("dunlin", "Dunlin estate"), new("heron", "Heron coupe")],
        StopPlaces = [new("bay-1", "Bay 1"), new("bench", "Bench")],
    };

    private static ImmutableArray<BayHowLeft> AskHow =>
    [
        new("how", "The load", [new("hanging", "hanging"), new("set down", "set down"), new("on mounts", "on its mounts")]),
        new("items[mounts]", "Mount bolts", [new("none", "not in"), new("finger-tight", "finger-tight"), new("torqued", "torqued")]),
    ];

    private static BayTask Lift => new()
    {
        Id = "lift",
        Name = "Engine in",
        CarId = "heron",
        Car = "Heron coupe",
        Place = "Bay 1",
        Since = Now.AddMinutes(-70),
        SoFar = TimeSpan.FromMinutes(70),
        Estimate = TimeSpan.FromHours(3),
        Duty = "lead",
        With = ["Sol (signals)", "Mirek (hoist)"],
        Cautions = [Load],
        Steps = ["Raise 100 mm, wait, look at every part of the gear.", "In over the bulkhead, gearbox first, two guides.", "Mounts and gearbox support bolted and nipped before the load is let go."],
        Needs = [new("n1", "Crossmember: off", "off since 23 Nov, Sol", true), new("n2", "Port blanks: in", "none since 10:50, Mirek", false)],
        Readings =
        [
            Reading("mass", "Mass on the hook", "at most 400 kg", "kg") with { Verdict = BayVerdict.InLimits, Value = "318 kg", TakenAt = Now.AddMinutes(-3), TakenBy = "Inga" },
            Reading("gap", "Bulkhead gap", "at least 12 mm", "mm") with { Verdict = BayVerdict.TooCloseToCall, Value = "12.1 mm", TakenAt = Now.AddMinutes(-20), TakenBy = "Sol", Note = "Uncertainty 0.5 mm: neither proven." },
            Reading("bolts", "Mount bolts ×4, nipped", "45 to 50 N·m", "N·m") with { Units = ["N·m", "lbf·ft"], Instruments = [new("w3", "wrench 3, due 1 Mar"), new("w1", "wrench 1, out of date")] },
        ],
        Items = [new("blanks", "Port blanks", "none", [new("none", "none"), new("in", "in")], "since 10:50, Mirek")],
        AskHowLeft = AskHow,
        SignOffWaitsOn = [new("reading: Mount bolts ×4, nipped", "you"), new("reading too close to call: Bulkhead gap", "take it again, or the foreman releases")],
    };

    private static BayView Stopped => Usual with
    {
        Stops =
        [
            new()
            {
                Id = "s1",
                Scope = "Heron coupe",
                Why = "sling slips on the bellhousing",
                RaisedBy = "Sol",
                RaisedAt = Now.AddMinutes(-1),
                State = StopState.ToldToStop,
                AsksMe = true,
                NotHeard = ["Inga", "Mirek"],
                Release = "The foreman releases.",
                ToMakeSafe = [new("heron/load", "engine hanging", SafetySignKind.W015), new("heron/line", "fuel line open", SafetySignKind.W021)],
            },
        ],
        Refusal = new("r1", "Mounts bolted was not started.", [new("Stop on Heron coupe: sling slips", "the foreman releases"), new("suspended load hangs over Bay 1", "Inga, Sol and Mirek", Now.AddHours(1))]),
        TakeBack = [],
    };

    private static BayView Morning => Usual with
    {
        Me = new("mirek", "Mirek", false),
        InHand = [],
        TakeBack = [],
        CanStart = [],
        SecondChecks = [],
        ToAcknowledge = [new("studs", "siskin", "Exhaust studs", "Siskin pick-up", "Sol", Now.AddHours(-20), ["third stud finger-tight", "gasket dry, not torqued"])],
    };

    private static BayReading Reading(string id, string name, string limit, string unit) => new() { Id = id, Name = name, Limit = limit, Unit = unit };

    private static BayNext Next(string id, string name, string why) => new()
    {
        Id = id,
        Name = name,
        CarId = "heron",
        Car = "Heron coupe",
        Place = "Bay 1",
        Why = why,
        Estimate = TimeSpan.FromHours(2),
        Duties =
        [
            new("lead", "Lead", [new("inga", "Inga")], "inga"),
            new("guide", "Guide", [new("sol", "Sol"), new("mirek", "Mirek")]),
        ],
        Cautions = [new(SafetySignKind.W001, "Car on stands", "Nobody pulls or levers while somebody is under it.")],
    };
}

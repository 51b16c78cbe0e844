using System.Collections.Immutable;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Floor;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Gallery;

/// <summary>Invented walls to look at: a usual afternoon, a crowded one and an empty one.</summary>
public static class FloorSamples
{
    private static readonly DateTimeOffset Now = new(2026, 11, 24, 14, 7, 0, TimeSpan.FromHours(1));

    /// <summary>The sample of this name; the usual afternoon for any other name.</summary>
    public static FloorView Named(string? name) => name switch
    {
        "crowded" => Crowded,
        "empty" => Empty,
        "calm" => Usual with { Stops = [], Gear = [Usual.Gear[0] with { KeepOut = null }] },
        _ => Usual,
    };

    /// <summary>Eight places, five cars, one stop that two have not heard.</summary>
    public static FloorView Usual { get; } = new()
    {
        Stamp = "sample/1/2026-11-24T14:07:00+01:00",
        ShopName = "Tarn Lane Conversions",
        At = Now,
        Shop = new(0, 0, 24, 15),
        Gear = [new() { Id = "gantry", Name = "Gantry", OnRails = true, Sweep = new(0.4, 0.4, 15.2, 7.4), KeepOut = new(0.4, 0.4, 7.4, 7.4) }],
        Places = Places,
        Cars = Cars,
        Stops = [FuelWeep],
    };

    private static FloorStop FuelWeep => new()
    {
        Id = "s1",
        Scope = "Dunlin estate",
        Why = "fuel weep at the filter",
        RaisedBy = "Noor",
        RaisedAt = Now.AddMinutes(-40),
        State = StopState.ToldToStop,
        NotHeard = ["Mirek", "Tove"],
        Touches = 4,
        Note = "The foreman releases after a new pressure test.",
    };

    private static ImmutableArray<FloorPlace> Places =>
    [
        Bay("bay-1", "Bay 1", 0.6, 0.6, "Heron coupe") with
        {
            Dangers = [new("h1", "hanging", [SafetySignKind.W015])],
            InHand = [new() { Id = "t1", Name = "Engine in", People = ["Inga", "Sol", "Mirek"], SoFar = TimeSpan.FromMinutes(70), Estimate = TimeSpan.FromHours(3) }],
        },
        Bay("bay-2", "Bay 2", 8.2, 0.6, "Dunlin estate") with
        {
            Stops = [new("s1", ["told to stop", "fuel weep at the filter", "heard by 2 of 4"])],
        },
        Bay("bay-3", "Bay 3", 15.9, 0.6, "Plover saloon") with
        {
            InHand = [new() { Id = "t2", Name = "Bleed", People = ["Tove"], SoFar = TimeSpan.FromMinutes(15), Estimate = TimeSpan.FromHours(1) }],
            Held = [new("k1", "wet test")],
        },
        Bay("bay-4", "Bay 4", 0.6, 8.4, "Siskin pick-up") with
        {
            CanStart = [new("t3", "Exhaust", "can start, nobody on it")],
        },
        Bay("bay-5", "Bay 5", 8.2, 8.4, null),
        new()
        {
            Id = "bench",
            Name = "Electrical bench",
            Kind = FloorPlaceKind.Corner,
            Area = new(16.2, 8, 4.4, 2.6),
            InHand = [new() { Id = "t4", Name = "Loom", Car = "Heron coupe", People = ["Bela"], SoFar = TimeSpan.FromMinutes(130), Estimate = TimeSpan.FromHours(6) }],
        },
        new()
        {
            Id = "fuel",
            Name = "Fuel corner",
            Kind = FloorPlaceKind.Corner,
            Area = new(18.6, 11.2, 5, 3.4),
            Dangers = [new("h2", "line open", [SafetySignKind.W021, SafetySignKind.P003])],
        },
        new() { Id = "wash", Name = "Wash", Kind = FloorPlaceKind.Corner, Area = new(15.9, 12.4, 2.3, 2.2) },
    ];

    private static ImmutableArray<FloorCar> Cars =>
    [
        Car("heron", "Heron coupe", "lift", new(FloorDateKind.Earliest, Now.AddDays(13))) with { CanStart = ["Mounts bolted", "Loom to the bulkhead"] },
        Car("dunlin", "Dunlin estate", "fuel", new(FloorDateKind.Earliest, Now.AddDays(22), Moved: "+1 d")) with { WaitsOn = "the stop" },
        Car("plover", "Plover saloon", "cooling", new(FloorDateKind.Earliest, Now.AddDays(7))) with { CanStart = ["Wet test"] },
        Car("siskin", "Siskin pick-up", "exhaust", new(FloorDateKind.Earliest, Now.AddDays(6))) with { CanStart = ["Exhaust"] },
        Car("wigeon", "Wigeon van", "take-in", new(FloorDateKind.NotKnown, RestsOn: "adapter plate")) with { WaitsOn = "the adapter plate, no date from its maker" },
    ];

    private static FloorView Crowded => Usual with
    {
        Places = [.. Usual.Places.Select(Crowd)],
        Stops =
        [
            FuelWeep,
            FuelWeep with { Id = "s2", Scope = "Bay 1", Why = "sling slips on the bellhousing while raising", RaisedBy = "Sol", State = StopState.MadeSafe, NotHeard = [], Note = "Set down on the stand by Inga. The foreman releases." },
            FuelWeep with { Id = "s3", Scope = "the shop", Why = "extraction off", RaisedBy = "the board" },
        ],
        Cars = [.. Usual.Cars, .. Usual.Cars.Select(car => car with { Id = $"{car.Id}-2", Name = $"{car.Name} with the long wheelbase" })],
    };

    private static FloorView Empty => Usual with
    {
        Places = [.. Usual.Places.Select(place => new FloorPlace { Id = place.Id, Name = place.Name, Kind = place.Kind, Area = place.Area })],
        Cars = [],
        Stops = [],
        Gear = [Usual.Gear[0] with { KeepOut = null }],
    };

    private static FloorPlace Crowd(FloorPlace place) => place with
    {
        Held = [.. place.Held, new("k8", "lift plan not checked"), new("k9", "reading out: mount torque")],
        InHand =
        [
            .. place.InHand,
            new() { Id = "t8", Name = "Crossmember and lower links off", People = ["Inga", "Mirek"], SoFar = TimeSpan.FromMinutes(400), Estimate = TimeSpan.FromHours(3), OverItsEstimate = true },
            new() { Id = "t9", Name = "Battery charging", People = ["Bela"], SoFar = TimeSpan.FromMinutes(50), Estimate = TimeSpan.FromHours(8) },
        ],
        CanStart = [.. place.CanStart, new("t10", "Driveshafts", "nobody on it"), new("t11", "Dampers", null)],
    };

    private static FloorPlace Bay(string id, string name, double x, double y, string? car) =>
        new() { Id = id, Name = name, Kind = FloorPlaceKind.Bay, Area = new(x, y, 7, 6.2), Car = car };

    private static FloorCar Car(string id, string name, string stage, FloorDate date) =>
        new() { Id = id, Name = name, Stage = stage, Date = date };
}

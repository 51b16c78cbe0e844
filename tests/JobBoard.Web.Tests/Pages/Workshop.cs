using System.Text.RegularExpressions;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;
using JobBoard.Web.SignIn;

namespace JobBoard.Web.Tests.Pages;

/// <summary>The server's shop with one more car whose small plan has one of everything the screens show, and an apprentice.</summary>
internal static partial class Workshop
{
    public const string Car = "plover";

    public static string[] People { get; } = ["ada", "fritz", "inga", "mirek"];

    public static Plan Plan { get; } = new()
    {
        Id = "line-job",
        Name = "Line job",
        Stages = [new("s1", "Line"), new("s2", "Pump")],
        Items = [new() { Id = "line", Name = "Fuel line", Where = "rear, under", Conditions = ["closed", "open"], AtTakeIn = "closed", AsForTheRoad = "closed", Aspects = ["tight"] },
            new() { Id = "cap", Name = "Tank cap", Where = "rear, right", Conditions = ["on", "off"], AtTakeIn = "on", AsForTheRoad = "on" }],
        Parts = [new("seal", "Seal ring", 2), new("filter", "Fuel filter")],
        Tasks =
        [
            Task("open-line", "Line opened", "s1") with { Changes = [new("line", "closed", "open")], HowLeft = ["open and blanked"], Steps = ["Drain it first."], Cautions = ["Fuel burns."] },
            Task("close-line", "Line closed", "s1") with { Changes = [new("line", "open", "closed")], Parts = ["seal"], SecondCheck = true, Readings = [Fall] },
            Task("pump-on", "Pump on", "s2") with { Hazards = [new("fuel-pressure")], Needs = [new("line", ["closed"])] },
        ],
        Holds = [new() { Id = "leak-seen", Name = "No leak seen", Stage = "s1", Asks = "Dry at every joint." }, new() { Id = "handover", Name = "Handover", Stage = "s2", Handover = true }],
        Links = [new("close-line", "open-line"), new("leak-seen", "close-line"), new("pump-on", "leak-seen", Lag: 30, Clock: LagClock.Elapsed), new("handover", "pump-on")],
    };

    private static ReadingNeed Fall => new() { Id = "fall", Name = "Fall in ten minutes", Unit = "kPa", Min = 0, Max = 35, Tool = "fuel gauge", Where = "rear, under", StandsOn = [new("line", "tight")] };

    public static async Task<Server> Open()
    {
        var server = await Server.Start();
        await server.Does("ada", new SetPerson("mirek", "Mirek", Position.Apprentice) { WorksUnder = "inga" });
        await server.Does("mirek", new ComeIn("mirek"));
        server.Service<PinBook>().Set("mirek", Server.Pin);
        await server.Does("ada", new SetHazard(new() { Id = "fuel-pressure", Name = "Fuel under pressure", Sign = "W021", Ends = HazardEnd.WhenMadeSafe }));
        await server.Does("ada", new SetPlace(new() { Id = "bay-2", Name = "Bay 2", Kind = "bay", Area = new(5, 0, 4, 6) }));
        await server.Does("fritz", new TakeInCar("Plover saloon", Plan, "bay-2") { Car = Car });
        return server;
    }

    /// <summary>Inga opens the line and begins to close it; its seal is there.</summary>
    public static async Task<Server> Closing()
    {
        var server = await Open();
        await server.Does("fritz", new ArrivePart("seal", "shelf B2") { Car = Car });
        await server.Does("fritz", new CheckPart("seal", true, null) { Car = Car });
        await server.Does("inga", new StartTask([new CrewMember("inga")]) { Car = Car, Task = "open-line" });
        await server.Does("inga", new SignOffTask { Car = Car, Task = "open-line" });
        await server.Does("inga", new StartTask([new CrewMember("inga")]) { Car = Car, Task = "close-line" });
        return server;
    }

    /// <summary>The line is closed, measured and signed off by Inga: it waits for its second check.</summary>
    public static async Task<Server> ForSecondCheck()
    {
        var server = await Closing();
        await server.Does("inga", new LogReading("fall", "12", "kPa") { Car = Car, Task = "close-line" });
        await server.Does("inga", new SignOffTask { Car = Car, Task = "close-line" });
        return server;
    }

    /// <summary>The second check is given by Sol: the hold point is all that is left before the pump.</summary>
    public static async Task<Server> AtTheHold()
    {
        var server = await ForSecondCheck();
        await server.Does("sol", new SecondCheck(true, "looked at every joint") { Car = Car, Task = "close-line" });
        return server;
    }

    /// <summary>The command forms of a page: kind and names of fields.</summary>
    public static IEnumerable<(string Kind, string[] Fields)> Forms(string html) =>
        Form().Matches(html).Select(m => (m.Groups[1].Value, Name().Matches(m.Groups[2].Value).Select(n => n.Groups[1].Value).ToArray()));

    public static bool Offers(string html, string kind) => html.Contains($"data-command=\"{kind}\"", StringComparison.Ordinal);

    private static PlanTask Task(string id, string name, string stage) => new() { Id = id, Name = name, Stage = stage, Estimate = new(30, 60, 90) };

    [GeneratedRegex("<form[^>]* data-command=\"([a-z-]+)\"[^>]*>(.*?)</form>", RegexOptions.Singleline)]
    private static partial Regex Form();

    [GeneratedRegex(" name=\"([^\"]+)\"")]
    private static partial Regex Name();
}

using JobBoard.Domain.Commands;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Web.Tests.Pages;

namespace JobBoard.Web.Tests.Customer;

/// <summary>A shop in which every word somebody typed that is not for the customer is a canary, sent in as people send it.</summary>
internal static class CanaryShop
{
    public const string Bird = "canaryq";
    public const string Car = "plover-2";

    /// <summary>A word with a canary in it.</summary>
    public static string Word(string words) => $"{Bird} {words}";

    /// <summary>The plan with a canary in every id, name and text; the customer's names of its stages alone are theirs.</summary>
    private static Plan Plan { get; } = Theirs(new Planter(s => s.Length == 0 || s.Contains(' ', StringComparison.Ordinal) || char.IsAsciiLetterUpper(s[0]) ? Word(s) : $"{Bird}-{s}").Of(Workshop.Plan));

    public static async Task Plant(Server server)
    {
        foreach (var (id, position) in new[] { ("ada", Position.Owner), ("fritz", Position.Foreman), ("inga", Position.Technician), ("sol", Position.Technician) })
            await server.Does("ada", new SetPerson(id, Word(id), position));
        await server.Does("ada", new SetHazard(new() { Id = $"{Bird}-fuel-pressure", Name = Word("Fuel under pressure"), Caution = Word("Keep away."), Sign = "W021", Ends = Domain.Hazards.HazardEnd.WhenMadeSafe }));
        await server.Does("ada", new SetPlace(new() { Id = $"{Bird}-bay", Name = Word("Bay 2"), Kind = "bay", Area = new(5, 0, 4, 6) }));
        await server.Does("ada", new SetPlace(new() { Id = $"{Bird}-bay-3", Name = Word("Bay 3"), Kind = "bay", Area = new(12, 0, 4, 6) }));
        await server.Does("ada", new SetGear(new() { Id = $"{Bird}-hoist", Name = Word("Hoist"), Kind = Word("hoist"), RatedKg = 1000, Sweep = new(0, 0, 4, 8), OutOfUse = Word("bent") }));
        await server.Does("ada", new SetInstrument(new() { Id = $"{Bird}-gauge", Name = Word("Gauge"), Unit = "kPa", Uncertainty = 1 }));
        await server.Does("fritz", new TakeInCar("Plover saloon", Plan, $"{Bird}-bay") { Car = Car });
        await server.Does("fritz", new GiveDate(server.Runner.Now.AddDays(9), Word("at take-in")) { Car = Car });
    }

    /// <summary>Work, trouble and talk; ends with what the customer is told.</summary>
    public static async Task Work(Server server)
    {
        await server.Does("fritz", new OrderPart($"{Bird}-filter", server.Runner.Now.AddDays(2)) { Car = Car });
        await server.Does("fritz", new ArrivePart($"{Bird}-seal", Word("shelf")) { Car = Car });
        await server.Does("fritz", new CheckPart($"{Bird}-seal", false, Word("torn")) { Car = Car });
        await server.Does("inga", new StartTask([new CrewMember("inga")]) { Car = Car, Task = $"{Bird}-open-line" });
        await server.Does("inga", new ReviseEstimate(new(20, 40, 80), Word("rusted")) { Car = Car, Task = $"{Bird}-open-line" });
        await server.Does("sol", new RaiseStop(StopScope.Car, Word("fuel weep")) { Car = Car });
        var stop = Assert.Single(server.Runner.State.Stops).Key;
        foreach (var told in new[] { "inga", "sol", "fritz", "ada" }.Where(p => server.Runner.State.Stops[stop].Told.TryGetValue(p, out var heard) && heard is null)) await server.Does(told, new HearStop(stop));
        await server.Does("inga", new MakeSafe(stop, Word("blanked")));
        await server.Does("ada", new ReleaseStop(stop, Word("dry"), Word("seen")));
        await server.Does("inga", new StartTask([new CrewMember("inga")]) { Car = Car, Task = $"{Bird}-open-line" });
        await server.Does("inga", new SignOffTask { Car = Car, Task = $"{Bird}-open-line" });
        await server.Does("sol", new RaiseSnag($"{Bird}-sill", Word("scratch")) { Car = Car });
        await server.Does("sol", new FinishSnag($"{Bird}-sill", Word("painted")) { Car = Car });
        await server.Does("inga", new WriteNote(Word("seal looks old")) { Car = Car, Task = $"{Bird}-open-line" });
        await server.Does("inga", new WriteNote(Word("may be shown one day")) { Car = Car, ForCustomer = true });
        await server.Does("inga", new BeAway("inga", server.Runner.Now.AddDays(3), server.Runner.Now.AddDays(4), Word("dentist")));
        await server.Does("fritz", new MoveCar($"{Bird}-bay-3") { Car = Car });
        await server.Does("fritz", new AskCustomer($"{Bird}-colour", "Which colour?") { Car = Car });
        await server.Does("fritz", new TakeAnswer($"{Bird}-colour", Word("blue, and they grumbled")) { Car = Car });
        await server.Does("fritz", new GiveDate(server.Runner.Now.AddDays(12), Word("supplier late")) { Car = Car, WordsForCustomer = "We wait for a seal." });
        await server.Does("inga", new StartTask([new CrewMember("inga")]) { Car = "heron", Task = "a" });
        await server.Does("fritz", new WriteNote("The sill is sound.") { Car = Car, ForCustomer = true });
    }

    private static Plan Theirs(Plan planted) => planted with
    {
        Format = Workshop.Plan.Format,
        Stages = [.. planted.Stages.Select((s, i) => s with { CustomerName = i == 0 ? "Line" : "Pump" })],
        Holds = [.. planted.Holds.Select(h => h with { Qualification = null, CustomerWords = null })],
        Tasks = [.. planted.Tasks.Select((t, i) => t with { Place = Workshop.Plan.Tasks[i].Place, Crew = Workshop.Plan.Tasks[i].Crew, Estimate = Workshop.Plan.Tasks[i].Estimate, Readings = [.. t.Readings.Select(r => r with { Unit = "kPa", Min = 0, Max = 737.25m })] })],
    };
}

using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Shop.Running;
using JobBoard.Shop.Templates;

namespace JobBoard.Shop.Demo;

/// <summary>
/// The made-up shop of the seed files. Its people, places and things are commands; its cars are carried to where they stand by
/// a <see cref="ScriptedCrew"/>; what is in hand now is commands again, at times counted back from now.
/// </summary>
/// <param name="seedData">The folder with <c>demo</c> and <c>shop</c> in it.</param>
/// <param name="plans">A plan template by its id, or nothing.</param>
public sealed class DemoShop(string seedData, Func<string, Plan?> plans) : IDemo
{
    /// <summary>PINs of the demo's people, by person.</summary>
    public ImmutableSortedDictionary<string, string> Pins => DemoFiles.Read<ImmutableSortedDictionary<string, string>>(Demo("pins.json"));

    /// <inheritdoc/>
    public async Task<ImmutableSortedDictionary<string, string>> Load(ShopRunner runner, ShopClock clock)
    {
        var past = new ShopInMemory(runner.State, runner.Rules);
        await Load(past.Door, clock.GetUtcNow()).ConfigureAwait(false);
        foreach (var some in past.Accepted.Chunk(ShopRunner.QueueLength / 2))
        {
            var answers = some.Select(c => (c.Envelope, Answer: runner.SendAt(c.Envelope, c.At))).ToArray();
            foreach (var (envelope, answer) in answers)
            {
                if (await answer.ConfigureAwait(false) is not Outcome.Accepted) throw new DemoException($"{envelope.Command} was accepted in memory, but not here.");
            }
        }

        return Pins;
    }

    /// <summary>What a crew is told that carries the scene on, up to a first start.</summary>
    /// <exception cref="DemoException">The file is wrong.</exception>
    public CrewOrders CarryOn()
    {
        var cars = DemoFiles.Read<DemoCars>(Demo("cars.json"));
        return new() { Seed = cars.Seed, Cars = [.. cars.CarriedOn.Select(c => new CarryTo(c.Car) { Reach = c.Reach })], AmongOthers = true };
    }

    /// <summary>The way into a running shop whose clock is held by whoever sends.</summary>
    public static CrewDoor DoorOf(ShopRunner runner, ShopClock clock) => new(() => runner.State, e => Send(runner, e), clock.Hold);

    /// <summary>Sets up the shop without any car: people, places, gear, instruments, hazards and what keeps apart. Everybody is out.</summary>
    /// <param name="door">An empty shop.</param>
    /// <param name="at">When.</param>
    /// <param name="now">What times in the files are counted from.</param>
    /// <exception cref="DemoException">A file is wrong, or a command was refused.</exception>
    public async Task SetUp(CrewDoor door, DateTimeOffset at, DateTimeOffset now)
    {
        var times = Times(now);
        var (owner, commands) = ShopCommands(times);
        door.SetNow(at);
        foreach (var (place, command) in commands.Concat(Things())) await Send(door, place, owner, command, at).ConfigureAwait(false);
    }

    /// <summary>Loads everything: the shop, its past, and the scene at <paramref name="now"/>.</summary>
    /// <returns>What the scripted crew did.</returns>
    /// <exception cref="DemoException">A file is wrong, a command was refused, or a car did not get where it is to stand.</exception>
    /// <exception cref="CrewException">The rules and the crew do not agree.</exception>
    public async Task<CrewReport> Load(CrewDoor door, DateTimeOffset now)
    {
        now = DateTimeOffset.FromUnixTimeSeconds(now.ToUnixTimeSeconds());
        var times = Times(now);
        var cars = DemoFiles.Read<DemoCars>(Demo("cars.json"));
        var begins = cars.Cars.Select(c => Time(times, c.TakenIn, c.Car)).DefaultIfEmpty(now.AddDays(-1)).Min().AddMinutes(-30);
        await SetUp(door, begins, now).ConfigureAwait(false);
        var crew = new ScriptedCrew(door, Orders(cars), begins);
        foreach (var (at, command) in Meanwhile(cars, times).OrderBy(c => c.At))
        {
            await crew.CarryOn(at).ConfigureAwait(false);
            await Send(door, times, command, at).ConfigureAwait(false);
        }

        var report = await crew.CarryOn(times.Read(cars.WorkUntil)).ConfigureAwait(false);
        if (!report.Open.IsEmpty) throw new DemoException($"cars.json: not there by {cars.WorkUntil}: {string.Join(" | ", report.Open)}");
        foreach (var command in cars.Scene.Select((c, i) => Command("cars.json, scene", i, c, "-1m"))) await Send(door, times, command, Time(times, command.At, command.Place)).ConfigureAwait(false);
        door.SetNow(now);
        return report;
    }

    internal static async Task<ImmutableArray<WaitingOn>> Send(ShopRunner runner, Envelope envelope) => await runner.Send(envelope).ConfigureAwait(false) switch
    {
        Outcome.Accepted => [],
        Outcome.Refused refused => refused.Reasons,
        var other => [new(RuleBook.Ids.Input, other.ToString())],
    };

    private string Demo(string file) => Path.Combine(seedData, "demo", file);

    private DemoTimes Times(DateTimeOffset now) =>
        new(now, TimeZoneInfo.FindSystemTimeZoneById(DemoFiles.Node(Demo("shop.json"))["zone"]!.GetValue<string>()));

    private (string Owner, IEnumerable<(string Place, Command Command)> Commands) ShopCommands(DemoTimes times)
    {
        var commands = DemoFiles.Node(Demo("shop.json"))["commands"]!.AsArray().Select((c, i) => Command("shop.json", i, c, "-0m")).ToArray();
        return (commands[0].Actor, commands.Select(c => (c.Place, c.ToCommand(times, plans))));
    }

    private IEnumerable<(string Place, Command Command)> Things() => UsualThings.Read(Path.Combine(seedData, "shop"));

    private static CrewOrders Orders(DemoCars cars) => new()
    {
        Seed = cars.Seed,
        Cars = [.. cars.Cars.Select(c => new CarryTo(c.Car) { Reach = c.Reach, Short = c.Short })],
        Readings = cars.Cars.SelectMany(c => c.Readings.Select(r => KeyValuePair.Create($"{c.Car}/{r.Key}", r.Value))).ToImmutableDictionary(),
    };

    /// <summary>Take-ins and what else happens while the crew works.</summary>
    private static IEnumerable<(DateTimeOffset At, DemoCommand Command)> Meanwhile(DemoCars cars, DemoTimes times)
    {
        foreach (var car in cars.Cars)
        {
            var members = new JsonObject { ["car"] = car.Car, ["name"] = car.Name, ["plan"] = car.Plan, ["place"] = car.Place };
            yield return (Time(times, car.TakenIn, car.Car), new("cars.json, " + car.Car, car.TakenIn, car.By, "take-in-car", members));
        }

        foreach (var command in cars.Meanwhile.Select((c, i) => Command("cars.json, meanwhile", i, c, "-1d 12:00"))) yield return (Time(times, command.At, command.Place), command);
    }

    private static DateTimeOffset Time(DemoTimes times, string text, string place)
    {
        try
        {
            return times.Read(text);
        }
        catch (FormatException e)
        {
            throw new DemoException($"{place}: {e.Message}", e);
        }
    }

    private static DemoCommand Command(string file, int index, JsonNode? node, string usually) =>
        DemoCommand.Read(string.Create(CultureInfo.InvariantCulture, $"{file} {index + 1}"), node, usually);

    private async Task Send(CrewDoor door, DemoTimes times, DemoCommand command, DateTimeOffset at)
    {
        door.SetNow(at);
        await Send(door, command.Place, command.Actor, command.ToCommand(times, plans), at, command.Id).ConfigureAwait(false);
    }

    private static async Task Send(CrewDoor door, string place, string actor, Command command, DateTimeOffset at, Guid? id = null)
    {
        var envelope = new Envelope(id ?? new DemoCommand(place, "", actor, "", []).Id, actor, at, null, command);
        var against = await door.Send(envelope).ConfigureAwait(false);
        if (!against.IsEmpty) throw new DemoException($"{place} was refused: {string.Join("; ", against.Select(w => $"{w.Words} [{w.Rule}]"))}");
    }
}

using System.Buffers.Binary;
using System.Globalization;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Benchmarks.Kill;

/// <summary>
/// One person who sends a letter, waits for the answer and sends the next: notes, coming in and going out, now and then something
/// the rules refuse, now and then the same letter again. A letter that got no answer is the first to be sent to the next process.
/// </summary>
internal sealed class KillClient(int number, int seed, Ledger ledger)
{
    public const string Car = "heron";
    public const string Owner = "ada";

    private readonly Random _random = new(HashCode.Combine(seed, number));
    private Letter? _unanswered;
    private int _sent;

    private string Person => string.Create(CultureInfo.InvariantCulture, $"p-{number}");

    /// <summary>Letters that make the shop the clients need.</summary>
    public static IEnumerable<Letter> Shop(int clients)
    {
        yield return new(Id(-1, 0), Owner, new SetPerson(Owner, "Ada", Position.Owner));
        yield return new(Id(-1, 1), Owner, new SetPlace(new() { Id = "bay-1", Name = "Bay 1", Kind = "bay", Area = new(0, 0, 4, 6) }));
        yield return new(Id(-1, 2), Owner, new ComeIn(Owner));
        yield return new(Id(-1, 3), Owner, new TakeInCar("Heron coupe", Plan, "bay-1") { Car = Car });
        for (var i = 0; i < clients; i++) yield return new(Id(-1, 4 + i), Owner, new SetPerson($"p-{i}", $"P {i}", Position.Technician));
    }

    /// <summary>Sends until the other side is gone or the time is up.</summary>
    public async Task Work(ShopProcess shop, bool again, CancellationToken stop)
    {
        using var line = await shop.Connect();
        while (!stop.IsCancellationRequested)
        {
            var letter = _unanswered ??= Next();
            if (await line.Ask(letter) is not { } reply) return;
            if (!ledger.Note(letter, reply)) continue;
            _unanswered = null;
            if (again && _random.Next(10) == 0 && await line.Ask(letter) is { } second) ledger.Note(letter, second);
        }
    }

    private Letter Next()
    {
        _sent++;
        Command command = _random.Next(10) switch
        {
            < 6 => new WriteNote(string.Create(CultureInfo.InvariantCulture, $"note {_sent} of client {number}")) { Car = Car },
            < 9 => _random.Next(2) == 0 ? new ComeIn(Person) : new GoOut(Person),
            _ => new StartTask([new CrewMember(Person)]) { Car = Car, Task = "b" },
        };
        return new(Id(number, _sent), Person, command);
    }

    private static Guid Id(int client, int count)
    {
        Span<byte> bytes = stackalloc byte[16];
        BinaryPrimitives.WriteInt32BigEndian(bytes, client);
        BinaryPrimitives.WriteInt32BigEndian(bytes[12..], count);
        return new(bytes, bigEndian: true);
    }

    // The second task waits on the first, which nobody starts: a start of it is refused.
    private static Plan Plan => new()
    {
        Id = "p",
        Name = "p",
        Stages = [new("s", "Stage")],
        Tasks = [new() { Id = "a", Name = "Fuel line", Stage = "s", Estimate = new(30, 60, 90) }, new() { Id = "b", Name = "Leak test", Stage = "s", Estimate = new(30, 60, 90) }],
        Links = [new("b", "a")],
    };
}

using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Shop.Commands;

namespace JobBoard.Shop.Demo;

/// <summary>The crew's clock and voice, and its luck: made up, but the same for the same seed.</summary>
internal sealed class CrewSession(CrewDoor door, CrewOrders orders, DateTimeOffset now)
{
    private static readonly TimeSpan AskAgain = TimeSpan.FromMinutes(5);

    private readonly Dictionary<string, int> _kinds = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (DateTimeOffset At, ImmutableArray<WaitingOn> Against)> _refused = new(StringComparer.Ordinal);
    private int _tried;
    private (ShopState Of, ShopHours Hours)? _hours;

    public CrewOrders Orders => orders;

    public ShopState Shop => door.Look();

    public DateTimeOffset Now { get; private set; } = now;

    /// <summary>Commands accepted.</summary>
    public int Sent { get; private set; }

    public ImmutableSortedDictionary<string, int> Kinds => _kinds.ToImmutableSortedDictionary(StringComparer.Ordinal);

    public ShopHours Hours
    {
        get
        {
            var shop = Shop;
            if (_hours is not { } known || known.Of.Zone != shop.Zone || known.Of.Hours != shop.Hours || known.Of.Closed != shop.Closed)
                _hours = known = (shop, ShopHours.Of(shop));
            return known.Hours;
        }
    }

    /// <summary>People who are in, foremen and owners last: they are wanted for holds and checks.</summary>
    public IEnumerable<Person> In => Shop.People.Values.Where(p => p.IsIn).OrderBy(p => p.Position > Position.Technician ? 1 : 0);

    /// <summary>Tasks (car/task) that are the crew's own: begun by it, or in hand when it came.</summary>
    public HashSet<string> Own { get; } = new(StringComparer.Ordinal);

    /// <summary>Whether a task is the crew's business: among others only its own are.</summary>
    public bool IsOwn(string car, string task) => !orders.AmongOthers || Own.Contains(car + "/" + task);

    /// <summary>Goes on to a time, or as far as it got when somebody else did something first.</summary>
    public async Task GoOn(DateTimeOffset to, CrewWait why)
    {
        if (door.Wait is { } wait) Now = await wait(to, why).ConfigureAwait(false);
        else Now = to > Now ? to : Now;
    }

    /// <summary>Sends a command that is expected to be accepted; among others it may be refused.</summary>
    /// <returns>Whether it was accepted.</returns>
    public async Task<bool> Do(string actor, Command command)
    {
        var against = await Try(actor, command).ConfigureAwait(false);
        return against.IsEmpty || (orders.AmongOthers ? false : throw Unexpected(actor, command, against));
    }

    /// <summary>Sends a command; gives what stands against it.</summary>
    public async Task<ImmutableArray<WaitingOn>> Try(string actor, Command command)
    {
        var kind = CommandJson.KindOf(command);
        var key = orders.AmongOthers ? $"{actor} {kind} {CommandJson.Canonical(command)}" : "";
        if (_refused.TryGetValue(key, out var last) && Now - last.At < AskAgain) return last.Against;
        if (door.Wait is null) door.SetNow(Now);
        else await GoOn(Now, CrewWait.Pause).ConfigureAwait(false);
        var against = await door.Send(new(Id(), actor, Now, null, command)).ConfigureAwait(false);
        _tried++;
        if (!against.IsEmpty)
        {
            if (orders.AmongOthers) _refused[key] = (Now, against);
            return against;
        }

        Sent++;
        _kinds[kind] = _kinds.GetValueOrDefault(kind) + 1;
        Now = Now.AddSeconds(4 + (int)(12 * Luck("pause " + Sent)));
        return [];
    }

    public CrewException Unexpected(string actor, Command command, ImmutableArray<WaitingOn> against) =>
        new($"{Now:u} {actor}, {CommandJson.KindOf(command)} {CommandJson.Canonical(command)}: {string.Join(" ", against.Select(w => $"[{w.Rule}] {w.Words}"))}");

    /// <summary>A number from 0 to below 1 that depends on the seed and what it is about alone.</summary>
    public double Luck(string about) => BinaryPrimitives.ReadUInt32LittleEndian(Hash(about)) / 4294967296.0;

    private Guid Id() => new(Hash($"command {Now.UtcTicks} {_tried}").AsSpan(0, 16));

    private byte[] Hash(string about) => SHA256.HashData(Encoding.UTF8.GetBytes($"{orders.Seed} {about}"));
}

using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using JobBoard.Storage;
using JobBoard.Storage.SignIn;

namespace JobBoard.Web.SignIn;

/// <summary>A customer's link.</summary>
/// <param name="Token">What is kept of its token.</param>
/// <param name="Car">The one car it shows.</param>
public sealed record CustomerLink(TokenRow Token, string Car)
{
    /// <summary>Names it.</summary>
    public string Id => Token.Id;
}

/// <summary>
/// Links by which a customer looks at their own car, read only. The token is shown once and kept hashed; a link runs out and can
/// be withdrawn, and then says no more than one that never was.
/// </summary>
public sealed class CustomerLinks(ShopDatabase database, TimeProvider clock)
{
    /// <summary>Longest time a link may work.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromDays(366);

    private const string Kind = "customer";
    private readonly TokenStore _tokens = new(database);
    private readonly CustomerLinkStore _cars = new(database);
    private readonly Lock _gate = new();
    private FrozenDictionary<string, CustomerLink>? _known;

    /// <summary>Raised when a link was withdrawn: open pages are told at once.</summary>
    public event Action? Withdrawn;

    /// <summary>The links of a car that still work, the newest first.</summary>
    public ImmutableArray<CustomerLink> Of(string car)
    {
        var now = Now;
        return [.. Known().Values.Where(l => l.Car == car && l.Token.OpensAt(now)).OrderByDescending(l => l.Token.CreatedAt)];
    }

    /// <summary>Makes a link; the token returned is the only copy.</summary>
    /// <param name="car">The car it shows.</param>
    /// <param name="label">Whom it is for, as the shop says it.</param>
    /// <param name="until">When it runs out: later than now, at most <see cref="Longest"/>.</param>
    public string Make(string car, string label, DateTimeOffset until)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(until, clock.GetUtcNow() + Longest);
        var id = Guid.CreateVersion7().ToString("N", CultureInfo.InvariantCulture);
        lock (_gate)
        {
            var token = _tokens.Create(id, Kind, label, Now, until.ToUnixTimeMilliseconds());
            _cars.Set(id, car);
            _known = null;
            return token;
        }
    }

    /// <summary>Withdraws a link of a car; its open pages say so at once. False where that car has no such link.</summary>
    public bool Withdraw(string car, string id)
    {
        if (!Known().TryGetValue(id, out var link) || link.Car != car) return false;
        bool done;
        lock (_gate) (done, _known) = (_tokens.Withdraw(id, Now), null);
        Withdrawn?.Invoke();
        return done;
    }

    /// <summary>The car of a link that still works; nothing otherwise.</summary>
    public string? CarOf(string? id) => id is not null && Known().TryGetValue(id, out var link) && link.Token.OpensAt(Now) ? link.Car : null;

    /// <summary>The link of a token that still works; nothing for one that is unknown, has run out or was withdrawn.</summary>
    public CustomerLink? Find(string? token) =>
        token is { Length: > 0 and <= 100 } && _tokens.Find(token, Kind, Now) is { } row && Known().TryGetValue(row.Id, out var link) ? link : null;

    /// <summary>Notes that its page was opened.</summary>
    public void NoteUse(string id)
    {
        lock (_gate)
        {
            _tokens.NoteUse(id, Now);
            _known = null;
        }
    }

    // Read and written under one lock: a list read before a link was withdrawn is never kept after it.
    private FrozenDictionary<string, CustomerLink> Known()
    {
        lock (_gate)
        {
            if (_known is not null) return _known;
            var cars = _cars.All();
            return _known = _tokens.List(Kind).Where(t => cars.ContainsKey(t.Id)).ToFrozenDictionary(t => t.Id, t => new CustomerLink(t, cars[t.Id]), StringComparer.Ordinal);
        }
    }

    private long Now => clock.GetUtcNow().ToUnixTimeMilliseconds();
}

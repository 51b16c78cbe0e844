using JobBoard.Domain.Commands;
using JobBoard.Domain.People;
using JobBoard.Domain.Work;

namespace JobBoard.Shop.Demo;

/// <summary>Coming in and going out: everybody who is not away is in while the shop is open, lunch included.</summary>
internal sealed class CrewShift(CrewSession session)
{
    private static readonly TimeSpan Night = TimeSpan.FromHours(3);
    private readonly HashSet<string> _cameIn = new(StringComparer.Ordinal);
    private bool _lockedUp;

    /// <summary>Whether work is done at this moment.</summary>
    public bool IsOpen => Opening().From <= session.Now;

    /// <summary>When the shop next opens or closes.</summary>
    public DateTimeOffset NextEdge
    {
        get
        {
            var (from, to) = Opening();
            return from > session.Now ? from : to;
        }
    }

    /// <summary>Whether the shop stays closed for hours from now.</summary>
    public bool IsNight => Opening().From - session.Now >= Night;

    /// <summary>The end of the day's last opening, breaks overlooked.</summary>
    public DateTimeOffset DayEnd
    {
        get
        {
            DateTimeOffset? end = null;
            foreach (var (from, to) in session.Hours.OpenFrom(session.Now))
            {
                if (end is not null && from - end >= Night) break;
                end = to;
            }

            return end ?? DateTimeOffset.MaxValue;
        }
    }

    public async Task ComeIn()
    {
        _lockedUp = false;
        _cameIn.UnionWith(session.In.Select(p => p.Id));
        foreach (var person in session.Shop.People.Values.Where(p => p is { IsIn: false, Left: false, Outside: false } && !IsAway(p)))
        {
            // Among others once a day: who went out since has their reasons.
            if (!session.Orders.AmongOthers || _cameIn.Add(person.Id)) await session.Do(person.Id, new ComeIn(person.Id)).ConfigureAwait(false);
        }
    }

    public async Task GoOut()
    {
        // Among others once an evening: who comes in again at night may.
        if (session.Orders.AmongOthers && _lockedUp) return;
        _lockedUp = true;
        foreach (var person in session.Shop.People.Values.Where(p => p.IsIn && !HasOthersWork(p)))
            await session.Do(person.Id, new GoOut(person.Id)).ConfigureAwait(false);
        _cameIn.Clear();
    }

    private bool HasOthersWork(Person person) =>
        session.Orders.AmongOthers && Crewing.InHand(session.Shop, person.Id).Any(w => !session.IsOwn(w.Car.Id, w.Task.Id));

    private bool IsAway(Person person) => person.Absences.Any(a => a.From <= session.Now && session.Now < a.To);

    private (DateTimeOffset From, DateTimeOffset To) Opening()
    {
        if (session.Shop.Hours.IsEmpty) return (DateTimeOffset.MinValue, DateTimeOffset.MaxValue);
        foreach (var opening in session.Hours.OpenFrom(session.Now)) return opening;
        throw new CrewException("The shop does not open again.");
    }
}

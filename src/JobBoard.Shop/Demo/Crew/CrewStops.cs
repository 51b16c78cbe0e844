using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;

namespace JobBoard.Shop.Demo;

/// <summary>
/// Stops while others work in the shop too. Everybody told says that they heard, one after another. A stop that stood when the
/// crew came is its own: it is made safe, then the foreman releases it. Any other waits for the people who raised it.
/// </summary>
internal sealed class CrewStops(CrewSession session)
{
    private static readonly TimeSpan Between = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan ToMakeSafe = TimeSpan.FromMinutes(8);
    private static readonly TimeSpan ToRelease = TimeSpan.FromMinutes(16);

    private readonly DateTimeOffset _came = session.Now;
    private readonly ImmutableHashSet<string> _own = [.. session.Shop.Stops.Keys];
    private DateTimeOffset _saidAt = session.Now;

    /// <summary>When somebody of the crew next has a word to say to a stop, or nothing.</summary>
    public DateTimeOffset? NextAt => session.Shop.Stops.Values.Select(Due).Min();

    /// <summary>Whether a stop that is not the crew's holds a car or some of it.</summary>
    public bool Hold(CarBoard car) => session.Shop.Stops.Values.Any(s => !_own.Contains(s.Id)
        && (s.Scope == StopScope.Shop || s.Car == car.Id || (s.Place is not null && s.Place == car.Place)));

    /// <summary>Says what is due.</summary>
    public async Task Look()
    {
        foreach (var stop in session.Shop.Stops.Values.Where(s => Due(s) <= session.Now).ToArray())
        {
            _saidAt = session.Now;
            if (NotHeard(stop) is { } person) await session.Do(person, new HearStop(stop.Id)).ConfigureAwait(false);
            else if (stop.Safe is null) await MakeSafe(stop).ConfigureAwait(false);
            else await Release(stop).ConfigureAwait(false);
        }
    }

    private DateTimeOffset? Due(Stop stop)
    {
        if (NotHeard(stop) is not null) return Later(stop.RaisedAt + Between, _saidAt + Between);
        return !_own.Contains(stop.Id) ? null : Later(_came + (stop.Safe is null ? ToMakeSafe : ToRelease), _saidAt + Between);
    }

    private static DateTimeOffset Later(DateTimeOffset a, DateTimeOffset b) => a > b ? a : b;

    private string? NotHeard(Stop stop) => stop.Told.Where(t => t.Value is null && session.Shop.People[t.Key].IsIn).Select(t => t.Key).FirstOrDefault();

    private async Task MakeSafe(Stop stop)
    {
        if (stop.Told.Keys.FirstOrDefault(p => session.Shop.People[p] is { IsIn: true, Position: > Position.Apprentice }) is not { } by) return;
        var command = new MakeSafe(stop.Id, "Pressure let down, work left as it is, nobody near it")
        {
            Answers = [.. Stopping.InScope(session.Shop, stop).DistinctBy(d => d.Key).Select(d => new HazardAnswer(d.Key, Ends(d)))],
            Items = Items(stop),
        };
        await session.Do(by, command).ConfigureAwait(false);
    }

    /// <summary>A danger of its own that ends by word has ended; what comes from a condition stands as long as that.</summary>
    private bool Ends(Danger danger) => danger.Standing is not null && session.Shop.Hazards.GetValueOrDefault(danger.Hazard!)?.Ends == HazardEnd.WhenMadeSafe;

    private ImmutableSortedDictionary<string, string> Items(Stop stop) =>
        (from work in Stopping.InHand(session.Shop)
         where Looks.Covers(stop, work.Car, work.Task.Id, work.Place)
         let task = PlanIndex.Of(work.Car.Plan).Task(work.Task.Id)
         where task is not null
         from change in task.Changes
         where Looks.HasToBeSaid(session.Shop, work.Car, change)
         select KeyValuePair.Create($"{work.Car.Id}/{change.Item}", work.Car.Items[change.Item].Condition))
        .DistinctBy(p => p.Key).ToImmutableSortedDictionary(StringComparer.Ordinal);

    private async Task Release(Stop stop)
    {
        foreach (var person in session.In.Where(p => p.Position >= Position.Foreman))
        {
            if (await session.Do(person.Id, new ReleaseStop(stop.Id, "Joint made new, wiped and looked at dry", "Looked at on the car, with who works on it")).ConfigureAwait(false)) return;
        }
    }
}

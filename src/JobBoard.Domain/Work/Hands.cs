using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Work;

/// <summary>Who has what in hand that ties them, by person: found once for each state of a shop's cars.</summary>
internal sealed class Hands
{
    private static readonly ConditionalWeakTable<ImmutableSortedDictionary<string, CarBoard>, Hands> Made = [];

    private readonly Dictionary<string, List<(CarBoard Car, PlanTask Task)>> _byPerson = new(StringComparer.Ordinal);

    private Hands(ImmutableSortedDictionary<string, CarBoard> cars)
    {
        foreach (var car in cars.Values)
        {
            foreach (var state in Going.On(car).InHand)
            {
                if (PlanIndex.Of(car.Plan).Task(state.Id) is { NowAndThen: false } task) Add(car, task, state);
            }
        }
    }

    public static Hands Of(ShopState shop) => Made.GetValue(shop.Cars, cars => new Hands(cars));

    /// <summary>In the order of the cars, then of the tasks' ids.</summary>
    public IReadOnlyList<(CarBoard Car, PlanTask Task)> On(string person) => _byPerson.TryGetValue(person, out var list) ? list : [];

    private void Add(CarBoard car, PlanTask task, TaskState state)
    {
        foreach (var person in state.Crew.Select(m => m.Person).Distinct(StringComparer.Ordinal))
        {
            if (!_byPerson.TryGetValue(person, out var list)) _byPerson.Add(person, list = []);
            list.Add((car, task));
        }
    }
}

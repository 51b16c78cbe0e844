using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;

namespace JobBoard.Domain.Work;

/// <summary>
/// Why no crew can be made, by the crew asked for: tasks of one plan ask for a few different crews, and for a task nobody is on
/// the answer depends on nothing else of it. For one state of the shop at one moment, by one thread.
/// </summary>
public sealed class CrewBook
{
    private readonly Dictionary<(string Crew, bool NowAndThen), ImmutableArray<WaitingOn>> _known = [];

    /// <summary>What stands against every crew; empty when one can be made.</summary>
    internal ImmutableArray<WaitingOn> Against(ShopState shop, CarBoard car, PlanTask task, DateTimeOffset now, RuleBook rules)
    {
        var key = (PlanIndex.Of(car.Plan).CrewOf(task), task.NowAndThen);
        if (!_known.TryGetValue(key, out var against)) _known.Add(key, against = Crewing.AgainstAny(shop, car, task, now, rules, null));
        return against;
    }
}

using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;

namespace JobBoard.Domain.Rules;

/// <summary>What screens ask about readings, by the same code as the rules.</summary>
public static class Looks
{
    /// <summary>Whether the latest reading that stands holds what rests on it.</summary>
    public static bool Holds(CarBoard car, PlanTask task, ReadingNeed need) => HoldRules.Holding(car, task, need) is not null;

    /// <summary>The latest reading that has not lapsed.</summary>
    public static Reading? Latest(CarBoard car, string task, string reading) => HoldRules.Latest(car, task, reading);

    /// <summary>The latest reading, lapsed ones included.</summary>
    public static Reading? LatestOfAll(CarBoard car, string task, string reading) =>
        car.Readings.TryGetValue(task + "/" + reading, out var all) ? all.OrderBy(r => r.At).ThenBy(r => r.Seq).LastOrDefault() : null;

    /// <summary>What still stands against signing a task off.</summary>
    public static IEnumerable<WaitingOn> MissingForSignOff(TaskQuestion question) => Finishing.Missing(question);

    /// <summary>Whether a person may check a task a second time.</summary>
    public static bool MayCheck(TaskQuestion question, People.Person person) => Finishing.MayCheck(question, person);

    /// <summary>Whether a person worked on a task, signed it off or took one of its readings: then they release and check nothing of it.</summary>
    public static bool IsOwnWork(CarBoard car, string task, string person) => Finishing.OwnWork(car, task).Contains(person);

    /// <summary>Whether a person was on the work a stop stopped: then they do not release it.</summary>
    public static bool IsOwnWork(ShopState shop, Holds.Stop stop, string person) => StopDecisions.OwnWork(shop, stop).Contains(person);

    /// <summary>Whether a stop's scope holds a task.</summary>
    public static bool Covers(Holds.Stop stop, CarBoard car, string task, string? place) => HoldRules.Covers(stop, car, task, place);

    /// <summary>Whether whoever leaves a change on the way has to say what condition the item is in.</summary>
    public static bool HasToBeSaid(ShopState shop, CarBoard car, Change change) => Loads.HasToBeSaid(shop, car, change);

    /// <summary>What made evidence lapse, in words.</summary>
    public static string Cause(TaskQuestion question, Work.Lapse lapse) => HoldRules.Cause(question, lapse);
}

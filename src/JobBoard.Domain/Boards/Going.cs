using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Boards;

/// <summary>
/// The few things of a car that the rules ask about at every task: found once for each state of the car and kept as long as it.
/// </summary>
internal sealed class Going
{
    private static readonly ConditionalWeakTable<CarBoard, Going> Made = [];

    private readonly Dictionary<string, List<(PlanTask Task, TaskState State)>> _inWork = new(StringComparer.Ordinal);

    private Going(CarBoard car)
    {
        InHand = [.. car.Tasks.Values.Where(t => t.Status == WorkStatus.InHand)];
        Unsettled = [.. car.Tasks.Values.Where(t => t.Reopened || t.SignedOff is { LapsedBy.Holds: true } || car.Questions.ContainsKey(t.Id)).OrderBy(t => Place(car, t.Id))];
        NotInLimits = [.. car.Readings.Where(r => r.Value.Any(x => x.Verdict != Verdict.InLimits)).SelectMany(r => Needed(car, r.Key)).OrderBy(r => Place(car, r.Task.Id)).ThenBy(r => r.Task.Readings.IndexOf(r.Need))];
        foreach (var state in InHand) AddInWork(PlanIndex.Of(car.Plan).Task(state.Id), state);
    }

    /// <summary>Tasks in hand that change an item, by id.</summary>
    public IReadOnlyList<(PlanTask Task, TaskState State)> InWork(string item) => _inWork.TryGetValue(item, out var found) ? found : [];

    /// <summary>Tasks in hand, by id.</summary>
    public ImmutableArray<TaskState> InHand { get; }

    /// <summary>Tasks open again, lapsed so that it holds, or with an open question, in the order of the plan.</summary>
    public ImmutableArray<TaskState> Unsettled { get; }

    /// <summary>Readings that were out or too close at some time, in the order of the plan.</summary>
    public ImmutableArray<(PlanTask Task, ReadingNeed Need)> NotInLimits { get; }

    public static Going On(CarBoard car) => Made.GetValue(car, c => new Going(c));

    private void AddInWork(PlanTask? task, TaskState state)
    {
        foreach (var item in task?.Changes.Select(c => c.Item).Distinct(StringComparer.Ordinal) ?? [])
        {
            if (!_inWork.TryGetValue(item, out var found)) _inWork.Add(item, found = []);
            found.Add((task!, state));
        }
    }

    private static int Place(CarBoard car, string task)
    {
        var tasks = car.Plan.Tasks;
        for (var i = 0; i < tasks.Length; i++)
        {
            if (tasks[i].Id == task) return i;
        }

        return tasks.Length;
    }

    private static IEnumerable<(PlanTask Task, ReadingNeed Need)> Needed(CarBoard car, string key) =>
        key.Split('/') is [var id, var reading] && PlanIndex.Of(car.Plan).Task(id) is { } task && task.Readings.FirstOrDefault(r => r.Id == reading) is { } need ? [(task, need)] : [];
}

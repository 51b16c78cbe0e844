using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>
/// Whether a task can start: the one evaluation behind "may I?", "why not?" and "do it".
/// </summary>
public static class StartCheck
{
    /// <summary>What a task would start with.</summary>
    /// <param name="Crew">Who, or nothing to ask whether any crew could be made.</param>
    /// <param name="Place">The place asked for when not at the car, or nothing for any free one.</param>
    /// <param name="TreatFree">People whose work in hand is looked at as if it were left.</param>
    public sealed record With(ImmutableArray<CrewMember>? Crew = null, string? Place = null, IReadOnlySet<string>? TreatFree = null);

    /// <summary>Everything the task is waiting on; empty when it can start.</summary>
    public static ImmutableArray<WaitingOn> Of(ShopState shop, string car, string task, DateTimeOffset now, RuleBook rules, With? with = null)
    {
        if (!shop.Cars.TryGetValue(car, out var board)) return [new(RuleBook.Ids.Input, $"There is no car '{car}'.", About: "car")];
        if (PlanIndex.Of(board.Plan).Task(task) is not { } found) return [new(RuleBook.Ids.Input, $"{board.Name} has no task '{task}'.", About: "task")];
        return Of(new(shop, board, found, now, rules, ShopHours.Of(shop)), with ?? new());
    }

    /// <summary>The same, when car and task are at hand.</summary>
    public static ImmutableArray<WaitingOn> Of(TaskQuestion question, With with)
    {
        var waiting = ImmutableArray.CreateBuilder<WaitingOn>();
        waiting.AddRange(StateRules.Of(question));
        waiting.AddRange(OrderRules.Of(question));
        waiting.AddRange(HoldRules.Of(question, ResourceRules.PlaceOf(question, with.Place)));
        waiting.AddRange(ConditionRules.Of(question));
        waiting.AddRange(ResourceRules.Of(question, with));
        waiting.AddRange(DangerRules.Of(question, with));
        return waiting.DrainToImmutable();
    }
}

/// <summary>A question about one task at one moment.</summary>
public sealed record TaskQuestion(ShopState Shop, CarBoard Car, PlanTask Task, DateTimeOffset Now, RuleBook Rules, ShopHours Hours)
{
    private static readonly ConditionalWeakTable<ImmutableSortedDictionary<string, Person>, StrongBox<ImmutableArray<string>>> Leading = [];

    // A hold point asked about as if it were a task has none.
    private readonly TaskState? _state = Car.Tasks.GetValueOrDefault(Task.Id);

    /// <summary>The compiled plan.</summary>
    public PlanIndex Index { get; } = PlanIndex.Of(Car.Plan);

    /// <summary>The task's present state.</summary>
    public TaskState State => _state ?? Car.Tasks[Task.Id];

    /// <summary>Answers about crews shared with other questions about the same shop at the same moment, or nothing.</summary>
    public CrewBook? Crews { get; init; }

    /// <summary>Whether the rule is in force.</summary>
    public bool Has(string rule) => Rules.Has(rule);

    /// <summary>Foremen and owners.</summary>
    public ImmutableArray<string> Foremen => Leading.GetValue(
        Shop.People, people => new([.. people.Values.Where(p => !p.Left && p.Position >= Position.Foreman).Select(p => p.Id)])).Value;

    /// <summary>Whether the task was let through a hold.</summary>
    public bool LetThrough(string hold) => !Car.LetThrough.IsEmpty && Car.LetThrough.ContainsKey(hold + "|" + Task.Id);

    /// <summary>The name of a node of the plan.</summary>
    public string NameOf(string node) => Index.Task(node)?.Name ?? Index.Hold(node)?.Name ?? node;
}

using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>What is known of a car.</summary>
public sealed class CarPicture(string id, Plan plan, string? place)
{
    private readonly Dictionary<string, HashSet<string>> _before = [];
    private Plan _plan = plan;

    public string Id => id;

    public Plan Plan
    {
        get => _plan;
        set
        {
            _plan = value;
            _before.Clear();
        }
    }

    /// <summary>All nodes before a node; walked once as long as the plan is the same.</summary>
    public HashSet<string> Before(string node) =>
        _before.TryGetValue(node, out var known) ? known : _before[node] = Order.Before(_plan, node);

    public string? Place { get; set; } = place;

    public SortedDictionary<string, TaskPicture> Tasks { get; } = new(plan.Tasks.ToDictionary(t => t.Id, t => new TaskPicture(t.Id)), StringComparer.Ordinal);

    public SortedDictionary<string, HoldPicture> Holds { get; } = new(plan.Holds.ToDictionary(h => h.Id, _ => new HoldPicture()), StringComparer.Ordinal);

    public SortedDictionary<string, string> Items { get; } = new(plan.Items.ToDictionary(i => i.Id, i => i.AtTakeIn), StringComparer.Ordinal);

    public SortedDictionary<string, PartStatus> Parts { get; } = new(plan.Parts.ToDictionary(p => p.Id, _ => PartStatus.NotOrdered), StringComparer.Ordinal);

    /// <summary>The readings of a key <c>task/reading</c>, in the order they were written down.</summary>
    public SortedDictionary<string, List<ReadingPicture>> Readings { get; } = new(StringComparer.Ordinal);

    /// <summary>Dangers that stand until made safe or until a reading ends them: <c>task/hazard</c> to what it is.</summary>
    public SortedDictionary<string, StandingPicture> Standing { get; } = new(StringComparer.Ordinal);

    /// <summary>What each hanging item hangs in.</summary>
    public SortedDictionary<string, List<string>> HangsIn { get; } = new(StringComparer.Ordinal);

    /// <summary>Every disturbance there was: what, by the start of which task (nothing for an outside change), when.</summary>
    public List<(IReadOnlyCollection<string> Aspects, string? Task, DateTimeOffset At)> Disturbances { get; } = [];

    /// <summary>What was answered in the call before a key check.</summary>
    public Dictionary<(string Hold, string Person), AnswerPicture> Answers { get; } = [];

    public HashSet<string> Questions { get; } = [];

    public HashSet<(string Hold, string Task)> LetThrough { get; } = [];

    public Dictionary<string, bool> Snags { get; } = [];

    public PlanTask Task(string task) => Plan.Tasks.First(t => t.Id == task);

    public HoldPoint Hold(string hold) => Plan.Holds.First(h => h.Id == hold);

    /// <summary>The reading that was taken last.</summary>
    public ReadingPicture? Last(string key) => Readings.TryGetValue(key, out var all) ? all.OrderBy(r => r.At).Last() : null;
}

public sealed record StandingPicture(string Hazard, string Task, string? Place, string? EndsByReading);

/// <summary>Evidence: somebody's word at a time, and what became of it.</summary>
public class Word(string by, DateTimeOffset at)
{
    public string By => by;

    public DateTimeOffset At => at;

    /// <summary>When it was disturbed, if it was since.</summary>
    public DateTimeOffset? LapsedAt { get; set; }

    /// <summary>Disturbed as the plan foresees.</summary>
    public bool Foreseen { get; set; }

    /// <summary>Taken again by another node since it lapsed.</summary>
    public bool TakenAgain { get; set; }

    /// <summary>Lapsed, not foreseen, not taken again: what comes after waits.</summary>
    public bool Holds => LapsedAt is not null && !Foreseen && !TakenAgain;

    /// <summary>Lapsed and not taken again: it does not count as evidence.</summary>
    public bool Missing => LapsedAt is not null && !TakenAgain;
}

public sealed class ReadingPicture(string by, DateTimeOffset at, long seq, Verdict verdict, string? seenBy) : Word(by, at)
{
    public long Seq => seq;

    public Verdict Verdict => verdict;

    public string? SeenBy => seenBy;

    public bool Released { get; set; }
}

public sealed class HoldPicture
{
    public Word? Released { get; set; }
}

public sealed class TaskPicture(string id)
{
    public string Id => id;

    public WorkStatus Status { get; set; }

    public List<CrewMember> Crew { get; set; } = [];

    /// <summary>Everybody who was on it in its present life.</summary>
    public HashSet<string> WorkedBy { get; } = [];

    public string? Place { get; set; }

    public List<string> Gear { get; set; } = [];

    public DateTimeOffset? StartedAt { get; set; }

    /// <summary>When it was begun over again; nothing in its first life.</summary>
    public DateTimeOffset? AgainSince { get; set; }

    public DateTimeOffset? EndedAt { get; set; }

    /// <summary>Open minutes the full crew was on it in earlier stretches of this life.</summary>
    public int Done { get; set; }

    /// <summary>Since when the full crew is on it.</summary>
    public DateTimeOffset? FullSince { get; set; }

    public Estimate? Revised { get; set; }

    /// <summary>Who left it with words about how; nothing when there is nothing to acknowledge.</summary>
    public string? LeftBy { get; set; }

    public HashSet<string> Acknowledged { get; } = [];

    public Word? SignedOff { get; set; }

    /// <summary>It was done once and is open again.</summary>
    public bool OpenAgain { get; set; }

    public bool InHand => Status == WorkStatus.InHand;

    /// <summary>Said to be done, but what it stood on was disturbed: it may be done again.</summary>
    public bool Lapsed => Status is WorkStatus.SignedOff or WorkStatus.ForSecondCheck && SignedOff is { Missing: true };
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;
using JobBoard.Engineering.Measures;

namespace JobBoard.Web.Pages.Plans;

/// <summary>What the plan screen begins with.</summary>
public sealed record PlanBeginning
{
    /// <summary>The plan.</summary>
    public required Plan Plan { get; init; }

    /// <summary>The number of the entry that made it, where it is that of a car.</summary>
    public long PlanAt { get; init; }

    /// <summary>The reader, whose draft it becomes.</summary>
    public required string Me { get; init; }

    /// <summary>Tasks that were begun and hold points that were released: they stay as they are.</summary>
    public ImmutableArray<string> Begun { get; init; } = [];

    /// <summary>Hazards of the shop.</summary>
    public ImmutableArray<PlanChoice> Hazards { get; init; } = [];

    /// <summary>Things of the shop, as needs name them.</summary>
    public ImmutableArray<PlanThing> Things { get; init; } = [];

    /// <summary>What people of the shop are qualified for.</summary>
    public ImmutableArray<string> Qualifications { get; init; } = [];

    /// <summary>Kinds of places besides where the car stands.</summary>
    public ImmutableArray<string> Places { get; init; } = [];

    /// <summary>Kinds of gear.</summary>
    public ImmutableArray<string> Gear { get; init; } = [];

    /// <summary>Symbols of units a limit can have.</summary>
    public ImmutableArray<string> Units { get; init; } = [];

    /// <summary>A plan with nothing in it but a stage.</summary>
    public static Plan Empty { get; } = new() { Id = "plan", Name = "", Stages = [new("work", "Work")] };

    /// <summary>The running plan of a car.</summary>
    public static PlanBeginning Of(ShopState shop, CarBoard car, string me) => Of(shop, car.Plan, me) with
    {
        PlanAt = car.PlanAt,
        Begun =
        [
            .. car.Tasks.Values.Where(t => t.Status != WorkStatus.NotStarted || car.Readings.Keys.Any(k => k.StartsWith(t.Id + "/", StringComparison.Ordinal))).Select(t => t.Id),
            .. car.Holds.Values.Where(h => h.Released is not null).Select(h => h.Id),
        ],
    };

    /// <summary>A plan without a car.</summary>
    public static PlanBeginning Of(ShopState shop, Plan plan, string me) => new()
    {
        Plan = plan,
        Me = me,
        Hazards = [.. shop.Hazards.Values.Select(h => new PlanChoice(h.Id, h.Name))],
        Things = [.. shop.Items.Values.Select(i => new PlanThing("shop/" + i.Id, i.Name, i.Conditions))],
        Qualifications = [.. shop.People.Values.Where(p => !p.Left).SelectMany(p => p.Qualifications).Select(q => q.For).Distinct().Order(StringComparer.Ordinal)],
        Places = [.. shop.Places.Values.Select(p => p.Kind).Where(k => k != "bay").Distinct().Order(StringComparer.Ordinal)],
        Gear = [.. shop.Gear.Values.Select(g => g.Kind).Distinct().Order(StringComparer.Ordinal)],
        Units = [.. Engineering.Measures.Units.All.Select(u => u.Symbol)],
    };

    /// <summary>Shop minutes of the day most often open, 480 where no hours are set.</summary>
    public static int DayMinutes(ShopState shop)
    {
        var days = shop.Hours.GroupBy(h => h.Day).Select(d => (int)d.Sum(h => (h.To - h.From).TotalMinutes)).GroupBy(m => m).OrderByDescending(g => g.Count()).ThenByDescending(g => g.Key).FirstOrDefault();
        return days?.Key ?? 480;
    }
}

/// <summary>Something to choose.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
public sealed record PlanChoice(string Id, string Name);

/// <summary>A thing of the shop that a task can need.</summary>
/// <param name="Id">As needs name it: <c>shop/ID</c>.</param>
/// <param name="Name">Its name.</param>
/// <param name="Conditions">The conditions it can be in.</param>
public sealed record PlanThing(string Id, string Name, ImmutableArray<string> Conditions);

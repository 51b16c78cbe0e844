using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Plans.Repairs;
using JobBoard.Domain.Rules;
using JobBoard.Shop.Plans;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.Plans;

/// <summary>What is to be said of a plan while it is drawn up.</summary>
public sealed record PlanReportView
{
    private const int MostRepaired = 40;

    /// <summary>Faults that stand against it, each with its place and repairs.</summary>
    public ImmutableArray<PlanFaultLine> Faults { get; init; } = [];

    /// <summary>How many faults the running plan has already.</summary>
    public int Known { get; init; }

    /// <summary>What else stands against it.</summary>
    public ImmutableArray<string> Against { get; init; } = [];

    /// <summary>Whether the plan was changed since it was looked at.</summary>
    public bool IsStale { get; init; }

    /// <summary>Whether it differs from the running plan; for a template always.</summary>
    public bool IsChanged { get; init; } = true;

    /// <summary>Whether this is about a running plan.</summary>
    public bool IsRunning { get; init; }

    /// <summary>What changes, in sentences.</summary>
    public ImmutableArray<string> Changes { get; init; } = [];

    /// <summary>When it can be ready then, in a sentence; empty where it cannot be said.</summary>
    public string Ready { get; init; } = "";

    /// <summary>What ends at another time, in rows: what, before, after, by.</summary>
    public ImmutableArray<PlanMoveLine> Moved { get; init; } = [];

    /// <summary>Whose work is touched, in sentences.</summary>
    public ImmutableArray<string> Touched { get; init; } = [];

    /// <summary>What can no longer be reached, in sentences.</summary>
    public ImmutableArray<string> Lost { get; init; } = [];

    /// <summary>Whether nothing stands against it.</summary>
    public bool IsClean => Faults.IsEmpty && Against.IsEmpty;

    /// <summary>How it stands, for the bar at the bottom.</summary>
    public string Sum => PlanWords.Sum(this);

    /// <summary>Of a plan without a car, or of one that cannot be read.</summary>
    public static PlanReportView Of(PlanReading reading, ShopFacts facts) => new()
    {
        Faults = reading.Plan is { } plan ? Lines(plan, PlanFaults.Find(plan, facts), facts) : [.. reading.Faults.Select(f => new PlanFaultLine(f.Code, f.At, PlanWords.Shape(f.Words), f.Repair, []))],
    };

    /// <summary>Of a running plan gone over.</summary>
    public static PlanReportView Of(ShopState shop, CarBoard car, Plan plan, long of, PlanOutlook outlook, ShopFacts facts)
    {
        var zone = ShopZone.Of(shop);
        string Time(DateTimeOffset at) => ShopTime.DayClock(TimeZoneInfo.ConvertTime(at, zone));
        var index = PlanIndex.Of(plan);
        return new()
        {
            IsRunning = true,
            IsChanged = !outlook.Differs.IsNothing,
            IsStale = of != car.PlanAt,
            Faults = Lines(plan, outlook.Faults, facts),
            Known = outlook.Known.Length,
            Against = [.. outlook.Against.Where(w => w.Rule != RuleBook.Ids.Input || w.About is not ("why" or "plan")).Select(w => shop.Say(w.Words)).Distinct()],
            Changes = [.. outlook.Differs.Words(car.Plan, plan)],
            Ready = outlook.Differs.IsNothing ? "" : PlanWords.Ready(outlook, Time),
            Moved = [.. outlook.Moved.Select(m => new PlanMoveLine(index.NameOf(m.Node), Time(m.Before), Time(m.After), PlanWords.Signed(m.By)))],
            Touched = [.. outlook.Touched.Select(t => shop.Say(PlanWords.Touched(index.NameOf(t.Task), t)))],
            Lost = [.. outlook.Lost.Select(l => PlanWords.Lost(plan, l))],
        };
    }

    private static ImmutableArray<PlanFaultLine> Lines(Plan plan, ImmutableArray<PlanFault> faults, ShopFacts facts) =>
        [.. faults.Select((f, n) => new PlanFaultLine(f.Code, f.At, f.Words, f.Repair, n < MostRepaired ? [.. PlanRepairs.For(plan, f, facts).Select(r => r.Words)] : []))];
}

/// <summary>One fault.</summary>
/// <param name="Code">Its rule.</param>
/// <param name="At">Its place in the plan's JSON.</param>
/// <param name="Words">What is wrong.</param>
/// <param name="Repair">What would put it right, in words; or nothing.</param>
/// <param name="Repairs">What a tap puts right, as its buttons say.</param>
public sealed record PlanFaultLine(string Code, string At, string Words, string? Repair, ImmutableArray<string> Repairs);

/// <summary>One thing that would end at another time.</summary>
/// <param name="What">Which.</param>
/// <param name="Before">As things stand.</param>
/// <param name="After">Then.</param>
/// <param name="By">By how much.</param>
public sealed record PlanMoveLine(string What, string Before, string After, string By);

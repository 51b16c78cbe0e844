using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Items;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Shop.Dates;

/// <summary>
/// Who could move a car's date: every step that sets it, everything that can be worked on today, every part that is not here
/// and every hold point that only waits for its release is really moved, and the end worked out again.
/// </summary>
/// <remarks>
/// Work is shortened to its low estimate; where that is no less than what is left, to half of what is left. People and places stay aside.
/// </remarks>
public sealed class Levers
{
    private readonly DateBook _book;
    private readonly ShopState _shop;
    private readonly CarBoard _car;
    private readonly DateTimeOffset _now;
    private readonly ShopHours _hours;
    private readonly CarDates _dates;
    private readonly DateTimeOffset _endOfToday;

    private Levers(DateBook book, ShopState shop, CarBoard car, DateTimeOffset now)
    {
        (_book, _shop, _car, _now) = (book, shop, car, now);
        _hours = ShopHours.Of(shop);
        _dates = book.Of(shop, car, now);
        var zone = TimeZoneInfo.FindSystemTimeZoneById(shop.Zone);
        var day = TimeZoneInfo.ConvertTime(now, zone).Date.AddDays(1);
        _endOfToday = new DateTimeOffset(day, zone.GetUtcOffset(day));
    }

    /// <summary>What moves the date of a car, the most first; empty where the date is not known or everything is done.</summary>
    public static ImmutableArray<Lever> Of(DateBook book, ShopState shop, CarBoard car, DateTimeOffset now)
    {
        var levers = new Levers(book, shop, car, now);
        if (levers._dates.Earliest is null || levers._dates.IsDone) return [];
        return [.. levers.Work().Concat(levers.Parts()).Concat(levers.Holds()).Where(l => l.Gain >= TimeSpan.FromMinutes(1)).OrderByDescending(l => l.Gain)];
    }

    private IEnumerable<Lever> Work()
    {
        var line = _dates.SetsTheDate.Select(s => s.Node).ToHashSet(StringComparer.Ordinal);
        foreach (var task in _car.Plan.Tasks)
        {
            var state = _car.Tasks[task.Id];
            if (state.Counts || state.Status == WorkStatus.ForSecondCheck) continue;
            var today = state.Status is WorkStatus.InHand || _dates.Nodes[task.Id].EarlyStart < _endOfToday;
            if (!today && !line.Contains(task.Id)) continue;
            var (left, then) = Shortened(task, state);
            yield return Try(LeverKind.Work, task.Id, new() { Left = WhatIfNothing.Left.Add(task.Id, then) }, left, then, today);
        }
    }

    private (int Left, int Then) Shortened(PlanTask task, TaskState state)
    {
        var estimate = state.Revised ?? task.Estimate;
        var begun = state.Status is WorkStatus.InHand or WorkStatus.PartDone;
        var left = begun ? Remaining.Minutes(task, state, _hours, _now) : estimate.Usual;
        var low = estimate.Low - (begun ? Remaining.Done(state, _hours, _now) : 0);
        return (left, low > 0 && low < left ? low : left / 2);
    }

    private IEnumerable<Lever> Parts() =>
        from part in _car.Plan.Parts
        where _car.Parts[part.Id].Status is PartStatus.NotOrdered or PartStatus.Ordered
        select Try(LeverKind.Part, part.Id, new() { PartsHere = WhatIfNothing.PartsHere.Add(part.Id) }, 0, 0, today: true);

    private IEnumerable<Lever> Holds()
    {
        var index = PlanIndex.Of(_car.Plan);
        foreach (var hold in _car.Plan.Holds)
        {
            if (_car.Holds[hold.Id].Counts || !index.LinksInto(hold.Id).All(l => Counts(l.After))) continue;
            if (_hours.OpenFrom(_endOfToday).Select(o => (DateTimeOffset?)o.From).FirstOrDefault() is not { } opens) continue;
            yield return Try(LeverKind.Hold, hold.Id, new() { HeldUntil = WhatIfNothing.HeldUntil.Add(hold.Id, opens) }, 0, 0, today: true);
        }
    }

    private static WhatIf WhatIfNothing { get; } = new();

    private bool Counts(string node) => _car.Tasks.TryGetValue(node, out var task) ? task.Counts : _car.Holds[node].Counts;

    private Lever Try(LeverKind kind, string about, WhatIf whatIf, int left, int then, bool today)
    {
        var (end, moved) = (_dates.Earliest!.Value, _book.EarliestIf(_shop, _car, _now, whatIf) ?? _dates.Earliest.Value);
        var (from, to) = kind == LeverKind.Hold ? (end, moved) : (moved, end);
        return new(kind, about, moved, TimeSpan.FromMinutes(_hours.WorkingMinutes(from, to)), TimeSpan.FromMinutes(left), TimeSpan.FromMinutes(then), today);
    }
}

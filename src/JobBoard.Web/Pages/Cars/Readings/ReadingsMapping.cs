using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Cars.Car;
using JobBoard.Web.Pages.Cars.Items;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars.Readings;

/// <summary>Makes the readings of a car.</summary>
internal sealed class ReadingsMapping(Picture picture, CarBoard car)
{
    private readonly CarStageMapping _stages = new(picture, car);
    private readonly PlanIndex _index = PlanIndex.Of(car.Plan);
    private readonly CarReadings _readings = new(picture);

    public ReadingsView View()
    {
        var order = _index.InOrder.Select((id, place) => (id, place)).ToDictionary(n => n.id, n => n.place, StringComparer.Ordinal);
        var all = car.Plan.Tasks.OrderBy(t => order[t.Id]).SelectMany(t => t.Readings.Select(r => Reading(t, r))).ToImmutableArray();
        return new()
        {
            CarId = car.Id,
            Fetch = [.. all.Where(r => r.Stands is ReadingStands.Now or ReadingStands.Wrong && r.TaskStands is not null && r.Tool.Length > 0)
                .GroupBy(r => r.Tool, StringComparer.OrdinalIgnoreCase)
                .OrderByDescending(g => g.Count(r => car.Tasks[r.TaskId].Status == WorkStatus.InHand)).ThenByDescending(g => g.Count())
                .Select(g => new ToolToFetch(g.Key, [.. g]))],
            Stretches = [.. all.GroupBy(r => Spot.Of(r.Where).Along).OrderBy(g => g.Key).Select(g => new ReadingStretch(g.Key, ItemsMapping.StretchName(g.Key), [.. g]))],
        };
    }

    private MeasuredReading Reading(PlanTask task, ReadingNeed need)
    {
        var latest = Looks.LatestOfAll(car, task.Id, need.Id);
        var again = latest?.LapsedBy is { } lapse ? TakenAgainBy(task, lapse) : null;
        var state = car.Tasks[task.Id];
        var now = state.Status == WorkStatus.InHand || (Evaluation.IsOpen(state) && _stages.Waiting(task).IsEmpty);
        return new()
        {
            Key = $"{task.Id}-{need.Id}",
            Reading = _readings.Of(_stages.Question(task), need),
            Where = need.Where,
            TakenWhen = need.TakenWhen,
            Tool = need.Tool,
            Source = need.Source,
            TaskId = task.Id,
            Task = task.Name,
            TaskStands = state.Status == WorkStatus.InHand ? "in hand, " + ShopTime.Names([.. state.Crew.Select(m => picture.Shop.NameOf(m.Person))]) : now ? "can start" : null,
            TakenAgainBy = again is null ? null : _index.NameOf(again),
            Stands = again is null ? Stands(latest, need, now) : ReadingStands.Fine,
        };
    }

    /// <summary>The node that was done after the lapse and takes the task's evidence again, or nothing.</summary>
    private string? TakenAgainBy(PlanTask task, Lapse lapse) =>
        car.Tasks[task.Id].SignedOff?.LapsedBy?.TakenAgainBy ?? _index.TakenAgainBy(task.Id).FirstOrDefault(node => DoneAt(node) > lapse.At);

    private DateTimeOffset? DoneAt(string node) => car.Tasks.TryGetValue(node, out var task)
        ? task.Counts ? task.SignedOff?.At : null
        : car.Holds.TryGetValue(node, out var hold) && hold.Counts ? hold.Released?.At : null;

    private static ReadingStands Stands(Reading? latest, ReadingNeed need, bool now) => latest switch
    {
        null => now ? ReadingStands.Now : ReadingStands.ToCome,
        { LapsedBy: { } lapse } => lapse.Holds ? ReadingStands.Wrong : now ? ReadingStands.Now : ReadingStands.ToCome,
        { Released: not null } or { Verdict: Verdict.InLimits } => ReadingStands.Fine,
        { Verdict: Verdict.TooCloseToCall } when !need.HoldsWhenTooClose => ReadingStands.Fine,
        _ => ReadingStands.Wrong,
    };
}

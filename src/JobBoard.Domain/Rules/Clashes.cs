using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>
/// Something that is not as it must be: dangers together that must keep apart, or work in hand that lost what it rests on.
/// </summary>
/// <param name="Key">Stable name.</param>
/// <param name="Words">What it is.</param>
/// <param name="Targets">What to stop: (car, task), with no task for the whole car, and no car for the whole shop.</param>
public sealed record Clash(string Key, string Words, ImmutableArray<(string? Car, string? Task)> Targets);

/// <summary>Finds clashes, and makes the stops for those an append brought.</summary>
public static class Clashes
{
    /// <summary>All clashes of a shop at a moment.</summary>
    public static ImmutableSortedDictionary<string, Clash> Of(ShopState shop, DateTimeOffset now, RuleBook rules)
    {
        var all = ShopState.ById<Clash>().ToBuilder();
        var standing = Dangers.Standing(shop);
        foreach (var pair in Apart.Among(shop)) all[pair.Key] = OfPair(shop, pair);
        var hours = ShopHours.Of(shop);
        foreach (var car in shop.Cars.Values)
        {
            foreach (var state in Going.On(car).InHand)
            {
                if (PlanIndex.Of(car.Plan).Task(state.Id) is not { } task) continue;
                foreach (var waiting in Lost(new(shop, car, task, now, rules, hours), standing))
                {
                    var key = $"{waiting.Rule}:{car.Id}/{task.Id}|{waiting.About}";
                    all[key] = new(key, $"{task.Name}: {waiting.Words}", [(car.Id, task.Id)]);
                }
            }
        }

        return all.ToImmutable();
    }

    /// <summary>What work in hand rests on and no longer has.</summary>
    private static IEnumerable<WaitingOn> Lost(TaskQuestion q, ImmutableArray<Danger> standing)
    {
        foreach (var w in OrderRules.Of(q).Where(w => w.Rule != RuleBook.Ids.Lag && !StillLed(q, w))) yield return w;
        foreach (var w in HoldRules.HoldPoints(q)) yield return w;
        foreach (var w in HoldRules.ReadingHolds(q)) yield return w;
        foreach (var w in ConditionRules.Needs(q, q.Task.Id).Concat(ConditionRules.Parts(q)).Concat(ResourceRules.GearLost(q))) yield return w;
        var endangers = standing.Any(d => d.Car == q.Car.Id && d.Task == q.Task.Id && d.Hazard is not null);
        if (!endangers || q.Task.NowAndThen) yield break;
        foreach (var slot in Crewing.Unfilled(q.Shop, q.Task, q.State.Crew, q.Now))
            yield return new(RuleBook.Ids.People, $"nobody is left for {slot.Duty} while a danger stands.", About: slot.Duty);
    }

    /// <summary>Work started on a lead, or beside work that was merely left part-done, has not lost anything by that.</summary>
    private static bool StillLed(TaskQuestion q, WaitingOn waiting) =>
        waiting.Rule == RuleBook.Ids.Link && waiting.About is { } before
        && q.Index.LinksInto(q.Task.Id).Any(l => l.After == before && l.Lag < 0)
        && q.Car.Tasks[before] is { Status: not WorkStatus.Undone, Reopened: false };

    private static Clash OfPair(ShopState shop, Clashing pair)
    {
        var words = $"{Name(shop, pair.One)} and {Name(shop, pair.Other)} stand together: keep apart. {pair.Rule.Said()}";
        var targets = new[] { Target(shop, pair.One), Target(shop, pair.Other) }.Where(t => t.Car is not null).Distinct().ToImmutableArray();
        return new(pair.Key, words, targets.IsEmpty ? [(null, null)] : targets);
    }

    private static (string? Car, string? Task) Target(ShopState shop, Danger danger) =>
        danger is { Car: { } car, Task: { } task } && shop.Cars[car].Tasks.TryGetValue(task, out var state) && state.Status == WorkStatus.InHand
            ? (car, task)
            : (danger.Car, null);

    private static string Name(ShopState shop, Danger danger)
    {
        var what = danger.Hazard is { } hazard ? shop.Hazards.GetValueOrDefault(hazard)?.Name ?? hazard : $"{danger.Item}: {danger.Condition}";
        return danger.Car is null ? what : $"{what} ({shop.Cars[danger.Car].Name})";
    }

    /// <summary>Stops for the clashes that are new after <paramref name="facts"/>; ids come from the command's.</summary>
    public static IEnumerable<Fact> NewStops(ShopState before, ShopState after, Envelope envelope, DateTimeOffset now, RuleBook rules)
    {
        if (!rules.Has(RuleBook.Ids.ClashStop)) yield break;
        var old = Of(before, now, rules);
        var number = 0;
        foreach (var clash in Of(after, now, rules).Values.Where(c => !old.ContainsKey(c.Key)))
        {
            foreach (var (car, task) in clash.Targets)
            {
                var scope = task is not null ? StopScope.Task : car is not null ? StopScope.Car : StopScope.Shop;
                yield return Stopping.Raise(after, $"stop-{envelope.Id:N}-{++number}", scope, car, task, null, clash.Words, clash.Key);
            }
        }
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>What stands between one task and being started.</summary>
/// <param name="Car">The car.</param>
/// <param name="Task">The task.</param>
/// <param name="State">Its state.</param>
/// <param name="Waiting">Everything it waits on; empty when it can start.</param>
public sealed record Evaluated(CarBoard Car, PlanTask Task, TaskState State, ImmutableArray<WaitingOn> Waiting)
{
    /// <summary>Nothing stands against it.</summary>
    public bool CanStart => Waiting.IsEmpty;
}

/// <summary>A start offered to one person, with the crew it would take.</summary>
public sealed record Offer(CarBoard Car, PlanTask Task, TaskState State, ImmutableArray<CrewMember> Crew);

/// <summary>Looks at whole boards at one moment: what can start, for whom, and when that changes by itself.</summary>
public static class Evaluation
{
    /// <summary>Every task of a car that is not in hand and not finished, in the plan's order, with what it waits on.</summary>
    public static ImmutableArray<Evaluated> Of(ShopState shop, CarBoard car, DateTimeOffset now, RuleBook? rules = null)
    {
        var (hours, crews) = (ShopHours.Of(shop), new CrewBook());
        return
        [
            .. from task in car.Plan.Tasks
               let state = car.Tasks[task.Id]
               where IsOpen(state)
               select new Evaluated(car, task, state, StartCheck.Of(new(shop, car, task, now, rules ?? RuleBook.Full, hours) { Crews = crews }, new())),
        ];
    }

    /// <summary>Whether a task could still be started: not in hand, and not done and standing.</summary>
    public static bool IsOpen(TaskState state) =>
        state.Status is WorkStatus.NotStarted or WorkStatus.PartDone or WorkStatus.Undone || (state.Status is WorkStatus.SignedOff or WorkStatus.ForSecondCheck && state.SignedOff?.LapsedBy is { Holds: true });

    /// <summary>
    /// What a person can start, as if their work in hand were left: with themselves in the crew and everybody else who is free.
    /// Empty when they are not in. An apprentice is offered nothing alone: they join their named person.
    /// </summary>
    public static ImmutableArray<Offer> CanStartFor(ShopState shop, string person, DateTimeOffset now, RuleBook? rules = null)
    {
        if (!shop.People.TryGetValue(person, out var who) || !who.IsIn || who.Position == Position.Apprentice) return [];
        var free = new HashSet<string>(StringComparer.Ordinal) { person };
        var hours = ShopHours.Of(shop);
        var offers = ImmutableArray.CreateBuilder<Offer>();
        foreach (var car in shop.Cars.Values)
        {
            foreach (var task in car.Plan.Tasks)
            {
                var state = car.Tasks[task.Id];
                if (!IsOpen(state) || Crewing.Propose(shop, car, task, now, person, free) is not { } crew) continue;
                var waiting = StartCheck.Of(new(shop, car, task, now, rules ?? RuleBook.Full, hours), new(crew, TreatFree: free));
                if (waiting.All(w => w.Rule is RuleBook.Ids.InHandElsewhere or RuleBook.Ids.HowLeft && w.About == person)) offers.Add(new(car, task, state, crew));
            }
        }

        return offers.DrainToImmutable();
    }

    /// <summary>
    /// The next instant after <paramref name="now"/> at which something changes without an entry: a lag runs out, a part is due, a qualification,
    /// an inspection or a calibration expires, the shop opens or closes. Nothing while nothing will.
    /// </summary>
    public static DateTimeOffset? NextChangeAt(ShopState shop, DateTimeOffset now)
    {
        var hours = ShopHours.Of(shop);
        var all = Expiries(shop).Concat(shop.Cars.Values.SelectMany(car => Of(car, hours))).Append(hours.NextEdge(now));
        return all.Where(t => t > now).Min();
    }

    private static IEnumerable<DateTimeOffset?> Expiries(ShopState shop) =>
        shop.People.Values.SelectMany(p => p.Qualifications.Select(q => q.Until).Concat(p.Absences.SelectMany(a => new DateTimeOffset?[] { a.From, a.To })))
            .Concat(shop.Gear.Values.Select(g => g.InspectedUntil))
            .Concat(shop.Instruments.Values.Select(i => i.CalibratedUntil));

    private static IEnumerable<DateTimeOffset?> Of(CarBoard car, ShopHours hours)
    {
        foreach (var part in car.Parts.Values) yield return part.Expected;
        foreach (var link in car.Plan.Links.Where(l => l.Lag != 0))
        {
            if (!car.Tasks.TryGetValue(link.After, out var before)) continue;
            var since = link.Kind is LinkKind.FinishStart or LinkKind.FinishFinish ? before.WorkEndedAt : before.StartedAt;
            if (link.Lag > 0 && since is { } from)
                yield return link.Clock == LagClock.Elapsed ? from.AddMinutes(link.Lag) : hours.AddWorking(from, link.Lag);
            else if (link.Lag < 0 && before is { Status: WorkStatus.InHand, FullSince: { } full } && PlanIndex.Of(car.Plan).Task(link.After) is { } task)
                yield return hours.AddWorking(full, Math.Max(0, (before.Revised ?? task.Estimate).Usual - before.MinutesDone + link.Lag));
        }
    }
}

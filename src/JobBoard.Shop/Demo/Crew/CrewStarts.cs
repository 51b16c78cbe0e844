using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;

namespace JobBoard.Shop.Demo;

/// <summary>What the crew starts: whatever can, in the order of the plan, with the least qualified people who will do.</summary>
internal sealed class CrewStarts(CrewSession session, CrewShift shift, CrewWork work)
{
    private const string Extraction = "extraction";

    /// <summary>Starts what can be; foremen and owners lend a hand only where nothing else goes on.</summary>
    public async Task Start(string car, ImmutableHashSet<string> nodes, bool everybody)
    {
        foreach (var task in session.Shop.Cars[car].Plan.Tasks.Where(t => nodes.Contains(t.Id))) await Consider(car, task, everybody).ConfigureAwait(false);
    }

    private async Task Consider(string id, PlanTask task, bool everybody)
    {
        var (shop, car) = (session.Shop, session.Shop.Cars[id]);
        var state = car.Tasks[task.Id];
        if (state.Status == WorkStatus.InHand && session.IsOwn(id, task.Id)) work.Took(car, task);
        if (!Evaluation.IsOpen(state) || !BeforeIsDone(car, task) || work.WaitsForEnd(car, task.Id) || !Fits(car, task, state)) return;
        if (Crewing.Propose(everybody ? shop : WithoutForemen(shop), car, task, session.Now) is not { } least) return;
        var crew = WithApprentices(shop, car, task, least);
        var waiting = StartCheck.Of(new(shop, car, task, session.Now, RuleBook.Full, session.Hours), new(crew));
        if (waiting.Any(w => w.Rule != RuleBook.Ids.HowLeft && !IsExtraction(w))) return;
        await Ready(id, task, crew, waiting).ConfigureAwait(false);
    }

    private async Task Ready(string car, PlanTask task, ImmutableArray<CrewMember> crew, ImmutableArray<WaitingOn> waiting)
    {
        var lead = crew.First(m => session.Shop.People[m.Person].Position > Position.Apprentice).Person;
        foreach (var left in waiting.Where(w => w.Rule == RuleBook.Ids.HowLeft))
            await session.Do(left.About!, new AcknowledgeLeft { Car = car, Task = task.Id }).ConfigureAwait(false);
        if (waiting.Any(IsExtraction)) await session.Do(lead, new ChangeShopItem(Extraction, "on", "Before an engine runs indoors")).ConfigureAwait(false);
        if (!(await session.Try(lead, new StartTask(crew) { Car = car, Task = task.Id }).ConfigureAwait(false)).IsEmpty) return;
        session.Own.Add(car + "/" + task.Id);
        work.Took(session.Shop.Cars[car], task);
    }

    /// <summary>The condition itself, or the danger of its being off.</summary>
    private static bool IsExtraction(WaitingOn waiting) => waiting.About?.Contains("shop/" + Extraction, StringComparison.Ordinal) == true;

    /// <summary>A quick look, before the rules are asked.</summary>
    private static bool BeforeIsDone(CarBoard car, PlanTask task) => PlanIndex.Of(car.Plan).LinksInto(task.Id)
        .Where(l => l is { Kind: LinkKind.FinishStart, Lag: >= 0 })
        .All(l => car.Tasks.TryGetValue(l.After, out var before) ? before.Status == WorkStatus.SignedOff : car.Holds[l.After].Released is not null);

    /// <summary>Whether what must not be left overnight, and what goes on from it in one go, is done before the shop closes.</summary>
    private bool Fits(CarBoard car, PlanTask task, TaskState state)
    {
        if (!task.RunsThrough) return true;
        var whole = Chain(car, task);
        var end = shift.DayEnd;
        if (session.Hours.AddWorking(session.Now, whole) <= end) return true;
        var day = session.Hours.WorkingMinutes(session.Now, end);
        return whole > 420 && day >= Math.Min(whole, 360) && session.Hours.AddWorking(session.Now, work.Minutes(car.Id, task, state)) <= end;
    }

    private int Chain(CarBoard car, PlanTask task)
    {
        var index = PlanIndex.Of(car.Plan);
        var next = index.LinksFrom(task.Id).Select(l => l.Task)
            .SelectMany(n => index.Hold(n) is null ? [n] : index.LinksFrom(n).Select(l => l.Task))
            .Select(index.Task).Where(t => t is { RunsThrough: true } && t.Stage == task.Stage && t.Id != task.Id && t.Gear.Length > 0);
        return work.Minutes(car.Id, task, car.Tasks[task.Id]) + next.Select(t => Chain(car, t!)).DefaultIfEmpty(0).Max() + 5;
    }

    private static ShopState WithoutForemen(ShopState shop) =>
        shop with { People = shop.People.SetItems(shop.People.Values.Where(p => p.Position > Position.Technician).Select(p => KeyValuePair.Create(p.Id, p with { InSince = null }))) };

    /// <summary>An apprentice goes along with the person they work under, but not under a load.</summary>
    private static ImmutableArray<CrewMember> WithApprentices(ShopState shop, CarBoard car, PlanTask task, ImmutableArray<CrewMember> crew)
    {
        if (task.NowAndThen || task.Gear.Any(g => g.Kind == "hoist")) return crew;
        var along = shop.People.Values.Where(p => p is { IsIn: true, Position: Position.Apprentice } && crew.Any(m => m.Person == p.WorksUnder)
            && !Crewing.InHand(shop, p.Id, car.Id, task.Id).Any());
        return crew.AddRange(along.Select(p => new CrewMember(p.Id, "beside")));
    }
}

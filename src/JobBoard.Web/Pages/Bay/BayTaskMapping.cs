using System.Collections.Immutable;
using System.Globalization;
using JobBoard.Domain.Boards;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Engineering.Measures;
using JobBoard.Web.Live;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Floor;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Bay;

/// <summary>Makes task cards and offers for one person.</summary>
public sealed class BayTaskMapping(Picture picture, Person me)
{
    private readonly ShopState _shop = picture.Shop;
    private readonly ShopHours _hours = ShopHours.Of(picture.Shop);

    /// <summary>A task this person has in hand.</summary>
    public BayTask Task(CarBoard car, TaskState state)
    {
        var task = PlanIndex.Of(car.Plan).Task(state.Id)!;
        var q = new TaskQuestion(_shop, car, task, picture.Now, RuleBook.Full, _hours);
        return new()
        {
            Id = task.Id,
            Name = task.Name,
            CarId = car.Id,
            Car = car.Name,
            Place = BayMapping.Where(_shop, car, state),
            Since = picture.Local(state.InHandSince ?? picture.Now),
            SoFar = TimeSpan.FromMinutes(Remaining.Done(state, _hours, picture.Now)),
            Estimate = TimeSpan.FromMinutes((state.Revised ?? task.Estimate).Usual),
            OverItsEstimate = Remaining.IsOver(task, state, _hours, picture.Now),
            With = [.. state.Crew.Where(m => m.Person != me.Id).Select(m => $"{_shop.NameOf(m.Person)} ({m.Duty})")],
            Duty = state.Crew.FirstOrDefault(m => m.Person == me.Id)?.Duty,
            Cautions = Cautions(car, task),
            Steps = task.Steps,
            Needs = [.. task.Needs.Select(n => Need(car, n))],
            Readings = [.. task.Readings.Select(r => Reading(q, r))],
            Items = [.. task.Changes.Select(c => c.Item).Concat(task.Touches.Select(t => t.Item)).Distinct().Where(car.Items.ContainsKey).Select(i => Item(car, i))],
            AskHowLeft = HowLeft(car, task),
            SignOffWaitsOn = [.. Looks.MissingForSignOff(q).Select(w => BayMapping.Wait(picture, w))],
            SecondCheckFollows = task.SecondCheck,
            SignsNothingOff = me.Position == Position.Apprentice ? $"{_shop.NameOf(me.WorksUnder ?? "")} signs it off." : null,
        };
    }

    /// <summary>A task this person can start.</summary>
    public BayNext Next(Offer offer, ImmutableArray<(CarBoard Car, TaskState State)> mine)
    {
        var (car, task) = (offer.Car, offer.Task);
        var leave = mine.Select(m => (m.Car, m.State, Task: PlanIndex.Of(m.Car.Plan).Task(m.State.Id)!)).FirstOrDefault(m => !m.Task.NowAndThen);
        return new()
        {
            Id = task.Id,
            Name = task.Name,
            CarId = car.Id,
            Car = car.Name,
            Place = task.Place == "car" ? (car.Place is null ? null : _shop.Places.GetValueOrDefault(car.Place)?.Name) : task.Place,
            Why = Why(offer),
            Estimate = TimeSpan.FromMinutes((offer.State.Revised ?? task.Estimate).Usual),
            GoesOn = offer.State.Status == WorkStatus.PartDone,
            Cautions = Cautions(car, task),
            Duties = Duties(offer),
            LeaveFirst = leave.Task is null || task.NowAndThen ? null : LeaveFirst(leave.Car, leave.Task),
        };
    }

    private BayLeaveFirst LeaveFirst(CarBoard car, PlanTask task)
    {
        var q = new TaskQuestion(_shop, car, task, picture.Now, RuleBook.Full, _hours);
        return new(car.Id, task.Id, task.Name, me.Position != Position.Apprentice && !Looks.MissingForSignOff(q).Any(), HowLeft(car, task));
    }

    private string Why(Offer offer)
    {
        var node = picture.Dates.Of(_shop, offer.Car, picture.Now).Nodes.GetValueOrDefault(offer.Task.Id);
        var begun = offer.State.Status switch
        {
            WorkStatus.PartDone => "left part-done; ",
            WorkStatus.Undone => "to be done again; ",
            WorkStatus.SignedOff or WorkStatus.ForSecondCheck => "lapsed, to be done again; ",
            _ => "",
        };
        return begun + node switch
        {
            { SetsTheDate: true } => "sets the date, no slack",
            { Slack: { } slack } => $"slack {ShopTime.Span(slack)}",
            _ => "its date is not known",
        };
    }

    /// <summary>One row a duty: the proposed person chosen, everybody in and qualified to choose from.</summary>
    private ImmutableArray<BayDuty> Duties(Offer offer)
    {
        var slots = Crewing.Slots(offer.Task);
        if (slots.Length == 1) return [new(slots[0].Duty, slots[0].Duty, [new(me.Id, me.Name)], me.Id)];
        var left = offer.Crew.ToList();
        var rows = ImmutableArray.CreateBuilder<BayDuty>();
        foreach (var slot in slots)
        {
            var member = left.Find(m => m.Duty == slot.Duty);
            if (member is not null) left.Remove(member);
            var able = _shop.People.Values.Where(p => p.IsIn && p.Position != Position.Apprentice && p.IsQualified(slot.Qualification, picture.Now));
            rows.Add(new(slot.Duty, slot.Qualification is null ? slot.Duty : $"{slot.Duty}, qualified for {slot.Qualification}", [.. able.Select(p => new BayChoice(p.Id, p.Name))], member?.Person));
        }

        return rows.DrainToImmutable();
    }

    private ImmutableArray<BayCaution> Cautions(CarBoard car, PlanTask task)
    {
        var hazards = task.Hazards.Select(h => h.Hazard)
            .Concat(task.Changes.SelectMany(c => (PlanIndex.Of(car.Plan).Item(c.Item)?.Dangers ?? []).Where(d => c.Path.Contains(d.Condition)).Select(d => d.Hazard)))
            .Distinct().Select(h => _shop.Hazards.GetValueOrDefault(h)).Where(h => h is not null)
            .Select(h => new BayCaution(FloorMapping.Sign(h!.Sign), h.Name, h.Caution));
        var words = task.Cautions.Where(c => !BayTexts.LocalCodes.StartsWith(c, StringComparison.Ordinal)).Select(c => new BayCaution(SafetySignKind.W001, "", c));
        return [.. hazards, .. words];
    }

    private BayNeed Need(CarBoard car, Need need)
    {
        if (need.Item.StartsWith("shop/", StringComparison.Ordinal))
        {
            var thing = _shop.Items.GetValueOrDefault(need.Item[5..]);
            return new(need.Item.Replace('/', '-'), $"{thing?.Name ?? need.Item}: {string.Join(" or ", need.Conditions)}", thing?.Condition ?? "not known", thing is not null && need.Conditions.Contains(thing.Condition));
        }

        var state = car.Items[need.Item];
        var name = PlanIndex.Of(car.Plan).Item(need.Item)!.Name;
        return new(need.Item, $"{name}: {string.Join(" or ", need.Conditions)}", Since(state), need.Conditions.Contains(state.Condition));
    }

    private string Since(Domain.Items.ItemState state) =>
        state.Task is null ? state.Condition : $"{state.Condition} since {ShopTime.Since(picture.Local(state.Since), picture.Now)}, {_shop.NameOf(state.By)}";

    private BayItem Item(CarBoard car, string id)
    {
        var item = PlanIndex.Of(car.Plan).Item(id)!;
        return new(id, item.Name, car.Items[id].Condition, [.. item.Conditions.Select(c => new BayChoice(c, c))], Since(car.Items[id]));
    }

    /// <summary>What is asked when a task is left: in words where it disturbs a joint, line or load, and the condition of what passes through others or a danger.</summary>
    private ImmutableArray<BayHowLeft> HowLeft(CarBoard car, PlanTask task)
    {
        var asks = ImmutableArray.CreateBuilder<BayHowLeft>();
        if (!task.HowLeft.IsEmpty) asks.Add(new("how", "How was it left?", [.. task.HowLeft.Select(w => new BayChoice(w, w))]));
        foreach (var change in task.Changes.Where(c => Looks.HasToBeSaid(_shop, car, c)))
            asks.Add(new($"items[{change.Item}]", $"{PlanIndex.Of(car.Plan).Item(change.Item)?.Name} is", [.. change.Path.Distinct().Select(c => new BayChoice(c, c))]));
        return asks.DrainToImmutable();
    }

    private BayReading Reading(TaskQuestion q, ReadingNeed need)
    {
        var latest = Looks.LatestOfAll(q.Car, q.Task.Id, need.Id);
        return new()
        {
            Id = need.Id,
            Name = need.Name,
            Limit = Limit(need),
            Unit = need.Unit,
            Units = UnitsLike(need.Unit),
            Verdict = latest switch
            {
                null => BayVerdict.NotTaken,
                { LapsedBy: not null } => BayVerdict.Lapsed,
                { Verdict: Verdict.InLimits } => BayVerdict.InLimits,
                { Verdict: Verdict.Out } => BayVerdict.Out,
                _ => BayVerdict.TooCloseToCall,
            },
            Value = latest is null ? null : $"{latest.Text} {latest.Unit}",
            TakenAt = latest is null ? null : picture.Local(latest.At),
            TakenBy = latest is null ? null : _shop.NameOf(latest.By) + (latest.SeenBy is null ? "" : $", seen by {_shop.NameOf(latest.SeenBy)}"),
            Note = Note(q, latest),
            Instruments = ReadingWords.Instruments(_shop, need, picture.Now),
            SeenBy = need.SeenByTwo ? [.. _shop.People.Values.Where(p => p.IsIn && p.Id != me.Id).Select(p => new BayChoice(p.Id, p.Name))] : [],
            Tool = need.Tool,
            TakenWhen = need.TakenWhen,
        };
    }

    private string? Note(TaskQuestion q, Reading? latest) => latest switch
    {
        null => null,
        { LapsedBy: { } lapse } => "lapsed: " + (lapse.Aspect.Length == 0 ? "the task is done again" : _shop.Say(Looks.Cause(q, lapse))),
        { Released: { } released } => $"released by {_shop.NameOf(released.By)}",
        { Verdict: Verdict.InLimits } => null,
        _ => latest.Because,
    };

    private static string Limit(ReadingNeed need) => (need.Min, need.Max) switch
    {
        ({ } min, { } max) => $"{Number(min)} to {Number(max)} {need.Unit}",
        ({ } min, null) => $"at least {Number(min)} {need.Unit}",
        (null, { } max) => $"at most {Number(max)} {need.Unit}",
        _ => $"to be noted, {need.Unit}",
    };

    private static string Number(decimal value) => value.ToString("0.############", CultureInfo.InvariantCulture);

    private static ImmutableArray<string> UnitsLike(string unit) =>
        Units.Find(unit) is { } found ? [found.Symbol, .. Units.All.Where(u => u.Quantity == found.Quantity && u.Symbol != found.Symbol).Select(u => u.Symbol)] : [unit];
}

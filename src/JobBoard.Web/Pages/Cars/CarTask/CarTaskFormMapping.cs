using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Bay;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.Cars.CarTask;

/// <summary>Says which forms a task has for one person. Whether it can be done now is for the rules, which answer with everything.</summary>
internal sealed class CarTaskFormMapping(Picture picture, TaskQuestion q, Person me)
{
    private readonly ShopState _shop = picture.Shop;
    private readonly TaskState _state = q.State;

    private bool IsForeman => me.Position >= Position.Foreman;

    public CarTaskForms Forms()
    {
        var inHand = _state.Status == WorkStatus.InHand;
        var forms = inHand ? InHand() : Starts();
        return forms with
        {
            SecondCheck = _state is { Status: WorkStatus.ForSecondCheck, Lapsed: false } && Looks.MayCheck(q, me),
            Undone = _state.Status is WorkStatus.SignedOff or WorkStatus.ForSecondCheck && MayPost.May<MarkUndone>(me.Position),
            Estimate = _state.Status is WorkStatus.SignedOff or WorkStatus.ForSecondCheck || !MayPost.May<ReviseEstimate>(me.Position) ? null : _state.Revised ?? q.Task.Estimate,
            Readings = [.. q.Task.Readings.Select(Reading)],
            Plan = MayPost.May<ChangePlan>(me.Position),
            TakeOut = MayPost.May<ChangePlan>(me.Position) && _state.Status == WorkStatus.NotStarted && _state.StartedAt is null,
            Nodes = MayPost.May<ChangePlan>(me.Position) ? [.. q.Index.Nodes.Where(n => n != q.Task.Id && !q.Index.IsAfter(n, q.Task.Id)).Select(n => new BayChoice(n, q.Index.NameOf(n)))] : [],
        };
    }

    private CarTaskForms InHand()
    {
        var mine = _state.Crew.Any(m => m.Person == me.Id);
        return new()
        {
            Joiners = [.. _shop.People.Values.Where(p => p.IsIn && _state.Crew.All(m => m.Person != p.Id) && (IsForeman || p.Id == me.Id)).OrderBy(p => p.Id == me.Id ? 0 : 1).Select(Choice)],
            JoinDuties = [.. q.Task.Crew.Select(c => c.Duty).Append("hand").Distinct()],
            Leavers = _state.Crew.Length < 2 ? [] : [.. _state.Crew.Where(m => IsForeman || m.Person == me.Id).Select(m => new BayChoice(m.Person, _shop.NameOf(m.Person)))],
            HowLeft = mine || IsForeman ? q.Task.HowLeft : null,
            ItemsLeft = [.. q.Task.Changes.Where(c => Looks.HasToBeSaid(q.Shop, q.Car, c)).Select(c => (c.Item, $"{q.Index.Item(c.Item)?.Name ?? c.Item} is", c.Path.Distinct().ToImmutableArray()))],
            SignOff = me.Position > Position.Apprentice && (IsForeman || _state.WorkedBy.Contains(me.Id)),
        };
    }

    private CarTaskForms Starts() => Evaluation.IsOpen(_state) || _state.Lapsed
        ? new()
        {
            StartVerb = _state.Status switch { WorkStatus.PartDone => "Go on with", WorkStatus.NotStarted => "Start", _ => "Do again:" },
            Duties = Duties(),
            Places = q.Task.Place == "car" ? [] : [.. _shop.Places.Values.Where(p => p.Kind == q.Task.Place).Select(p => new BayChoice(p.Id, p.Name))],
            Acknowledge = _state.Left is { } left && left.By != me.Id && !left.AcknowledgedBy.Contains(me.Id) ? $"{_shop.Say(left.Words)} ({_shop.NameOf(left.By)})" : null,
        }
        : new();

    /// <summary>One row a duty, a crew that could be made of who is in and free already chosen: with this person where they can.</summary>
    private ImmutableArray<BayDuty> Duties()
    {
        var free = new HashSet<string>(StringComparer.Ordinal) { me.Id };
        var proposed = Crewing.Propose(_shop, q.Car, q.Task, q.Now, me.Id, free) ?? Crewing.Propose(_shop, q.Car, q.Task, q.Now);
        var left = (proposed ?? []).ToList();
        return [.. Crewing.Slots(q.Task).Select(s => Duty(s, left))];
    }

    private BayDuty Duty(Crewing.Slot slot, List<CrewMember> left)
    {
        var chosen = left.Find(m => m.Duty == slot.Duty);
        if (chosen is not null) left.Remove(chosen);
        var able = _shop.People.Values.Where(p => p.IsIn && p.Position != Position.Apprentice && p.IsQualified(slot.Qualification, q.Now));
        return new(slot.Duty, slot.Qualification is null ? slot.Duty : $"{slot.Duty}, qualified for {slot.Qualification}", [.. able.Select(Choice)], chosen?.Person);
    }

    private CarReadingForm Reading(ReadingNeed need)
    {
        var about = string.Join("; ", new[] { need.Tool, need.Where, need.TakenWhen, need.Source.Length == 0 ? "" : $"limit from {need.Source}" }.Where(w => w.Length > 0));
        return new(
            need.Id, need.Name, ReadingWords.Limit(need), about, ReadingWords.Units(need.Unit), ReadingWords.Instruments(_shop, need, q.Now),
            need.SeenByTwo ? [.. _shop.People.Values.Where(p => p.IsIn && p.Id != me.Id).Select(Choice)] : []);
    }

    private static BayChoice Choice(Person person) => new(person.Id, person.Name);
}

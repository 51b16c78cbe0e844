using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>What has to be so for each fact about cars, holds and stops, before it is read.</summary>
public sealed partial class Judge
{
    private void OfCar(CarFact fact)
    {
        switch (fact)
        {
            case CarTakenIn taken:
                foreach (var fault in PlanCheck.Faults(_shop, taken.Plan)) Broken("a plan with a fault: " + fault);
                break;
            case PlanChanged changed:
                Changed(_shop.Cars[changed.Car], changed);
                break;
            case PlanRevised revised:
                Revised(_shop.Cars[revised.Car], revised);
                break;
            case HoldReleased released:
                Released(_shop.Cars[released.Car], released);
                break;
            case CallAnswered said:
                Unless(_shop.People.TryGetValue(said.Person, out var asked) && asked.In, "only who is in is asked in the call");
                Unless(said.Person == _sent.Actor || May(Position.Foreman), "a person answers for themselves, or the foreman taps it");
                Unless(said.Go || said.Why.Length > 0, "a no names its reason");
                Unless(_shop.Cars[said.Car].Hold(said.Hold).KeyCheck, "a call is for a key check");
                break;
            case StartFailed failed:
                Failed(_shop.Cars[failed.Car], failed);
                break;
            case TaskLetThrough through:
                Unless(May(Position.Foreman), "the foreman lets through");
                Unless(through.Why.Trim().Length > 0, "letting through has a reason");
                break;
            case CarMoved moved:
                Moved(_shop.Cars[moved.Car], moved.Place);
                break;
            case HazardEndedByReading ended:
                Unless(_shop.Cars[ended.Car].Standing.TryGetValue(ended.Hazard, out var standing) && standing.EndsByReading == ended.Reading
                    && _shop.Cars[ended.Car].Last(ended.Reading) is { Verdict: Verdict.InLimits, Missing: false }, "a danger ends by its reading in limits");
                break;
            case HazardMadeSafe safe:
                Unless(_shop.Cars[safe.Car].Standing.TryGetValue(safe.Hazard, out var danger), "only a standing danger is made safe");
                Unless(danger is null || _shop.Hazards[danger.Hazard].Ends != HazardEnd.ByReading, "a danger that ends by a reading never ends otherwise");
                break;
        }
    }

    private void Changed(CarPicture car, PlanChanged changed)
    {
        Unless(May(Position.Foreman), "the foreman answers for the plan");
        foreach (var fault in PlanCheck.Faults(_shop, Picture.After(car.Plan, changed)).Except(PlanCheck.Faults(_shop, car.Plan))) Broken("a plan is given a fault: " + fault);
        Unless(changed.TakenOut.All(t => car.Tasks[t].Status == Domain.Work.WorkStatus.NotStarted), "work that was begun stays in the plan");
    }

    private void Revised(CarPicture car, PlanRevised revised)
    {
        Unless(May(Position.Foreman), "the foreman answers for the plan");
        Unless(revised.Why.Trim().Length > 0, "a change of the plan has a reason");
        Unless(_sent.Command is RevisePlan sent && sent.Of == _shop.Entries.Last(e => e.Fact is CarTakenIn or PlanChanged or PlanRevised && ((CarFact)e.Fact).Car == car.Id).Seq, "a plan that others changed meanwhile is not written over");
        foreach (var fault in PlanCheck.Faults(_shop, revised.Plan).Except(PlanCheck.Faults(_shop, car.Plan))) Broken("a plan is given a fault: " + fault);
        var begun = car.Tasks.Values.Where(t => t.Status != Domain.Work.WorkStatus.NotStarted || car.Plan.Tasks.First(p => p.Id == t.Id).Readings.Any(r => car.Readings.ContainsKey(t.Id + "/" + r.Id)));
        foreach (var task in begun)
            Unless(Dump.OfPlanned(revised.Plan.Tasks.FirstOrDefault(t => t.Id == task.Id)) == Dump.OfPlanned(car.Task(task.Id)), $"{task.Id} was begun and stays as it is");
        foreach (var hold in car.Holds.Where(h => h.Value.Released is not null))
            Unless(Dump.OfPlanned(revised.Plan.Holds.FirstOrDefault(h => h.Id == hold.Key)) == Dump.OfPlanned(car.Hold(hold.Key)), $"{hold.Key} was released and stays as it is");
        foreach (var (item, condition) in car.Items.Where(i => i.Value != car.Plan.Items.First(p => p.Id == i.Key).AtTakeIn))
            Unless(revised.Plan.Items.Any(i => i.Id == item && i.Conditions.Contains(condition)), $"{item} is {condition} and has to stay in the plan");
    }

    private void Moved(CarPicture car, string? place)
    {
        Unless(place is null || _shop.Cars.Values.Count(c => c.Id != car.Id && c.Place == place) < _shop.Places[place].Capacity, "a car moves where there is room");
        Unless(!car.Tasks.Values.Any(t => t.InHand && t.Place is null), "a car does not move while somebody works on it");
        Unless(!new Dangers(_shop).All().Any(d => d.Car == car.Id && d.Hazard is { } hazard && _shop.Hazards[hazard].PinsCar), "a car that is pinned does not move");
    }

    private void Released(CarPicture car, HoldReleased released)
    {
        var hold = car.Hold(released.Hold);
        Unless(Me is { } me && (me.Position == Position.Owner || me.Position >= hold.ReleasedBy), "a hold is released by somebody who may");
        Unless(May(Position.Technician), "an apprentice releases nothing");
        Unless(Me?.Can(hold.Qualification, _now) ?? false, "a hold is released by somebody qualified");
        Unless(released.Why.Trim().Length > 0 && released.Evidence.Trim().Length > 0, "a release has a reason and says on what evidence");
        foreach (var wait in new Waits(_shop, car, hold.Id, _now).Before().Where(w => w.Sure)) Broken($"released although it waits on {wait.Kind} ({wait.About})");
        foreach (var link in car.Plan.Links.Where(l => l.Task == hold.Id && car.Tasks.ContainsKey(l.After)))
            Unless(!WorkedOn(car, car.Tasks[link.After]).Contains(_sent.Actor), "nobody releases their own work");
        Unless(!hold.KeyCheck || _shop.IsCalled(car, hold.Id), "the word is given on a call that stands");
        if (!hold.Handover) return;
        foreach (var rest in Handover.Open(_shop, car, hold.Id)) Broken("handed over although " + rest);
    }

    private void Failed(CarPicture car, StartFailed failed)
    {
        Unless(car.Hold(failed.Hold).KeyCheck && car.Holds[failed.Hold].Released is not null, "a start fails after the word was given");
        Unless(May(Position.Technician) && failed.Why.Trim().Length > 0, "who says that a start failed says why");
        foreach (var undone in failed.Undo)
            Unless(car.Before(failed.Hold).Contains(undone) && car.Tasks[undone].Status is Domain.Work.WorkStatus.SignedOff or Domain.Work.WorkStatus.ForSecondCheck, "a failed start undoes what was done before it");
        Unless(car.Plan.Links.Where(l => l.After == failed.Hold && car.Tasks.ContainsKey(l.Task)).All(l => !car.Tasks[l.Task].InHand), "nobody goes on after a failed start");
    }

    private void OfShop(Fact fact)
    {
        switch (fact)
        {
            case StopReleased released:
                var stop = _shop.Stops[released.Stop];
                Unless(stop.Safe, "a stop is made safe before it is released");
                Unless(May(Position.Foreman), "a stop is released by the foreman");
                Unless(!stop.Crews.Contains(_sent.Actor), "nobody releases their own work");
                break;
            case TakenBack back:
                Unless(_shop.Entries.LastOrDefault(e => e.CommandId == back.Command) is { } last && last.Actor == _sent.Actor && _now - last.RecordedAt <= TimeSpan.FromMinutes(1), "taken back by the same person within a minute");
                break;
            case PersonSet or PlaceSet or PlaceTakenOut or GearSet or InstrumentSet or HazardSet or KeepApartSet or KeepApartTakenOut or ShopItemSet or ShopSet:
                Unless(_shop.People.Count == 0 || May(Position.Owner), "the shop's own data are the owner's");
                break;
        }
    }

    /// <summary>What making a stop safe has to answer: asked before anything of it is read.</summary>
    private void MadeSafe(MakeSafe command)
    {
        if (!_shop.Stops.TryGetValue(command.Stop, out var stop)) return;
        var answers = command.Answers.ToLookup(a => a.Hazard, a => a.Ended);
        foreach (var key in StopScopes.DangersIn(_shop, stop).Keys) Unless(answers.Contains(key), $"made safe without a word on {key}");
        _stopped = [.. StopScopes.WorkIn(_shop, stop).Select(w => w.Task)];
    }

    private List<TaskPicture> _stopped = [];
}

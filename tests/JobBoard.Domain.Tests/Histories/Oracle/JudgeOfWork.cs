using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>What has to be so for each fact about work, before it is read.</summary>
public sealed partial class Judge
{
    private PersonPicture? Me => _shop.People.GetValueOrDefault(_sent.Actor);

    private bool May(Position least) => Me?.Position >= least;

    private void Look(Entry entry)
    {
        switch (entry.Fact)
        {
            case TaskFact fact:
                OfTask(_shop.Cars[fact.Car], _shop.Cars[fact.Car].Tasks[fact.Task], fact, entry);
                break;
            case CarFact fact:
                OfCar(fact);
                break;
            default:
                OfShop(entry.Fact);
                break;
        }
    }

    private void OfTask(CarPicture car, TaskPicture task, TaskFact fact, Entry entry)
    {
        switch (fact)
        {
            case TaskStarted started:
                Started(car, task, started);
                break;
            case TaskSignedOff signed:
                SignedOff(car, task, signed);
                break;
            case SecondChecked checkedAgain:
                Checked(car, task, checkedAgain);
                break;
            case ReadingLogged logged:
                Logged(car.Task(task.Id).Readings.First(r => r.Id == logged.Reading), logged, entry);
                break;
            case ReadingReleased released:
                Freed(car, task, released);
                break;
            case TaskUndone undone:
                Undone(car, task, undone);
                break;
            case AgainAnswered:
                Unless(car.Questions.Contains(task.Id), "an answer to a question nobody asked");
                Unless(May(Position.Foreman), "again or not is answered by the foreman");
                break;
            case CrewJoined joined:
                Unless(task.InHand, "only work in hand is joined");
                foreach (var wait in new Waits(_shop, car, task.Id, _now).Joining([.. task.Crew, joined.Member], joined.Member)) Broken($"joins although waiting on {wait.Kind}");
                break;
            case TaskLeftPartDone left:
                Left(car, task, left);
                break;
            case TaskSaidFinished or CrewLeft:
                Unless(task.InHand, "only work in hand is left");
                break;
        }
    }

    private void Started(CarPicture car, TaskPicture task, TaskStarted started)
    {
        var plan = car.Task(task.Id);
        foreach (var wait in (_waits ?? []).Where(w => w.Sure)) Broken($"starts although it waits on {wait.Kind} ({wait.About})");
        Unless(started.Anew == (task.Status != WorkStatus.PartDone), "a start anew is one that does not go on");
        Unless(started.Disturbs.ToHashSet().SetEquals(Picture.Disturbed(car, task.Id)), "a start disturbs all that it changes and touches");
        var began = plan.Hazards.Where(h => _shop.Hazards[h.Hazard].Ends is HazardEnd.WhenMadeSafe or HazardEnd.ByReading).Select(h => task.Id + "/" + h.Hazard);
        Unless(started.Began.Select(b => b.Id).ToHashSet().SetEquals(began), "a start begins the dangers that stand until made safe");
        Unless(started.Gear.Length == plan.Gear.Length, "a start takes all its gear");
        Unless(plan.Place == "car" ? started.Place is null : started.Place is not null, "a start takes its place");
    }

    private void Left(CarPicture car, TaskPicture task, TaskLeftPartDone left)
    {
        var plan = car.Task(task.Id);
        Unless(task.InHand, "only work in hand is left");
        Unless(plan.HowLeft.IsEmpty || !string.IsNullOrWhiteSpace(left.How), "how it was left is said where it is asked");
        Unless(plan.Changes.All(c => left.Items.TryGetValue(c.Item, out var on) && (on == car.Items[c.Item] || c.Path.Contains(on))), "items are left in a condition on the way");
        if (_sent.Command is not LeavePartDone said) return;
        var dangerous = plan.Changes.Where(c => !c.Through.IsEmpty || car.Plan.Items.First(i => i.Id == c.Item).Dangers.Any(d => c.Path.Contains(d.Condition)));
        Unless(dangerous.All(c => said.Items.ContainsKey(c.Item)), "what can be dangerous on the way is said");
    }

    private void SignedOff(CarPicture car, TaskPicture task, TaskSignedOff signed)
    {
        var plan = car.Task(task.Id);
        Unless(task.InHand, "only work in hand is signed off");
        Unless(May(Position.Technician), "an apprentice signs nothing off");
        Unless(task.WorkedBy.Contains(_sent.Actor) || May(Position.Foreman), "a person signs off their own work, or the foreman does");
        foreach (var missing in MissingReadings(car, task)) Broken($"sign-off without its evidence: {missing}");
        foreach (var link in car.Plan.Links.Where(l => l.Task == task.Id && l.Kind is LinkKind.FinishFinish or LinkKind.StartFinish))
            if (link.Task == task.Id && !new Waits(_shop, car, task.Id, _now).Finishes(link)) Broken($"sign-off before its link to {link.After}");
        Unless(signed.ForSecondCheck == plan.SecondCheck, "a second check where the plan asks for one");
        Unless(plan.Changes.All(c => signed.Items.TryGetValue(c.Item, out var left) && left == c.To), "a sign-off leaves items as the plan says");
    }

    /// <summary>Readings not there, lapsed, held, or not seen by two where that is asked.</summary>
    private static IEnumerable<string> MissingReadings(CarPicture car, TaskPicture task)
    {
        foreach (var need in car.Task(task.Id).Readings)
        {
            var last = car.Last(task.Id + "/" + need.Id);
            if (last is null || last.Missing) yield return need.Id + " is missing";
            else if (Waits.Held(need, last)) yield return need.Id + " is out";
            else if (need.SeenByTwo && last.SeenBy is null) yield return need.Id + " was seen by one";
        }
    }

    private void Checked(CarPicture car, TaskPicture task, SecondChecked said)
    {
        Unless(task.Status == WorkStatus.ForSecondCheck, "a second check of what does not wait for one");
        Unless(May(Position.Technician), "an apprentice checks nothing");
        Unless(!WorkedOn(car, task).Contains(_sent.Actor), "nobody checks their own work");
        Unless(Me?.Can(car.Task(task.Id).SecondCheckQualification, _now) ?? false, "a second check by somebody qualified");
        Unless(!said.Passed || !task.Lapsed, "what has lapsed passes no check");
    }

    /// <summary>Anybody who was on the task, took one of its readings or signed it off.</summary>
    private static HashSet<string> WorkedOn(CarPicture car, TaskPicture task) =>
    [
        .. task.WorkedBy,
        .. car.Task(task.Id).Readings.SelectMany(r => car.Readings.GetValueOrDefault(task.Id + "/" + r.Id, [])).Select(r => r.By),
        .. task.SignedOff is { } word ? new[] { word.By } : [],
    ];

    private void Logged(ReadingNeed need, ReadingLogged logged, Entry entry)
    {
        var with = logged.Instrument is { } id ? _shop.Instruments[id] : null;
        Unless(Verdicts.In(logged.Value, logged.Unit, need.Unit) == logged.InLimitUnit, $"a reading of {logged.Value} {logged.Unit} in {need.Unit}");
        Unless(Verdicts.GuardBand(with, logged.InLimitUnit, need.Unit) == logged.Uncertainty, "a reading's guard band");
        var verdict = Verdicts.Of(need, logged.InLimitUnit, with, entry.OccurredAt);
        Unless(verdict == logged.Verdict, $"the verdict is {verdict}, not {logged.Verdict}");
    }

    private void Freed(CarPicture car, TaskPicture task, ReadingReleased released)
    {
        var last = car.Last(task.Id + "/" + released.Reading);
        Unless(last is not null && last.Seq == released.ReadingSeq && last.Verdict != Verdict.InLimits, "only the last reading is released, and only if not in limits");
        Unless(May(Position.Foreman), "a reading is released by the foreman");
        Unless(!WorkedOn(car, task).Contains(_sent.Actor), "nobody releases their own work");
        Unless(released.Why.Trim().Length > 0, "a release has a reason");
    }

    private void Undone(CarPicture car, TaskPicture task, TaskUndone undone)
    {
        Unless(task.Status is WorkStatus.SignedOff or WorkStatus.ForSecondCheck, "only what was done is undone");
        var later = Order.After(car.Plan, task.Id).Where(n => car.Tasks.TryGetValue(n, out var t) && t.Status is WorkStatus.SignedOff or WorkStatus.ForSecondCheck).Where(car.Tasks.ContainsKey).ToHashSet();
        Unless(later.SetEquals(undone.Questions), $"the questions are about {string.Join(", ", later)}, not {string.Join(", ", undone.Questions)}");
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Items;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>How the picture reads what happened to cars and tasks.</summary>
public sealed partial class Picture
{
    private void ReadCar(CarFact fact, Entry entry)
    {
        var at = entry.OccurredAt;
        switch (fact)
        {
            case CarTakenIn taken:
                Cars[taken.Car] = new CarPicture(taken.Car, taken.Plan, taken.Place);
                break;
            case CarMoved moved:
                Cars[moved.Car].Place = moved.Place;
                break;
            case ItemChanged changed:
                Put(Cars[changed.Car], changed.Item, changed.To, []);
                Hung(Cars[changed.Car], [changed.Item], changed.HangsIn);
                Disturb(Cars[changed.Car], null, changed.Disturbs, at);
                break;
            case PlanChanged changed:
                Change(Cars[changed.Car], changed);
                break;
            case PlanRevised revised:
                Revise(Cars[revised.Car], revised.Plan);
                break;
            case HoldReleased released:
                var word = new Word(entry.Actor, at);
                Cars[released.Car].Holds[released.Hold].Released = word;
                HoldAgainstThePast(Cars[released.Car], word);
                TakeAgain(Cars[released.Car], released.Hold, Cars[released.Car].Hold(released.Hold).TakesAgain, at);
                break;
            case HazardMadeSafe safe:
                Cars[safe.Car].Standing.Remove(safe.Hazard);
                break;
            case HazardEndedByReading ended:
                Cars[ended.Car].Standing.Remove(ended.Hazard);
                break;
            default:
                ReadSmall(fact);
                break;
        }
    }

    private void ReadSmall(CarFact fact)
    {
        var car = Cars[fact.Car];
        switch (fact)
        {
            case PartOrdered part:
                car.Parts[part.Part] = PartStatus.Ordered;
                break;
            case PartArrived part:
                car.Parts[part.Part] = PartStatus.Arrived;
                break;
            case PartChecked part:
                car.Parts[part.Part] = part.Right ? PartStatus.CheckedRight : PartStatus.Wrong;
                break;
            case TaskLetThrough through:
                car.LetThrough.Add((through.Hold, through.Task));
                break;
            case SnagRaised snag:
                car.Snags[snag.Snag] = false;
                break;
            case SnagDone snag:
                car.Snags[snag.Snag] = true;
                break;
        }
    }

    private static void Change(CarPicture car, PlanChanged changed)
    {
        car.Plan = After(car.Plan, changed);
        foreach (var task in changed.TakenOut) car.Tasks.Remove(task);
        foreach (var task in changed.Added) car.Tasks[task.Id] = new TaskPicture(task.Id);
    }

    private static void Revise(CarPicture car, Domain.Plans.Plan plan)
    {
        foreach (var task in car.Tasks.Values.Where(t => plan.Tasks.All(p => p.Id != t.Id)).ToList()) car.Tasks.Remove(task.Id);
        foreach (var task in car.Tasks.Values)
            if (plan.Tasks.First(p => p.Id == task.Id).Estimate != car.Task(task.Id).Estimate) task.Revised = null;
        foreach (var task in plan.Tasks) car.Tasks.TryAdd(task.Id, new TaskPicture(task.Id));
        Keep(car.Holds, plan.Holds.ToDictionary(h => h.Id, _ => new HoldPicture()));
        Keep(car.Items, plan.Items.ToDictionary(i => i.Id, i => i.AtTakeIn));
        Keep(car.Parts, plan.Parts.ToDictionary(p => p.Id, _ => PartStatus.NotOrdered));
        foreach (var key in car.Answers.Keys.Where(k => plan.Holds.All(h => h.Id != k.Hold)).ToList()) car.Answers.Remove(key);
        car.Plan = plan;
    }

    private static void Keep<T>(SortedDictionary<string, T> known, Dictionary<string, T> planned)
    {
        foreach (var id in known.Keys.Except(planned.Keys).ToList()) known.Remove(id);
        foreach (var (id, first) in planned) known.TryAdd(id, first);
    }

    /// <summary>The plan after a change; links of what is taken out go with it.</summary>
    public static Domain.Plans.Plan After(Domain.Plans.Plan plan, PlanChanged changed)
    {
        var tasks = plan.Tasks.Where(t => !changed.TakenOut.Contains(t.Id)).Concat(changed.Added);
        var links = plan.Links.Where(l => !changed.LinksTakenOut.Contains(l) && !changed.TakenOut.Contains(l.Task) && !changed.TakenOut.Contains(l.After));
        return plan with { Tasks = [.. tasks], Links = [.. links, .. changed.LinksAdded] };
    }

    private void ReadTask(TaskFact fact, TaskPicture task, Entry entry)
    {
        var car = Cars[fact.Car];
        switch (fact)
        {
            case TaskStarted started:
                Start(car, task, started, entry);
                break;
            case CrewJoined joined:
                task.WorkedBy.Add(joined.Member.Person);
                CrewChanged(car, task, [.. task.Crew, joined.Member], entry.OccurredAt);
                break;
            case CrewLeft left:
                CrewChanged(car, task, [.. task.Crew.Where(m => m.Person != left.Person)], entry.OccurredAt);
                break;
            case TaskLeftPartDone left:
                Lay(car, task, left.Items, entry.OccurredAt);
                Hung(car, left.Items.Keys, left.HangsIn);
                (task.Status, task.LeftBy) = (WorkStatus.PartDone, left.How is null ? null : entry.Actor);
                break;
            case TaskSaidFinished said:
                Lay(car, task, said.Items, entry.OccurredAt);
                Hung(car, said.Items.Keys, said.HangsIn);
                (task.Status, task.LeftBy) = (WorkStatus.PartDone, entry.Actor);
                break;
            case TaskSignedOff signed:
                Lay(car, task, signed.Items, entry.OccurredAt);
                Hung(car, signed.Items.Keys, signed.HangsIn);
                (task.SignedOff, task.EndedAt) = (new Word(entry.Actor, entry.OccurredAt), entry.OccurredAt);
                Done(car, task, signed.ForSecondCheck ? WorkStatus.ForSecondCheck : WorkStatus.SignedOff, entry.OccurredAt);
                HoldAgainstThePast(car, task.SignedOff);
                break;
            default:
                ReadWord(car, task, fact, entry);
                break;
        }
    }

    /// <summary>Done, or done but for its second check.</summary>
    private void Done(CarPicture car, TaskPicture task, WorkStatus status, DateTimeOffset at)
    {
        task.Status = status;
        if (status != WorkStatus.SignedOff) return;
        task.OpenAgain = false;
        TakeAgain(car, task.Id, car.Task(task.Id).TakesAgain, at);
    }

    private static void Undo(CarPicture car, TaskPicture task)
    {
        (task.Status, task.OpenAgain, task.SignedOff) = (WorkStatus.Undone, true, null);
        car.Questions.Remove(task.Id);
    }

    private void ReadWord(CarPicture car, TaskPicture task, TaskFact fact, Entry entry)
    {
        switch (fact)
        {
            case LeftAcknowledged ack:
                task.Acknowledged.Add(ack.Person);
                break;
            case SecondChecked { Passed: true }:
                Done(car, task, WorkStatus.SignedOff, entry.OccurredAt);
                break;
            case SecondChecked:
                Undo(car, task);
                break;
            case TaskUndone undone:
                Undo(car, task);
                car.Questions.UnionWith(undone.Questions);
                break;
            case AgainAnswered { Again: true }:
                Undo(car, task);
                break;
            case AgainAnswered:
                car.Questions.Remove(task.Id);
                break;
            case EstimateRevised revised:
                task.Revised = revised.Estimate;
                break;
            case ReadingLogged logged:
                Log(car, logged, entry);
                break;
            case ReadingReleased released:
                car.Readings[released.Task + "/" + released.Reading].Single(r => r.Seq == released.ReadingSeq).Released = true;
                break;
        }
    }

    private void Log(CarPicture car, ReadingLogged logged, Entry entry)
    {
        var key = logged.Task + "/" + logged.Reading;
        if (!car.Readings.TryGetValue(key, out var all)) car.Readings[key] = all = [];
        var reading = new ReadingPicture(entry.Actor, entry.OccurredAt, entry.Seq, logged.Verdict, logged.SeenBy);
        all.Add(reading);
        HoldAgainstThePast(car, reading);
        if (reading.LapsedAt is not null || !(car.Tasks[logged.Task].AgainSince > reading.At)) return;
        reading.LapsedAt = car.Tasks[logged.Task].AgainSince;
        Became.Add($"{car.Id}/{key} lapsed");
    }

    private void Start(CarPicture car, TaskPicture task, TaskStarted started, Entry entry)
    {
        var anew = task.Status != WorkStatus.PartDone;
        if (anew)
        {
            task.WorkedBy.Clear();
            task.OpenAgain |= task.SignedOff is not null;
            OwnReadingsLapse(car, task.Id, entry.OccurredAt);
            task.AgainSince = task.StartedAt is null ? null : entry.OccurredAt;
            (task.StartedAt, task.Done, task.SignedOff) = (entry.OccurredAt, 0, null);
        }

        (task.Status, task.EndedAt, task.LeftBy) = (WorkStatus.InHand, null, null);
        task.Acknowledged.Clear();
        car.Questions.Remove(task.Id);
        (task.Place, task.Gear) = (started.Place, [.. started.Gear]);
        task.WorkedBy.UnionWith(started.Crew.Select(m => m.Person));
        CrewChanged(car, task, [.. started.Crew], entry.OccurredAt);
        foreach (var danger in started.Began) car.Standing[danger.Id] = new(danger.Hazard, task.Id, danger.Place, danger.EndsByReading);
        Disturb(car, task.Id, Disturbed(car, task.Id), entry.OccurredAt);
    }

    /// <summary>Work stops: crew, place and gear are free, and the items are as they were left; what hangs keeps the gear it hangs in.</summary>
    private void Lay(CarPicture car, TaskPicture task, IEnumerable<KeyValuePair<string, string>> items, DateTimeOffset at)
    {
        CrewChanged(car, task, [], at);
        foreach (var (item, condition) in items) Put(car, item, condition, task.Gear);
        (task.Place, task.Gear) = (null, []);
    }

    private void Put(CarPicture car, string item, string condition, List<string> gear)
    {
        car.Items[item] = condition;
        var hangs = car.Plan.Items.First(i => i.Id == item).Dangers.Any(d => d.Condition == condition && Hazards[d.Hazard].HangsInGear);
        if (!hangs) car.HangsIn.Remove(item);
        else if (gear.Count > 0) car.HangsIn[item] = [.. gear];
    }

    /// <summary>What is written down of loads is what is so.</summary>
    private void Hung(CarPicture car, IEnumerable<string> items, IEnumerable<KeyValuePair<string, ImmutableArray<string>>> said)
    {
        var so = items.Where(car.HangsIn.ContainsKey).Select(i => $"{i} in {string.Join(", ", car.HangsIn[i])}").Order(StringComparer.Ordinal);
        if (!so.SequenceEqual(said.Select(s => $"{s.Key} in {string.Join(", ", s.Value)}").Order(StringComparer.Ordinal))) Shaken.Add($"what hangs on {car.Id} is not what was written down");
    }

    private void CrewChanged(CarPicture car, TaskPicture task, List<CrewMember> crew, DateTimeOffset at)
    {
        var full = new Crews(this, at).Open(car.Task(task.Id), crew).Count == 0;
        if (full && task.FullSince is not null) (task.Crew, full) = (crew, true);
        else if (task.FullSince is { } since) task.Done += (int)Calendar.Between(since, at).TotalMinutes;
        if (task.FullSince is null || !full) task.FullSince = full ? at : null;
        task.Crew = crew;
    }
}

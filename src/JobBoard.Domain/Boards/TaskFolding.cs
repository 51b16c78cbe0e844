using System.Collections.Immutable;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Items;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Boards;

/// <summary>Folds facts about the tasks of a car.</summary>
internal static class TaskFolding
{
    public static CarBoard Fold(CarBoard car, TaskFact fact, Entry entry, ShopState shop) => fact switch
    {
        TaskStarted f => Start(car, f, entry),
        CrewJoined f => With(car, f.Task, t => t with
        {
            Crew = t.Crew.Add(f.Member),
            WorkedBy = t.WorkedBy.Add(f.Member.Person),
            FullSince = f.Full ? t.FullSince ?? entry.OccurredAt : t.FullSince,
        }),
        CrewLeft f => With(car, f.Task, t => t with
        {
            Crew = t.Crew.RemoveAll(m => m.Person == f.Person),
            MinutesDone = f.MinutesDone,
            FullSince = f.Full ? entry.OccurredAt : null,
        }),
        TaskLeftPartDone f => Leave(car, f, f.Items, f.How, f.MinutesDone, f.HangsIn, entry),
        TaskSaidFinished f => Leave(car, f, f.Items, "said finished, missing: " + string.Join("; ", f.Missing), f.MinutesDone, f.HangsIn, entry),
        LeftAcknowledged f => With(car, f.Task, t => t with { Left = t.Left! with { AcknowledgedBy = t.Left.AcknowledgedBy.Add(f.Person) } }),
        TaskSignedOff f => SignOff(car, f, entry),
        SecondChecked { Passed: true } f => With(car, f.Task, t => t with { Status = WorkStatus.SignedOff, Checked = new(entry.Actor, entry.OccurredAt), Reopened = false }),
        SecondChecked f => With(car with { Questions = car.Questions.Remove(f.Task) }, f.Task, t => t with { Status = WorkStatus.Undone, UndoneBecause = f.Why, Reopened = true }),
        TaskUndone f => Undo(car, f),
        AgainAnswered f => Answer(car, f),
        EstimateRevised f => With(car, f.Task, t => t with { Revised = f.Estimate }),
        ReadingLogged f => Log(car, f, entry),
        ReadingReleased f => WithReading(car, f.Task + "/" + f.Reading, f.ReadingSeq, r => r with { Released = new(entry.Actor, entry.OccurredAt) }),
        _ => car,
    };

    public static CarBoard With(CarBoard car, string task, Func<TaskState, TaskState> change) =>
        car.Tasks.TryGetValue(task, out var state) ? car with { Tasks = car.Tasks.SetItem(task, change(state)) } : car;

    public static CarBoard WithReading(CarBoard car, string key, long? seq, Func<Reading, Reading> change)
    {
        if (!car.Readings.TryGetValue(key, out var readings)) return car;
        return car with { Readings = car.Readings.SetItem(key, [.. readings.Select(r => seq is null || r.Seq == seq ? change(r) : r)]) };
    }

    public static CarBoard Disturb(CarBoard car, ImmutableArray<string> aspects, Disturbance by)
    {
        var all = car.Disturbed;
        foreach (var aspect in aspects)
        {
            var others = all.GetValueOrDefault(aspect, []).RemoveAll(d => d.Task == by.Task);
            all = all.SetItem(aspect, others.Add(by));
        }

        return car with { Disturbed = all };
    }

    private static CarBoard Start(CarBoard car, TaskStarted f, Entry entry)
    {
        var at = entry.OccurredAt;
        var started = With(car, f.Task, t => t with
        {
            Status = WorkStatus.InHand,
            Crew = f.Crew,
            WorkedBy = (f.Anew ? t.WorkedBy.Clear() : t.WorkedBy).Union(f.Crew.Select(m => m.Person)),
            Place = f.Place,
            Gear = f.Gear,
            StartedAt = f.Anew ? at : t.StartedAt ?? at,
            AgainSince = f.Anew && t.StartedAt is not null ? at : t.AgainSince,
            InHandSince = at,
            FullSince = at,
            MinutesDone = f.Anew ? 0 : t.MinutesDone,
            WorkEndedAt = null,
            Left = null,
            SignedOff = null,
            Checked = null,
            Reopened = t.Reopened || t.SignedOff is not null,
            UndoneBecause = null,
        });
        started = started with
        {
            Standing = started.Standing.RemoveAll(s => f.Began.Any(b => b.Id == s.Id)).AddRange(f.Began),
            Questions = started.Questions.Remove(f.Task),
        };
        return Disturb(started, f.Disturbs, new(f.Task, entry.Actor, at));
    }

    private static CarBoard Leave(CarBoard car, TaskFact f, ImmutableSortedDictionary<string, string> items, string? how, int minutes, ImmutableSortedDictionary<string, ImmutableArray<string>> hangsIn, Entry entry)
    {
        var left = With(car, f.Task, t => t with
        {
            Status = WorkStatus.PartDone,
            Crew = [],
            Place = null,
            Gear = [],
            InHandSince = null,
            FullSince = null,
            MinutesDone = minutes,
            Left = how is null ? null : new(how, entry.Actor, entry.OccurredAt, ImmutableSortedSet.Create<string>(StringComparer.Ordinal)),
        });
        return Hang(SetItems(left, items, f.Task, entry), items.Keys, hangsIn);
    }

    private static CarBoard SignOff(CarBoard car, TaskSignedOff f, Entry entry)
    {
        var done = With(car, f.Task, t => t with
        {
            Status = f.ForSecondCheck ? WorkStatus.ForSecondCheck : WorkStatus.SignedOff,
            Crew = [],
            Place = null,
            Gear = [],
            InHandSince = null,
            FullSince = null,
            MinutesDone = f.MinutesDone,
            WorkEndedAt = entry.OccurredAt,
            SignedOff = new(entry.Actor, entry.OccurredAt),
            Reopened = f.ForSecondCheck && t.Reopened,
        });
        return Hang(SetItems(done, f.Items, f.Task, entry), f.Items.Keys, f.HangsIn);
    }

    /// <summary>What these items hang in from now on; those not named hang in nothing.</summary>
    public static CarBoard Hang(CarBoard car, IEnumerable<string> items, ImmutableSortedDictionary<string, ImmutableArray<string>> hangsIn) =>
        car with { HangsIn = car.HangsIn.RemoveRange(items).SetItems(hangsIn) };

    private static CarBoard SetItems(CarBoard car, ImmutableSortedDictionary<string, string> items, string task, Entry entry)
    {
        var changed = items.Where(i => car.Items[i.Key].Condition != i.Value)
            .Select(i => KeyValuePair.Create(i.Key, new ItemState(i.Key, i.Value, entry.OccurredAt, entry.Actor, task)));
        return car with { Items = car.Items.SetItems(changed) };
    }

    private static CarBoard Undo(CarBoard car, TaskUndone f)
    {
        var undone = With(car, f.Task, t => t with { Status = WorkStatus.Undone, UndoneBecause = f.Why, Reopened = true });
        return undone with { Questions = undone.Questions.Remove(f.Task).SetItems(f.Questions.Select(q => KeyValuePair.Create(q, f.Task))) };
    }

    private static CarBoard Answer(CarBoard car, AgainAnswered f)
    {
        var answered = car with { Questions = car.Questions.Remove(f.Task) };
        return f.Again ? With(answered, f.Task, t => t with { Status = WorkStatus.Undone, UndoneBecause = f.Why, Reopened = true }) : answered;
    }

    private static CarBoard Log(CarBoard car, ReadingLogged f, Entry entry)
    {
        var reading = new Reading
        {
            Seq = entry.Seq,
            Key = f.Key,
            Text = f.Text,
            Value = f.Value,
            Unit = f.Unit,
            InLimitUnit = f.InLimitUnit,
            Uncertainty = f.Uncertainty,
            Verdict = f.Verdict,
            Because = f.Because,
            Instrument = f.Instrument,
            By = entry.Actor,
            SeenBy = f.SeenBy,
            At = entry.OccurredAt,
        };
        return car with { Readings = car.Readings.SetItem(f.Key, car.Readings.GetValueOrDefault(f.Key, []).Add(reading)) };
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>Signing off and checking a second time.</summary>
internal static class Finishing
{
    public static void SignOff(Ask ask, SignOffTask command)
    {
        if (ask.Task(command) is not { } q || !Leaving.InHand(ask, q)) return;
        WhoSigns(ask, q);
        if (ask.Reasons.Count > 0) return;
        var missing = Missing(q).ToImmutableArray();
        var minutes = Remaining.Done(q.State, ask.Hours, ask.At);
        var items = q.Task.Changes.ToImmutableSortedDictionary(c => c.Item, c => c.To, StringComparer.Ordinal);
        if (missing.IsEmpty) Finish(ask, q, items, minutes);
        else if (command.Late) SaidFinished(ask, q, missing, items, minutes);
        else ask.Reasons.AddRange(missing);
    }

    private static void WhoSigns(Ask ask, TaskQuestion q)
    {
        if (ask.Person.Position == Position.Apprentice)
            ask.Refuse(RuleBook.Ids.ApprenticeSigns, "An apprentice signs nothing off.", [ask.Person.WorksUnder ?? ""], "actor");
        if (!q.State.WorkedBy.Contains(ask.Actor) && ask.Person.Position < Position.Foreman)
            ask.Refuse(RuleBook.Ids.OwnSignOff, $"{q.Task.Name} is signed off by whoever worked on it, or the foreman.", [.. q.State.WorkedBy], "actor");
    }

    private static void Finish(Ask ask, TaskQuestion q, ImmutableSortedDictionary<string, string> items, int minutes)
    {
        ask.Facts.Add(new TaskSignedOff(items, q.Task.SecondCheck, minutes, Loads.After(q, items)) { Car = q.Car.Id, Task = q.Task.Id });
        if (!q.Task.SecondCheck) ask.Facts.AddRange(Lapsing.TakenAgain(ask, q.Car, q.Task.Id, q.Task.TakesAgain));
        var standsOn = q.Task.StandsOn.Concat(q.Task.Readings.SelectMany(r => r.StandsOn));
        if (ask.Has(RuleBook.Ids.Lapse) && Lapsing.Since(ask, q, standsOn) is { } lapse)
            ask.Facts.Add(new EvidenceLapsed(EvidenceKind.SignOff, q.Task.Id, lapse) { Car = q.Car.Id });
    }

    private static void SaidFinished(Ask ask, TaskQuestion q, ImmutableArray<WaitingOn> missing, ImmutableSortedDictionary<string, string> items, int minutes)
    {
        ask.Facts.Add(new TaskSaidFinished([.. missing.Select(m => m.Words)], items, minutes, Loads.After(q, items)) { Car = q.Car.Id, Task = q.Task.Id });
        ask.Facts.Add(new DeviationNoted(q.Car.Id, q.Task.Id, $"{q.Task.Name} was said finished late, with things missing."));
    }

    /// <summary>Everything sign-off still wants.</summary>
    public static IEnumerable<WaitingOn> Missing(TaskQuestion q)
    {
        if (q.Has(RuleBook.Ids.Evidence))
        {
            foreach (var need in q.Task.Readings)
            {
                if (MissingReading(q, need) is { } missing) yield return missing;
            }
        }

        foreach (var link in q.Index.LinksInto(q.Task.Id))
        {
            if (q.Has(RuleBook.Ids.FinishLink) && OfFinishLink(q, link) is { } waiting) yield return waiting;
        }
    }

    private static WaitingOn? MissingReading(TaskQuestion q, ReadingNeed need)
    {
        var key = q.Task.Id + "/" + need.Id;
        var latest = HoldRules.Latest(q.Car, q.Task.Id, need.Id);
        if (latest is null) return new(RuleBook.Ids.Evidence, $"{need.Name} is not taken{(q.Car.Readings.ContainsKey(key) ? " again since it lapsed" : "")}.", [.. q.State.Crew.Select(m => m.Person)], About: key);
        if (HoldRules.Holding(q.Car, q.Task, need) is { } bad)
            return new(RuleBook.Ids.Evidence, $"{need.Name} is {HoldRules.Words(bad.Verdict)}: {bad.Text} {bad.Unit}. Take it again, or have it released.", [.. q.State.Crew.Select(m => m.Person)], About: key);
        return need.SeenByTwo && latest.SeenBy is null
            ? new(RuleBook.Ids.Evidence, $"{need.Name} has to be seen by two: take it again with the second name.", [.. q.State.Crew.Select(m => m.Person)], About: key)
            : null;
    }

    private static WaitingOn? OfFinishLink(TaskQuestion q, Link link)
    {
        if (link.Kind is LinkKind.FinishStart or LinkKind.StartStart || !q.Car.Tasks.TryGetValue(link.After, out var before)) return null;
        var since = link.Kind == LinkKind.FinishFinish ? (before.Status == WorkStatus.SignedOff ? before.WorkEndedAt : null) : before.StartedAt;
        if (since is null)
            return new(RuleBook.Ids.FinishLink, $"{q.NameOf(link.After)} {(link.Kind == LinkKind.FinishFinish ? "is not done" : "is not started")}: this is not finished before it.", [.. before.Crew.Select(m => m.Person)], About: link.After);
        var until = link.Clock == LagClock.Elapsed ? since.Value.AddMinutes(link.Lag) : q.Hours.AddWorking(since.Value, link.Lag);
        return until > q.Now ? new(RuleBook.Ids.FinishLink, $"{link.Lag} min after {q.NameOf(link.After)} are not over.", [], until, link.After) : null;
    }

    public static void Check(Ask ask, SecondCheck command)
    {
        if (ask.Task(command) is not { } q) return;
        if (q.State.Status != WorkStatus.ForSecondCheck)
        {
            ask.Bad("task", $"{q.Task.Name} does not wait for a second check.");
            return;
        }

        if (!command.Passed && string.IsNullOrWhiteSpace(command.Why)) ask.Bad("why", "Say what is not right.");
        if (command.Passed && q.State.Lapsed) ask.Refuse(RuleBook.Ids.Lapsed, $"{q.Task.Name} has lapsed since: it is done again first.", about: q.Task.Id);
        WhoChecks(ask, q);
        if (ask.Reasons.Count > 0) return;
        ask.Facts.Add(new SecondChecked(command.Passed, command.Why ?? "") { Car = q.Car.Id, Task = q.Task.Id });
        if (command.Passed) ask.Facts.AddRange(Lapsing.TakenAgain(ask, q.Car, q.Task.Id, q.Task.TakesAgain));
    }

    private static void WhoChecks(Ask ask, TaskQuestion q)
    {
        var others = ask.Shop.People.Values.Where(p => MayCheck(q, p)).Select(p => p.Id).ToImmutableArray();
        if (OwnWork(q.Car, q.Task.Id).Contains(ask.Actor)) ask.Refuse(RuleBook.Ids.OwnCheck, "Nobody checks their own work.", others, "actor");
        if (!ask.Person.IsQualified(q.Task.SecondCheckQualification, ask.Now))
            ask.Refuse(RuleBook.Ids.OwnCheck, $"This check asks for somebody qualified for {q.Task.SecondCheckQualification}.", others, "actor");
    }

    /// <summary>Whether a person may check a task a second time.</summary>
    public static bool MayCheck(TaskQuestion q, People.Person person) =>
        !person.Left && person.Position >= Position.Technician && person.IsQualified(q.Task.SecondCheckQualification, q.Now) && !OwnWork(q.Car, q.Task.Id).Contains(person.Id);

    /// <summary>Anybody who worked on a task, signed it off, or took one of its readings.</summary>
    public static ImmutableHashSet<string> OwnWork(Boards.CarBoard car, string task)
    {
        var state = car.Tasks[task];
        var readers = PlanIndex.Of(car.Plan).Task(task)?.Readings.SelectMany(r => car.Readings.GetValueOrDefault(task + "/" + r.Id, [])).Select(r => r.By) ?? [];
        return [.. state.WorkedBy, .. readers, .. state.SignedOff is { } word ? [word.By] : Array.Empty<string>()];
    }
}

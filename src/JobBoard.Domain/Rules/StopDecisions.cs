using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>Raising, hearing, making safe and releasing stops.</summary>
internal static class StopDecisions
{
    public static void Raise(Ask ask, RaiseStop c)
    {
        if (string.IsNullOrWhiteSpace(c.Why)) ask.Bad("why", "Say why: a word is enough.");
        if (c.Scope is StopScope.Car or StopScope.Task && (c.Car is null || !ask.Shop.Cars.ContainsKey(c.Car))) ask.Bad("car", $"There is no car '{c.Car}'.");
        else if (c.Scope == StopScope.Task && (c.Task is null || !ask.Shop.Cars[c.Car!].Tasks.ContainsKey(c.Task))) ask.Bad("task", $"There is no task '{c.Task}'.");
        if (c.Scope == StopScope.Place && (c.Place is null || !ask.Shop.Places.ContainsKey(c.Place))) ask.Bad("place", $"There is no place '{c.Place}'.");
        if (ask.Reasons.Count > 0) return;
        var (car, task, place) = c.Scope switch
        {
            StopScope.Task => (c.Car, c.Task, null),
            StopScope.Car => (c.Car, null, null),
            StopScope.Place => (null, null, c.Place),
            _ => ((string?)null, (string?)null, (string?)null),
        };
        ask.Facts.Add(Stopping.Raise(ask.Shop, $"stop-{ask.Envelope.Id:N}", c.Scope, car, task, place, c.Why.Trim(), null));
    }

    public static void Hear(Ask ask, HearStop c)
    {
        if (Find(ask, c.Stop) is not { } stop) return;
        if (stop.Told.GetValueOrDefault(ask.Actor) is null) ask.Facts.Add(new StopHeard(stop.Id, ask.Actor));
    }

    private static Stop? Find(Ask ask, string id)
    {
        if (ask.Shop.Stops.TryGetValue(id, out var stop)) return stop;
        ask.Bad("stop", "There is no such stop, or it is released already.");
        return null;
    }

    public static void MakeSafe(Ask ask, MakeSafe c)
    {
        if (Find(ask, c.Stop) is not { } stop) return;
        if (string.IsNullOrWhiteSpace(c.How)) ask.Bad("how", "Say how it was left.");
        var answers = c.Answers.GroupBy(a => a.Hazard, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Last().Ended, StringComparer.Ordinal);
        var work = Stopping.InHand(ask.Shop).Where(x => HoldRules.Covers(stop, x.Car, x.Task.Id, x.Place)).ToArray();
        foreach (var danger in Stopping.InScope(ask.Shop, stop)) Answer(ask, danger, answers);
        if (ask.Reasons.Count > 0) return;
        foreach (var (car, state, _) in work)
        {
            var q = new TaskQuestion(ask.Shop, car, PlanIndex.Of(car.Plan).Task(state.Id)!, ask.Now, ask.Rules, ask.Hours);
            Leaving.Leave(ask, q, c.How, c.Items, car.Id + "/");
        }

        foreach (var danger in Stopping.InScope(ask.Shop, stop)) End(ask, danger, answers, c.How);
        ask.Facts.Add(new StopMadeSafe(stop.Id, c.How.Trim()));
        if (ask.Reasons.Count > 0) ask.Facts.Clear();
    }

    private static void Answer(Ask ask, Danger danger, Dictionary<string, bool> answers)
    {
        var name = danger.Hazard is { } h ? ask.Shop.Hazards.GetValueOrDefault(h)?.Name ?? h : danger.Condition;
        if (!answers.TryGetValue(danger.Key, out var ended))
            ask.Refuse(RuleBook.Ids.MadeSafeFirst, $"Say whether it has ended or still stands: {name}.", about: danger.Key);
        else if (ended && danger.Standing is not null && ask.Shop.Hazards.GetValueOrDefault(danger.Hazard!)?.Ends == HazardEnd.ByReading)
            ask.Refuse(RuleBook.Ids.ByReading, $"{name} ends by a reading, not by word.", about: danger.Key);
    }

    /// <summary>A danger of its own is ended by the answer; one of a condition ends or stands by the condition said.</summary>
    private static void End(Ask ask, Danger danger, Dictionary<string, bool> answers, string how)
    {
        var ended = answers.GetValueOrDefault(danger.Key);
        if (danger.Standing is not null)
        {
            if (ended) ask.Facts.Add(new HazardMadeSafe(danger.Standing, how.Trim()) { Car = danger.Car! });
            return;
        }

        if (danger.Item is null || !ended) return;
        var said = ask.Facts.OfType<TaskLeftPartDone>().Where(f => f.Car == danger.Car).Select(f => f.Items.GetValueOrDefault(danger.Item)).FirstOrDefault(i => i is not null);
        var now = said ?? (danger.Car is null ? danger.Condition : ask.Shop.Cars[danger.Car].Items[danger.Item].Condition);
        if (now == danger.Condition)
            ask.Bad("answers", $"You say it has ended, but {danger.Item} is still {danger.Condition}: say the condition it is in, or that it still stands.");
    }

    public static void Release(Ask ask, ReleaseStop c)
    {
        if (Find(ask, c.Stop) is not { } stop) return;
        if (string.IsNullOrWhiteSpace(c.Why)) ask.Bad("why", "Say why it may go on.");
        if (string.IsNullOrWhiteSpace(c.Evidence)) ask.Bad("evidence", "Say on what evidence: what you looked at, or which reading.");
        if (stop.Safe is null) ask.Refuse(RuleBook.Ids.MadeSafeFirst, "It is not made safe yet.", [.. stop.Told.Keys], stop.Id);
        if (OwnWork(ask.Shop, stop).Contains(ask.Actor)) ask.Refuse(RuleBook.Ids.OwnRelease, "Nobody releases a stop on their own work.", about: "actor");
        if (ask.Reasons.Count == 0) ask.Facts.Add(new StopReleased(stop.Id, c.Why.Trim(), c.Evidence.Trim()));
    }

    /// <summary>Everybody on the tasks it stopped.</summary>
    public static ImmutableHashSet<string> OwnWork(ShopState shop, Stop stop) =>
    [
        .. stop.WorkedBy,
        .. stop.Tasks.Select(t => t.Split('/')).Where(t => shop.Cars.TryGetValue(t[0], out var car) && car.Tasks.ContainsKey(t[1]))
            .SelectMany(t => shop.Cars[t[0]].Tasks[t[1]].WorkedBy),
    ];
}

using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>How evidence lapses and is taken again.</summary>
public sealed partial class Picture
{
    /// <summary>What lapsed and what was taken again since this was last cleared.</summary>
    public List<string> Became { get; } = [];

    /// <summary>What a task disturbs when it starts: all of what it changes, and what it touches.</summary>
    public static List<string> Disturbed(CarPicture car, string task)
    {
        var plan = car.Task(task);
        var changed = plan.Changes.SelectMany(c => car.Plan.Items.Where(i => i.Id == c.Item)).SelectMany(i => i.Aspects.Select(a => i.Id + "/" + a));
        return [.. changed.Concat(plan.Touches.Select(a => a.Item + "/" + a.Name)).Distinct()];
    }

    /// <summary>All words on a car that stand on one of these, with the node that gave them.</summary>
    public static IEnumerable<(string Id, string Node, Word Word)> Standing(CarPicture car, IReadOnlyCollection<string> aspects)
    {
        bool On(IEnumerable<Aspect> stands) => stands.Any(a => aspects.Contains(a.Item + "/" + a.Name));
        foreach (var task in car.Plan.Tasks)
        {
            if (car.Tasks[task.Id].SignedOff is { } word && On(task.StandsOn.Concat(task.Readings.SelectMany(r => r.StandsOn))))
                yield return (task.Id, task.Id, word);
            foreach (var reading in task.Readings.Where(r => On(r.StandsOn)))
                foreach (var one in car.Readings.GetValueOrDefault(task.Id + "/" + reading.Id, [])) yield return (task.Id + "/" + reading.Id, task.Id, one);
        }

        foreach (var hold in car.Plan.Holds.Where(h => On(h.StandsOn)))
            if (car.Holds[hold.Id].Released is { } word) yield return (hold.Id, hold.Id, word);
    }

    /// <summary>Words older than a disturbance lapse, those of the disturber itself excepted.</summary>
    private void Disturb(CarPicture car, string? disturber, IReadOnlyCollection<string> aspects, DateTimeOffset at)
    {
        car.Disturbances.Add((aspects, disturber, at));
        foreach (var (id, node, word) in Standing(car, aspects).ToList()) Lapse(car, id, node, word, disturber, at);
    }

    /// <summary>A word that comes late is held against what had been disturbed meanwhile.</summary>
    private void HoldAgainstThePast(CarPicture car, Word said)
    {
        var since = from past in car.Disturbances
                    where past.At > said.At
                    from word in Standing(car, past.Aspects)
                    where ReferenceEquals(word.Word, said)
                    orderby past.Task is not null && Foreseen(car, word.Node, past.Task), past.At
                    select (word.Id, word.Node, past.Task, past.At);
        foreach (var (id, node, disturber, at) in since.Where(s => s.Node != s.Task).Take(1).ToList()) Lapse(car, id, node, said, disturber, at);
    }

    private void Lapse(CarPicture car, string id, string node, Word word, string? disturber, DateTimeOffset at)
    {
        if (node == disturber || word.At >= at || TakenAgainSince(car, node, word, at)) return;
        var foreseen = disturber is not null && Foreseen(car, node, disturber);
        if (word.Missing && (foreseen || !word.Foreseen || word is ReadingPicture)) return;
        (word.LapsedAt, word.TakenAgain, word.Foreseen) = (at, false, foreseen);
        Became.Add($"{car.Id}/{id} lapsed{(foreseen ? " by plan" : "")}");
    }

    /// <summary>Whether a disturbance was foreseen: it comes after the evidence, and the evidence is taken again by it or after it.</summary>
    public static bool Foreseen(CarPicture car, string evidence, string disturber) =>
        car.Before(disturber).Contains(evidence) && Order.Takers(car.Plan, evidence).Any(t => t == disturber || car.Before(t).Contains(disturber));

    /// <summary>Whether something that takes it again was done after the disturbance, of which word came late.</summary>
    private static bool TakenAgainSince(CarPicture car, string node, Word word, DateTimeOffset at) =>
        word.TakenAgain && Order.Takers(car.Plan, node).SelectMany(t => OfNode(car, t)).Any(w => w.At >= at);

    /// <summary>Readings of an earlier life do not count in the next.</summary>
    private void OwnReadingsLapse(CarPicture car, string task, DateTimeOffset at)
    {
        if (car.Tasks[task].StartedAt is null) return;
        foreach (var need in car.Task(task).Readings)
            foreach (var reading in car.Readings.GetValueOrDefault(task + "/" + need.Id, []).Where(r => !r.Missing && r.At < at))
            {
                (reading.LapsedAt, reading.TakenAgain) = (at, false);
                Became.Add($"{car.Id}/{task}/{need.Id} lapsed");
            }
    }

    /// <summary>A node that was done takes again what it says it does, if that lapsed before.</summary>
    private void TakeAgain(CarPicture car, string by, IEnumerable<string> nodes, DateTimeOffset at)
    {
        foreach (var node in nodes)
            foreach (var word in OfNode(car, node).Where(w => w.Missing && w.LapsedAt <= at))
            {
                word.TakenAgain = true;
                Became.Add($"{car.Id}/{node} taken again by {by}");
            }
    }

    /// <summary>The word a node has given: its sign-off or release.</summary>
    public static IEnumerable<Word> OfNode(CarPicture car, string node)
    {
        if (car.Holds.TryGetValue(node, out var hold)) return hold.Released is { } released ? [released] : [];
        return car.Tasks.TryGetValue(node, out var task) && task.SignedOff is { } signed ? [signed] : [];
    }
}

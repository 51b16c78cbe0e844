using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>
/// Judges what the program made of one command, by what the picture shows before and after it. Each answer names the
/// rule that was broken, or nothing.
/// </summary>
public sealed partial class Judge
{
    private readonly Picture _shop;
    private readonly Envelope _sent;
    private readonly DateTimeOffset _now;
    private readonly List<string> _broken = [];
    private Dictionary<string, Trouble> _before = [];
    private readonly List<Wait>? _waits;

    /// <summary>Looks at the shop before the command is decided.</summary>
    public Judge(Picture shop, Envelope sent, DateTimeOffset now)
    {
        (_shop, _sent, _now) = (shop, sent, now);
        if (sent.Command is StartTask start && Known(start.Car, start.Task)) _waits = new Waits(shop, shop.Cars[start.Car], start.Task, now).All([.. start.Crew], start.Place);
    }

    /// <summary>What was wrong with a refusal, or nothing.</summary>
    public string? OfRefusal(Decision.Refused refused)
    {
        if (refused.Reasons.IsDefaultOrEmpty) return "a refusal without a reason";
        return _waits is null ? null : Agreement.Between(_waits, refused.Reasons);
    }

    /// <summary>What was wrong with letting it happen, or nothing; the picture has read the entries after this.</summary>
    public string? OfAcceptance(IReadOnlyList<Entry> entries)
    {
        if (!_shop.People.TryGetValue(_sent.Actor, out var actor) ? _shop.People.Count > 0 : actor.Left) Broken("unknown people do nothing");
        if (entries.Count == 0) return _broken.FirstOrDefault();
        _before = Unrest.In(_shop, _now);
        Fresh();
        if (_sent.Command is MakeSafe safe) MadeSafe(safe);
        _shop.Became.Clear();
        _shop.Shaken.Clear();
        foreach (var entry in entries)
        {
            Look(entry);
            _shop.Add(entry);
        }

        foreach (var task in _stopped) Unless(!task.InHand, $"made safe while {task.Id} goes on");
        if (!entries.Any(e => e.Fact is TakenBack)) Lapses(entries);
        Clashes(entries);
        Standing();
        _broken.AddRange(_shop.Shaken);
        return _broken.Count == 0 ? null : string.Join("; ", _broken.Distinct());
    }

    private void Broken(string rule) => _broken.Add(rule);

    private void Unless(bool met, string rule)
    {
        if (!met) Broken(rule);
    }

    private static bool HasToDoWith(PlanTask task, string item) => task.Changes.Any(c => c.Item == item) || task.Needs.Any(n => n.Item == item);

    private bool Known(string car, string task) => _shop.Cars.TryGetValue(car, out var known) && known.Tasks.ContainsKey(task);

    /// <summary>Nobody does something to a task that others changed since they looked.</summary>
    private void Fresh()
    {
        if (_sent.Seen is not { } seen || _sent.Command is not TaskCommand on || _sent.Command is LogReading or LeavePartDone or AcknowledgeLeft or LeaveTask or SignOffTask { Late: true }) return;
        var changed = _shop.Entries.Where(e => e.Seq > seen && e.Actor != _sent.Actor).Any(e => e.Fact is TaskFact fact && fact.Car == on.Car && fact.Task == on.Task);
        Unless(!changed, "others changed it since its sender looked");
    }

    /// <summary>What lapsed and what was taken again is written down, all of it and nothing else.</summary>
    private void Lapses(IReadOnlyList<Entry> entries)
    {
        var facts = entries.Select(e => e.Fact).ToList();
        var said = facts.OfType<EvidenceLapsed>().Select(f => $"{f.Car}/{f.Id} lapsed{(f.Lapse.ByPlan ? " by plan" : "")}")
            .Concat(facts.OfType<EvidenceTakenAgain>().Select(f => $"{f.Car}/{f.Node} taken again by {f.By}")).Order(StringComparer.Ordinal).ToList();
        var seen = _shop.Became.Distinct().Order(StringComparer.Ordinal).ToList();
        Unless(said.SequenceEqual(seen), $"evidence is said to be [{string.Join(", ", said)}] and is [{string.Join(", ", seen)}]");
    }

    /// <summary>Every clash that this brought about has its stop in the same append, and no stop is raised without one.</summary>
    private void Clashes(IReadOnlyList<Entry> entries)
    {
        var fresh = Unrest.In(_shop, _now).Values.Where(t => !_before.ContainsKey(t.Key)).ToList();
        var stops = entries.Select(e => e.Fact).OfType<StopRaised>().Where(s => s.Clash is not null).ToList();
        foreach (var trouble in fresh.Where(t => !stops.Any(s => Answers(s, t)))) Broken($"a clash without its stop: {trouble.Key}");
        if (fresh.Count == 0 && stops.Count > 0) Broken($"a stop without a clash: {string.Join(", ", stops.Select(s => s.Clash))}");
        if (fresh.Count > 0 && _sent.Command is StartTask) Broken($"a start that brings a clash: {string.Join(", ", fresh.Select(f => f.Key))}");
        if (entries.Any(e => e.Fact is TakenBack) && fresh.Count > 0) Broken("something was built on what is taken back");
    }

    private static bool Answers(StopRaised stop, Trouble trouble) =>
        trouble.About.Length == 0 || trouble.About.Any(about => stop.Car is null || about == stop.Car || about == $"{stop.Car}/{stop.Task}" || (stop.Task is null && about.StartsWith(stop.Car + "/", StringComparison.Ordinal)));

    /// <summary>What is so at all times: who works is in, on one task, and gear is at one.</summary>
    private void Standing()
    {
        var tying = _shop.InHand.Where(h => !h.Car.Task(h.Task.Id).NowAndThen).ToList();
        foreach (var person in tying.SelectMany(h => h.Task.Crew).Select(m => m.Person))
            Unless(_shop.People.TryGetValue(person, out var known) && known.In && !known.Left, $"{person} works and is not in");
        foreach (var gear in _shop.InHand.SelectMany(h => h.Task.Gear).GroupBy(g => g).Where(g => g.Count() > 1)) Broken($"{gear.Key} is in two places");
        foreach (var gear in _shop.Cars.Values.SelectMany(c => c.HangsIn.Values).SelectMany(g => g).GroupBy(g => g).Where(g => g.Count() > 1)) Broken($"two loads hang in {gear.Key}");
        foreach (var (car, task) in _shop.InHand.Select(h => (h.Car, h.Task)))
            foreach (var load in _shop.Cars.Values.SelectMany(c => c.HangsIn.Select(l => (Car: c, Item: l.Key, Gear: l.Value))).Where(l => l.Gear.Intersect(task.Gear).Any()))
                Unless(load.Car == car && HasToDoWith(car.Task(task.Id), load.Item), $"{task.Id} works with gear in which {load.Item} of {load.Car.Id} hangs");
        foreach (var twice in tying.SelectMany(h => h.Task.Crew).GroupBy(m => m.Person).Where(g => g.Count() > 1)) Broken($"{twice.Key} has two tasks in hand");
    }
}

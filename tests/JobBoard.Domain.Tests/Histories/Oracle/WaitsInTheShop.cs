using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>What a task waits on in the shop: work in hand beside it, places, gear, dangers, people.</summary>
public sealed partial class Waits
{
    /// <summary>Work in hand on the car that would lose what it rests on if this started.</summary>
    private IEnumerable<Wait> TakesAway()
    {
        var disturbed = Picture.Disturbed(car, id);
        foreach (var other in car.Tasks.Values.Where(t => t.InHand && t.Id != id))
        {
            var needs = car.Task(other.Id).Needs.Any(n => Plan.Changes.Any(c => c.Item == n.Item));
            var before = car.Before(other.Id);
            var rests = Picture.Standing(car, disturbed).Any(s => s.Node != id && s.Node == s.Id && before.Contains(s.Node) && s.Word is { Holds: false } && Stands(s.Node) && !Picture.Foreseen(car, s.Node, id));
            var after = before.Contains(id) || car.Plan.Links.Any(l => l.Task == other.Id && l.After == id && l.Kind == LinkKind.FinishStart);
            if (needs || rests || (after && Task.Status is (WorkStatus.SignedOff or WorkStatus.ForSecondCheck))) yield return new("takes-away", other.Id);
        }
    }

    private bool Stands(string node) => !car.Tasks.TryGetValue(node, out var task) || task.Status == WorkStatus.SignedOff;

    /// <summary>What work in hand rests on and no longer has.</summary>
    public List<Wait> Lost()
    {
        var lost = Before().Concat(Needs()).Concat(Parts().Select(p => p)).Where(w => w.Sure && w.Kind != "lag" && !(w.Kind == "link" && StillLed(w.About))).ToList();
        lost.AddRange(Task.Gear.Where(g => !Plan.Gear.Any(n => n.Kind == shop.Gear[g].Kind && Rated(shop.Gear[g], n)) || !InDate(shop.Gear[g])).Select(g => new Wait("gear", g)));
        return lost;
    }

    /// <summary>Work begun on a lead has lost nothing when the earlier one was merely left part-done.</summary>
    private bool StillLed(string early) =>
        car.Plan.Links.Any(l => l.Task == id && l.After == early && l.Lag < 0) && car.Tasks[early] is { OpenAgain: false };

    /// <summary>The place it would be done at, or nothing.</summary>
    public string? PlaceOf(string? wanted) => Plan.Place == "car" ? car.Place : Roomy(wanted).FirstOrDefault()?.Id;

    private IEnumerable<Place> Roomy(string? wanted) =>
        shop.Places.Values.Where(p => p.Kind == Plan.Place && (wanted is null || wanted == p.Id) && shop.InHand.Count(h => h.Task.Place == p.Id) < p.Capacity);

    private IEnumerable<Wait> Room(string? wanted)
    {
        if (Plan.Place == "car" ? car.Place is null : !Roomy(wanted).Any()) yield return new("place", Plan.Place);
    }

    private static bool Rated(Gear gear, GearNeed need) => need.MinRatedKg is not { } least || gear.RatedKg >= least;

    private bool InDate(Gear gear) => gear.OutOfUse is null && !(gear.InspectedUntil <= now);

    /// <summary>Whether nobody has it, and nothing hangs in it but a load this task has to do with.</summary>
    private bool Free(Gear gear) =>
        Task.Gear.Contains(gear.Id)
        || (!shop.InHand.Any(h => h.Task.Gear.Contains(gear.Id)) && shop.Cars.Values.All(c => c.HangsIn.All(h => !h.Value.Contains(gear.Id) || (c == car && MyLoad(h.Key)))));

    private bool MyLoad(string item) => Plan.Changes.Any(c => c.Item == item) || Plan.Needs.Any(n => n.Item == item);

    /// <summary>Gear the task's own load hangs in.</summary>
    private bool Loaded(Gear gear) => car.HangsIn.Any(h => MyLoad(h.Key) && h.Value.Contains(gear.Id));

    private bool ReachesCar(Gear gear) =>
        gear.Sweep is null || car.Place is null || !shop.Places.TryGetValue(car.Place, out var place) || Dangers.Overlap(gear.Sweep, place.Area);

    /// <summary>The gear it would take: what it has, else the weakest that will do; and what is missing.</summary>
    public (List<string> Taken, List<string> Missing) GearFor()
    {
        var (taken, missing) = (new List<string>(), new List<string>());
        foreach (var need in Plan.Gear)
        {
            var kind = shop.Gear.Values.Where(g => g.Kind == need.Kind && !taken.Contains(g.Id)).ToList();
            if (kind.Any(Loaded)) kind.RemoveAll(g => !Loaded(g));
            var fit = kind.Where(g => Rated(g, need) && InDate(g) && Free(g) && ReachesCar(g));
            if (fit.OrderByDescending(g => Task.Gear.Contains(g.Id)).ThenBy(g => g.RatedKg ?? 0).FirstOrDefault() is { } gear) taken.Add(gear.Id);
            else missing.Add(need.Kind);
        }

        return (taken, missing);
    }

    private IEnumerable<Wait> GearTaken() => GearFor().Missing.Select(kind => new Wait("gear", kind));

    private IEnumerable<Wait> Apart(string? wanted)
    {
        var dangers = new Dangers(shop);
        var added = dangers.OfStart(car, Plan, PlaceOf(wanted) ?? car.Place, GearFor().Taken);
        return dangers.Clashes(added, dangers.All()).Select(c => new Wait("keep-apart", c.Rule.Id)).Distinct();
    }

    /// <summary>What keeps one more from joining a crew.</summary>
    public IEnumerable<Wait> Joining(IReadOnlyList<CrewMember> crew, CrewMember one) =>
        People(crew).Where(w => w.About == one.Person).Concat(Stops(Task.Place ?? car.Place));

    private IEnumerable<Wait> People(IReadOnlyList<CrewMember> crew)
    {
        foreach (var member in crew)
        {
            var person = shop.People.GetValueOrDefault(member.Person);
            if (person is not { Left: false }) yield return new("input", member.Person);
            else if (!person.In) yield return new("people", person.Id);
            if (Busy(member.Person)) yield return new("in-hand-elsewhere", member.Person);
            if (new Crews(shop, now).IsAlone(member, crew)) yield return new("apprentice-beside", member.Person);
        }

        if (crew.Count == 0 || crew.DistinctBy(m => m.Person).Count() < crew.Count) yield return new("input", "crew");
        foreach (var need in new Crews(shop, now).Open(Plan, crew)) yield return new("people", need.Duty);
    }

    /// <summary>One task in hand per person, those that only want a look now and then not counted.</summary>
    private bool Busy(string person) =>
        !Plan.NowAndThen && shop.InHand.Any(h => h.Task != Task && h.Task.Crew.Any(m => m.Person == person) && !h.Car.Task(h.Task.Id).NowAndThen);

    /// <summary>Whoever goes on with what somebody else left acknowledges first how it was left.</summary>
    private IEnumerable<Wait> HowLeft(IReadOnlyList<CrewMember> crew)
    {
        if (Task.Status != WorkStatus.PartDone || Task.LeftBy is null) yield break;
        foreach (var member in crew.Where(m => m.Person != Task.LeftBy && !Task.Acknowledged.Contains(m.Person))) yield return new("how-left", member.Person);
    }
}

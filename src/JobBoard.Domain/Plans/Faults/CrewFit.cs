using System.Collections.Immutable;
using JobBoard.Domain.People;

namespace JobBoard.Domain.Plans.Faults;

/// <summary>
/// Whether a crew can be filled by different people who are qualified. An apprentice counts only where the person they work
/// under is in the same crew, and never as lead. Answers are kept, because most tasks have one of a few crews.
/// </summary>
internal sealed class CrewFit
{
    private const int MostPeople = 50;

    private readonly Dictionary<(string Crew, string? Without), bool> known = [];
    private readonly ImmutableArray<Person> people;
    private readonly DateTimeOffset now;

    public CrewFit(ShopFacts shop)
    {
        people = [.. shop.People.Where(p => !p.Left)];
        now = shop.Now;
    }

    /// <summary>Everybody who may answer for something: no apprentice.</summary>
    public IEnumerable<Person> Answering => people.Where(p => p.Position > Position.Apprentice);

    /// <summary>How many are qualified today; apprentices too.</summary>
    public int Qualified(string? what) => people.Count(p => p.IsQualified(what, now));

    /// <summary>Whether a person may answer for something that asks for this.</summary>
    public bool IsQualified(Person person, string? what) => person.IsQualified(what, now);

    /// <summary>Whether the crew can be filled without one person. A crew of an impossible size is told elsewhere and passes.</summary>
    public bool CanFill(ImmutableArray<CrewNeed> crew, string? without = null)
    {
        var key = (string.Join('|', crew.Select(c => $"{c.Duty}/{c.Qualification}/{c.Count}")), without);
        if (!known.TryGetValue(key, out var fits))
            known[key] = fits = Fits(crew, without);
        return fits;
    }

    private bool Fits(ImmutableArray<CrewNeed> crew, string? without)
    {
        if (crew.Any(c => c.Count is < 1 or > MostPeople))
            return true;
        var slots = crew.SelectMany(c => Enumerable.Repeat(c, c.Count)).ToImmutableArray();
        var here = people.Where(p => p.Id != without).ToImmutableArray();
        var apprentices = here.Where(p => p.Position == Position.Apprentice && here.Any(o => o.Id == p.WorksUnder)).Take(8).ToImmutableArray();
        return Enumerable.Range(0, 1 << apprentices.Length).Any(pick => FitsWith([.. apprentices.Where((_, n) => (pick >> n & 1) != 0)], here, slots));
    }

    /// <summary>
    /// With exactly these apprentices and the people they work under. If all slots can be filled, and all those people can
    /// have a slot, then both can be at once (Mendelsohn and Dulmage, 1958).
    /// </summary>
    private bool FitsWith(ImmutableArray<Person> apprentices, ImmutableArray<Person> here, ImmutableArray<CrewNeed> slots)
    {
        var crew = here.Where(p => p.Position > Position.Apprentice).Concat(apprentices).ToImmutableArray();
        var must = apprentices.Concat(here.Where(p => apprentices.Any(a => a.WorksUnder == p.Id))).Distinct().ToImmutableArray();
        return Pairing.Covers(slots.Length, crew.Length, (slot, person) => May(crew[person], slots[slot]))
            && Pairing.Covers(must.Length, slots.Length, (person, slot) => May(must[person], slots[slot]));
    }

    private bool May(Person person, CrewNeed need) =>
        person.IsQualified(need.Qualification, now) && (person.Position > Position.Apprentice || need.Duty != "lead");
}

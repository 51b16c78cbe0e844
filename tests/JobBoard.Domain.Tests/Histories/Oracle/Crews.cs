using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>Whether people fill the duties of a task, by trying every way to share the duties out.</summary>
public sealed class Crews(Picture shop, DateTimeOffset at)
{
    /// <summary>Duties that are left open in the best way to share them out.</summary>
    public List<CrewNeed> Open(PlanTask task, IReadOnlyList<CrewMember> crew)
    {
        var duties = task.Crew.SelectMany(need => Enumerable.Repeat(need, need.Count)).ToList();
        var able = crew.Where(m => Counts(m, crew)).ToList();
        return Best(duties, able);
    }

    private List<CrewNeed> Best(List<CrewNeed> duties, List<CrewMember> able)
    {
        if (able.Count == 0 || duties.Count == 0) return duties;
        var (one, rest) = (able[0], able.Skip(1).ToList());
        var best = Best(duties, rest);
        foreach (var duty in duties.Where(d => Suits(one, d)).Distinct())
        {
            var left = duties.ToList();
            left.Remove(duty);
            var open = Best(left, rest);
            if (open.Count < best.Count) best = open;
        }

        return best;
    }

    private bool Suits(CrewMember member, CrewNeed need) => member.Duty == need.Duty && shop.People[member.Person].Can(need.Qualification, at);

    /// <summary>Known here, and an apprentice only beside their named person.</summary>
    public bool Counts(CrewMember member, IReadOnlyList<CrewMember> crew) => shop.People.ContainsKey(member.Person) && !IsAlone(member, crew);

    /// <summary>An apprentice without their named person on the same task.</summary>
    public bool IsAlone(CrewMember member, IReadOnlyList<CrewMember> crew) =>
        shop.People.TryGetValue(member.Person, out var person) && person.Position == Position.Apprentice && !crew.Any(m => m.Person == person.WorksUnder);
}

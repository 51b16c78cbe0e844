using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;

namespace JobBoard.Domain.Work;

/// <summary>Who can be on a task: duties, qualifications, who is in, who has something in hand elsewhere.</summary>
public static class Crewing
{
    /// <summary>One duty to fill.</summary>
    public readonly record struct Slot(string Duty, string? Qualification);

    /// <summary>The duties of a task, one per person asked for.</summary>
    public static ImmutableArray<Slot> Slots(PlanTask task) =>
        [.. task.Crew.SelectMany(c => Enumerable.Repeat(new Slot(c.Duty, c.Qualification), c.Count))];

    /// <summary>Tasks a person has in hand that tie them, other than the one named.</summary>
    public static IEnumerable<(CarBoard Car, PlanTask Task)> InHand(ShopState shop, string person, string? exceptCar = null, string? exceptTask = null) =>
        Hands.Of(shop).On(person).Where(h => !(h.Car.Id == exceptCar && h.Task.Id == exceptTask));

    /// <summary>Whether these people fill every duty of the task.</summary>
    public static bool IsFull(ShopState shop, PlanTask task, ImmutableArray<CrewMember> crew, DateTimeOffset now) =>
        Unfilled(shop, task, crew, now).IsEmpty;

    /// <summary>The duties these people leave open. An apprentice counts only beside their named person.</summary>
    public static ImmutableArray<Slot> Unfilled(ShopState shop, PlanTask task, ImmutableArray<CrewMember> crew, DateTimeOffset now)
    {
        var open = Slots(task).ToList();
        foreach (var member in crew)
        {
            if (!shop.People.TryGetValue(member.Person, out var person) || !CountsBeside(person, crew)) continue;
            var at = open.FindIndex(s => s.Duty == member.Duty && s.Qualification is not null && person.IsQualified(s.Qualification, now));
            if (at < 0) at = open.FindIndex(s => s.Duty == member.Duty && person.IsQualified(s.Qualification, now));
            if (at >= 0) open.RemoveAt(at);
        }

        return [.. open];
    }

    /// <summary>Whether a person counts in this crew: an apprentice only beside the one they work under.</summary>
    public static bool CountsBeside(Person person, ImmutableArray<CrewMember> crew) =>
        person.Position != Position.Apprentice || crew.Any(m => m.Person == person.WorksUnder);

    /// <summary>
    /// A crew out of the people who are in and free (those in <paramref name="treatFree"/> count as free), or nothing.
    /// <paramref name="with"/>, when named, is part of it.
    /// </summary>
    public static ImmutableArray<CrewMember>? Propose(ShopState shop, CarBoard car, PlanTask task, DateTimeOffset now, string? with = null, IReadOnlySet<string>? treatFree = null)
    {
        var slots = Slots(task);
        var free = shop.People.Values
            .Where(p => p.IsIn && (p.Id == with || treatFree?.Contains(p.Id) == true || task.NowAndThen || !InHand(shop, p.Id, car.Id, task.Id).Any()))
            .OrderBy(p => p.Id == with ? 0 : 1).ThenBy(p => p.Qualifications.Length).ThenBy(p => p.Id, StringComparer.Ordinal)
            .ToArray();
        var taken = new int[free.Length];
        Array.Fill(taken, -1);
        if (with is not null && !ForceFirst(free, slots, taken, with, now)) return null;
        for (var s = 0; s < slots.Length; s++)
        {
            if (!taken.Contains(s) && !Fill(free, slots, taken, s, new bool[free.Length], now, with)) return null;
        }

        var crew = free.Select((p, i) => (p, i)).Where(x => taken[x.i] >= 0).Select(x => new CrewMember(x.p.Id, slots[taken[x.i]].Duty)).ToImmutableArray();
        return crew.All(m => CountsBeside(shop.People[m.Person], crew)) ? crew : null;
    }

    /// <summary>Puts the named person, who sorts first, into the first duty they can do.</summary>
    private static bool ForceFirst(Person[] free, ImmutableArray<Slot> slots, int[] taken, string with, DateTimeOffset now)
    {
        if (free.Length == 0 || free[0].Id != with) return false;
        for (var s = 0; s < slots.Length; s++)
        {
            if (!free[0].IsQualified(slots[s].Qualification, now)) continue;
            taken[0] = s;
            return true;
        }

        return false;
    }

    /// <summary>Augmenting path of a bipartite matching between duties and people.</summary>
    private static bool Fill(Person[] free, ImmutableArray<Slot> slots, int[] taken, int slot, bool[] seen, DateTimeOffset now, string? with)
    {
        for (var i = 0; i < free.Length; i++)
        {
            if (seen[i] || !Fits(free[i], slots[slot], with, now)) continue;
            seen[i] = true;
            if (taken[i] >= 0 && !Fill(free, slots, taken, taken[i], seen, now, with)) continue;
            taken[i] = slot;
            return true;
        }

        return false;
    }

    /// <summary>Apprentices are not proposed unless it is they who ask; they come as an extra hand.</summary>
    private static bool Fits(Person person, Slot slot, string? with, DateTimeOffset now) =>
        (person.Position != Position.Apprentice || person.Id == with) && person.IsQualified(slot.Qualification, now);

    /// <summary>What a crew lacks: everything, in words.</summary>
    public static IEnumerable<WaitingOn> Lacks(ShopState shop, CarBoard car, PlanTask task, ImmutableArray<CrewMember> crew, DateTimeOffset now, RuleBook rules)
    {
        foreach (var member in crew)
        {
            foreach (var waiting in MemberLacks(shop, car, task, member, crew, now, rules)) yield return waiting;
        }

        if (!rules.Has(RuleBook.Ids.People)) yield break;
        foreach (var slot in Unfilled(shop, task, crew, now)) yield return Missing(shop, slot, crew, now);
    }

    private static IEnumerable<WaitingOn> MemberLacks(ShopState shop, CarBoard car, PlanTask task, CrewMember member, ImmutableArray<CrewMember> crew, DateTimeOffset now, RuleBook rules)
    {
        if (!shop.People.TryGetValue(member.Person, out var person) || person.Left)
        {
            yield return new(RuleBook.Ids.Input, $"There is nobody '{member.Person}' in this shop.", About: "crew");
            yield break;
        }

        if (rules.Has(RuleBook.Ids.People) && !person.IsIn) yield return new(RuleBook.Ids.People, $"{{{person.Id}}} is not in.", [person.Id], About: person.Id);
        if (rules.Has(RuleBook.Ids.InHandElsewhere) && !task.NowAndThen)
        {
            foreach (var (c, t) in InHand(shop, person.Id, car.Id, task.Id))
                yield return new(RuleBook.Ids.InHandElsewhere, $"{{{person.Id}}} has {t.Name} on {c.Name} in hand.", [person.Id], About: person.Id);
        }

        if (rules.Has(RuleBook.Ids.ApprenticeBeside) && !CountsBeside(person, crew))
            yield return new(RuleBook.Ids.ApprenticeBeside, $"{{{person.Id}}} works only beside {{{person.WorksUnder}}}, on the same task.", [person.WorksUnder ?? person.Id], About: person.Id);
    }

    private static WaitingOn Missing(ShopState shop, Slot slot, ImmutableArray<CrewMember> crew, DateTimeOffset now)
    {
        var could = shop.People.Values
            .Where(p => !p.Left && p.Position != Position.Apprentice && p.IsQualified(slot.Qualification, now) && crew.All(m => m.Person != p.Id))
            .Select(p => p.Id).ToImmutableArray();
        var asked = slot.Qualification is null ? "" : $", qualified for {slot.Qualification}";
        return new(RuleBook.Ids.People, $"One more is needed for {slot.Duty}{asked}.", could, About: slot.Duty);
    }

    /// <summary>What stands against every crew; empty when one can be made.</summary>
    internal static ImmutableArray<WaitingOn> AgainstAny(ShopState shop, CarBoard car, PlanTask task, DateTimeOffset now, RuleBook rules, IReadOnlySet<string>? treatFree) =>
        Propose(shop, car, task, now, null, treatFree) is null ? [.. CannotCrew(shop, car, task, now, rules)] : [];

    /// <summary>Why no crew can be made of the people who are in and free.</summary>
    public static IEnumerable<WaitingOn> CannotCrew(ShopState shop, CarBoard car, PlanTask task, DateTimeOffset now, RuleBook rules)
    {
        var slots = Slots(task);
        foreach (var group in slots.GroupBy(s => s))
        {
            var able = shop.People.Values.Where(p => !p.Left && p.Position != Position.Apprentice && p.IsQualified(group.Key.Qualification, now)).ToArray();
            var busy = able.Where(p => p.IsIn && !task.NowAndThen && InHand(shop, p.Id, car.Id, task.Id).Any()).ToArray();
            var free = able.Count(p => p.IsIn) - busy.Length;
            if (free >= group.Count()) continue;
            var what = group.Key.Qualification is null ? group.Key.Duty : $"{group.Key.Duty}, qualified for {group.Key.Qualification}";
            if (free + busy.Length >= group.Count() && rules.Has(RuleBook.Ids.InHandElsewhere))
                yield return new(RuleBook.Ids.InHandElsewhere, $"Everybody who could be {what} has other work in hand.", [.. busy.Select(p => p.Id)], About: group.Key.Duty);
            else if (rules.Has(RuleBook.Ids.People))
                yield return new(RuleBook.Ids.People, $"Not enough people are in for {what}: {group.Count()} needed.", [.. able.Where(p => !p.IsIn).Select(p => p.Id)], About: group.Key.Duty);
        }
    }
}

using System.Collections.Immutable;
using System.Globalization;

namespace JobBoard.Domain.Plans.Repairs;

/// <summary>Repairs of names that are nowhere in the plan: the nearest that is there, adding what is meant, or taking the naming out.</summary>
internal static class UnknownNames
{
    public static IEnumerable<PlanRepair> Repairs(Plan plan, string at)
    {
        var last = at[(at.LastIndexOf('.') + 1)..];
        var name = Place.Of(plan, at).Text;
        if (at.StartsWith("links[", StringComparison.Ordinal)) return Place.Of(plan, at[..at.LastIndexOf('.')]).TakenOut("Take the link out");
        if (last.StartsWith("takesAgain", StringComparison.Ordinal)) return Place.Of(plan, at).TakenOut("Take it out");
        if (last == "stage") return Nearest(plan, at, plan.Stages.Select(s => (s.Id, s.Name))).Concat(name is { Length: > 0 } ? [new($"Add a stage “{Spoken(name)}”", plan with { Stages = plan.Stages.Add(new(name, Spoken(name))) })] : []);
        if (last.StartsWith("parts[", StringComparison.Ordinal) && name is not null)
            return Nearest(plan, at, plan.Parts.Select(p => (p.Id, p.Name))).Append(new($"Add a part “{Spoken(name)}”", plan with { Parts = plan.Parts.Add(new(name, Spoken(name))) }));
        if (last == "item" && name is not null)
            return Nearest(plan, at, plan.Items.Select(i => (i.Id, i.Name))).Append(new($"Add an item “{Spoken(name)}”", plan with { Items = plan.Items.Add(Meant(plan, name)) }));
        return OfKnownItem(plan, at);
    }

    /// <summary>The nearest of these names, where one is near.</summary>
    public static IEnumerable<PlanRepair> Nearest(Plan plan, string at, IEnumerable<(string Id, string Name)> known)
    {
        if (Place.Of(plan, at).Text is not { Length: > 0 } name) yield break;
        var near = known.Select(k => (k.Id, k.Name, Steps: Distance(name, k.Id))).Where(k => k.Steps <= Math.Max(1, name.Length / 3)).OrderBy(k => k.Steps).FirstOrDefault();
        if (near.Id is not null) yield return new($"Make it “{near.Name}”", Place.Of(plan, at).Written(near.Id));
    }

    /// <summary>A condition or aspect that its item does not have: the item gets it.</summary>
    private static IEnumerable<PlanRepair> OfKnownItem(Plan plan, string at)
    {
        var (item, conditions, aspects) = Lacking(plan, at);
        if (item is null || (conditions.IsEmpty && aspects.IsEmpty)) yield break;
        var words = string.Join(" and ", conditions.Concat(aspects).Select(c => $"“{c}”"));
        yield return new(conditions.IsEmpty ? $"Let {words} be something to swear to of {item.Name}" : $"Let {item.Name} be {words} too", plan with
        {
            Items = plan.Items.Replace(item, item with { Conditions = item.Conditions.AddRange(conditions), Aspects = item.Aspects.AddRange(aspects) }),
        });
    }

    private static (Item? Item, ImmutableArray<string> Conditions, ImmutableArray<string> Aspects) Lacking(Plan plan, string at)
    {
        if (PlanRepairs.Number(at, "items") is { } i)
        {
            var own = plan.Items[i];
            return (own, [.. own.Dangers.Select(d => d.Condition).Prepend(own.AsForTheRoad).Prepend(own.AtTakeIn).Distinct().Except(own.Conditions)], []);
        }

        var of = Place.Of(plan, at[..(at.LastIndexOf(']') + 1)] + ".item").Text;
        if (PlanIndex.Of(plan).Item(of ?? "") is not { } item) return (null, [], []);
        return at.EndsWith(".name", StringComparison.Ordinal)
            ? (item, [], Place.Of(plan, at).Text is { Length: > 0 } aspect ? [aspect] : [])
            : (item, [.. Said(plan, item.Id).Except(item.Conditions)], []);
    }

    /// <summary>An item as the plan speaks of it: it comes in as the first change finds it, and leaves as the last leaves it.</summary>
    private static Item Meant(Plan plan, string id)
    {
        var conditions = Said(plan, id).DefaultIfEmpty("on").ToImmutableArray();
        var changes = PlanIndex.Of(plan).Changers(id);
        return new()
        {
            Id = id,
            Name = Spoken(id),
            Conditions = conditions,
            AtTakeIn = changes.IsEmpty ? conditions[0] : changes[0].Change.From,
            AsForTheRoad = changes.IsEmpty ? conditions[0] : changes[^1].Change.To,
            Aspects = [.. plan.Tasks.SelectMany(t => t.Touches.Concat(t.StandsOn).Concat(t.Readings.SelectMany(r => r.StandsOn))).Concat(plan.Holds.SelectMany(h => h.StandsOn)).Where(a => a.Item == id && a.Name.Length > 0).Select(a => a.Name).Distinct()],
        };
    }

    /// <summary>Every condition in which the plan speaks of an item.</summary>
    private static IEnumerable<string> Said(Plan plan, string item) =>
        plan.Tasks.SelectMany(t => t.Changes.Where(c => c.Item == item).SelectMany(c => c.Path))
            .Concat(plan.Tasks.SelectMany(t => t.Needs.Where(n => n.Item == item).SelectMany(n => n.Conditions)))
            .Where(c => c.Length > 0).Distinct();

    private static string Spoken(string id) => id.Length == 0 ? id : char.ToUpper(id[0], CultureInfo.InvariantCulture) + id[1..].Replace('-', ' ');

    /// <summary>Letters to change, add or take away (Levenshtein, 1966).</summary>
    private static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var (corner, left) = (row[0], row[0] = i);
            for (var j = 1; j <= b.Length; j++)
            {
                left = Math.Min(Math.Min(row[j], left) + 1, corner + (a[i - 1] == b[j - 1] ? 0 : 1));
                (corner, row[j]) = (row[j], left);
            }
        }

        return row[^1];
    }
}

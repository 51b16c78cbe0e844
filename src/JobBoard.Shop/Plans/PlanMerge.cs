using System.Collections.Immutable;
using System.Text.Json;
using JobBoard.Domain.Plans;

namespace JobBoard.Shop.Plans;

/// <summary>Two changes of one plan put together.</summary>
/// <param name="Plan">What came of it: where both changed the same, mine stands.</param>
/// <param name="Both">What both changed, in words of the lists and ids.</param>
public sealed record PlanMerge(Plan Plan, ImmutableArray<string> Both)
{
    /// <summary>Takes their changes of a plan into mine, entry by entry: a task, hold point, item, part or stage is one entry, a link is one.</summary>
    public static PlanMerge Of(Plan origin, Plan mine, Plan theirs)
    {
        var both = ImmutableArray.CreateBuilder<string>();
        var plan = mine with
        {
            Name = mine.Name == origin.Name ? theirs.Name : mine.Name,
            Note = mine.Note == origin.Note ? theirs.Note : mine.Note,
            Stages = List(origin.Stages, mine.Stages, theirs.Stages, s => s.Id, s => s.Name, both),
            Items = List(origin.Items, mine.Items, theirs.Items, i => i.Id, i => i.Name, both),
            Parts = List(origin.Parts, mine.Parts, theirs.Parts, p => p.Id, p => p.Name, both),
            Tasks = List(origin.Tasks, mine.Tasks, theirs.Tasks, t => t.Id, t => t.Name, both),
            Holds = List(origin.Holds, mine.Holds, theirs.Holds, h => h.Id, h => h.Name, both),
            Links = [.. mine.Links.Where(l => theirs.Links.Contains(l) || !origin.Links.Contains(l)), .. theirs.Links.Where(l => !origin.Links.Contains(l) && !mine.Links.Contains(l))],
        };
        return new(plan, both.DrainToImmutable());
    }

    private static ImmutableArray<T> List<T>(ImmutableArray<T> origin, ImmutableArray<T> mine, ImmutableArray<T> theirs, Func<T, string> id, Func<T, string> name, ImmutableArray<string>.Builder both)
        where T : class
    {
        var (was, now) = (ById(origin, id), ById(theirs, id));
        var merged = ImmutableArray.CreateBuilder<T>();
        foreach (var entry in mine)
        {
            var (before, other) = (was.GetValueOrDefault(id(entry)), now.GetValueOrDefault(id(entry)));
            var (altered, changed) = (!Same(entry, before), !Same(other, before));
            if (altered && changed && !Same(entry, other)) both.Add(name(entry));
            if (altered || !changed) merged.Add(entry);
            else if (other is not null) merged.Add(other);
        }

        var here = mine.Select(id).ToHashSet(StringComparer.Ordinal);
        foreach (var entry in theirs.Where(t => !here.Contains(id(t))))
        {
            // One that I took out and they changed stays out; one that is new to both is taken in.
            if (!was.TryGetValue(id(entry), out var before)) merged.Add(entry);
            else if (!Same(entry, before)) both.Add(name(entry));
        }

        return merged.DrainToImmutable();
    }

    private static Dictionary<string, T> ById<T>(ImmutableArray<T> list, Func<T, string> id) =>
        list.GroupBy(id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);

    private static bool Same<T>(T? a, T? b)
        where T : class => a is null || b is null ? ReferenceEquals(a, b) : Text(a) == Text(b);

    private static string Text<T>(T value) => JsonSerializer.Serialize(value, PlanJson.Options);
}

using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace JobBoard.Domain.Hazards;

/// <summary>The keep-apart rules of a shop by what is on one of their sides, so that a danger meets its own rules alone.</summary>
internal sealed class RuleSides
{
    private static readonly ConditionalWeakTable<ImmutableSortedDictionary<string, KeepApart>, RuleSides> Made = [];

    private readonly Dictionary<string, List<int>> _byHazard = new(StringComparer.Ordinal);
    private readonly Dictionary<(string? Item, string? Condition), List<int>> _byCondition = [];

    private RuleSides(ImmutableSortedDictionary<string, KeepApart> rules)
    {
        Rules = [.. rules.Values];
        for (var rule = 0; rule < Rules.Length; rule++)
        {
            Add(Rules[rule].A, rule);
            Add(Rules[rule].B, rule);
        }
    }

    /// <summary>The rules by id; elsewhere each is known by its place here.</summary>
    public ImmutableArray<KeepApart> Rules { get; }

    public static RuleSides Of(ImmutableSortedDictionary<string, KeepApart> rules) => Made.GetValue(rules, r => new RuleSides(r));

    /// <summary>Rules with this danger on one side; one may come twice.</summary>
    public IEnumerable<int> Of(Danger danger)
    {
        var byHazard = danger.Hazard is null ? null : _byHazard.GetValueOrDefault(danger.Hazard);
        var byCondition = _byCondition.GetValueOrDefault((danger.Item, danger.Condition));
        return (byHazard, byCondition) switch
        {
            (null, null) => [],
            (_, null) => byHazard,
            (null, _) => byCondition,
            _ => byHazard.Concat(byCondition),
        };
    }

    private void Add(Side side, int rule)
    {
        var list = side.Hazard is not null ? ListOf(_byHazard, side.Hazard) : ListOf(_byCondition, (side.Item, side.Condition));
        if (list.Count == 0 || list[^1] != rule) list.Add(rule);
    }

    private static List<int> ListOf<TKey>(Dictionary<TKey, List<int>> lists, TKey key)
        where TKey : notnull
    {
        if (!lists.TryGetValue(key, out var list)) lists.Add(key, list = []);
        return list;
    }
}

using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using JobBoard.Domain.Boards;

namespace JobBoard.Domain.Hazards;

/// <summary>Every danger that stands in a shop, also by the sides of the keep-apart rules: found once for each state of the shop.</summary>
internal sealed class StandingDangers
{
    private static readonly ConditionalWeakTable<ShopState, StandingDangers> Made = [];

    private readonly RuleSides _sides;
    private readonly List<int>?[] _a;
    private readonly List<int>?[] _b;

    private StandingDangers(ShopState shop)
    {
        All = Dangers.Find(shop);
        _sides = RuleSides.Of(shop.KeepApart);
        (_a, _b) = (new List<int>[_sides.Rules.Length], new List<int>[_sides.Rules.Length]);
        for (var i = 0; i < All.Length; i++) AddSides(i);
    }

    public ImmutableArray<Danger> All { get; }

    public static StandingDangers In(ShopState shop) => Made.GetValue(shop, s => new StandingDangers(s));

    /// <summary>
    /// Standing dangers on the other side of a rule from this one, with the rule: in the order they stand, then that of the rules.
    /// </summary>
    /// <param name="danger">Standing or not.</param>
    /// <param name="from">Only those from here on.</param>
    public IEnumerable<(Danger Other, KeepApart Rule)> Opposite(Danger danger, int from = 0)
    {
        List<(int Other, int Rule)>? found = null;
        foreach (var rule in _sides.Of(danger))
        {
            if (danger.Is(_sides.Rules[rule].A)) Add(_b[rule], rule, from, ref found);
            if (danger.Is(_sides.Rules[rule].B)) Add(_a[rule], rule, from, ref found);
        }

        if (found is null) return [];
        found.Sort();
        return found.Distinct().Select(f => (All[f.Other], _sides.Rules[f.Rule]));
    }

    private void AddSides(int number)
    {
        foreach (var rule in _sides.Of(All[number]))
        {
            if (All[number].Is(_sides.Rules[rule].A)) AddOnce(ref _a[rule], number);
            if (All[number].Is(_sides.Rules[rule].B)) AddOnce(ref _b[rule], number);
        }
    }

    private static void AddOnce(ref List<int>? list, int number)
    {
        list ??= [];
        if (list.Count == 0 || list[^1] != number) list.Add(number);
    }

    private static void Add(List<int>? others, int rule, int from, ref List<(int Other, int Rule)>? found)
    {
        foreach (var other in others ?? [])
        {
            if (other >= from) (found ??= []).Add((other, rule));
        }
    }
}

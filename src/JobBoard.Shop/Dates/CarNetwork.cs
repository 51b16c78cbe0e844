using System.Collections.Immutable;
using JobBoard.Domain.Plans;
using JobBoard.Scheduling;
using DomainLink = JobBoard.Domain.Plans.Link;
using NetworkLink = JobBoard.Scheduling.Link;

namespace JobBoard.Shop.Dates;

/// <summary>A plan as a network of numbers: tasks first, then hold points, in the plan's order. Made once per plan.</summary>
internal sealed class CarNetwork
{
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);
    private readonly ImmutableArray<DomainLink> _links;

    private CarNetwork(Plan plan)
    {
        Plan = plan;
        foreach (var id in plan.Tasks.Select(t => t.Id).Concat(plan.Holds.Select(h => h.Id))) _numbers.Add(id, _numbers.Count);
        Nodes = [.. _numbers.OrderBy(n => n.Value).Select(n => n.Key)];
        _links = plan.Links;
        Network = Network.Build(Nodes.Length, _links.Select(Numbered).ToArray());
    }

    public Plan Plan { get; }

    public Network Network { get; }

    /// <summary>Ids by number.</summary>
    public ImmutableArray<string> Nodes { get; }

    public static CarNetwork Of(Plan plan) => new(plan);

    public int NumberOf(string node) => _numbers[node];

    /// <summary>The lag of a link by its number; nothing for none.</summary>
    public TimeSpan? LagOf(int link) => link < 0 || _links[link].Lag == 0 ? null : TimeSpan.FromMinutes(_links[link].Lag);

    private NetworkLink Numbered(DomainLink link) => new(
        _numbers[link.Task], _numbers[link.After], (Scheduling.LinkKind)(int)link.Kind, link.Lag * 60L, (Scheduling.LagClock)(int)link.Clock);
}

using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace JobBoard.Domain.Plans.Repairs;

/// <summary>One way to put a fault right.</summary>
/// <param name="Words">What is done, as a button says it.</param>
/// <param name="Then">The plan afterwards.</param>
public sealed record PlanRepair(string Words, Plan Then);

/// <summary>Ways to put faults of a plan right, where there are some that suggest themselves. Each takes its own fault away; it may bring another to light.</summary>
public static partial class PlanRepairs
{
    /// <summary>The repairs of one fault of a plan, the likeliest first; empty where only a person can say.</summary>
    public static ImmutableArray<PlanRepair> For(Plan plan, PlanFault fault, ShopFacts shop) =>
        [.. (fault.Tie is { } tie ? Tied(plan, tie) : ByCode(plan, fault, shop)).Where(r => !ReferenceEquals(r.Then, plan))];

    private static IEnumerable<PlanRepair> Tied(Plan plan, PlanTie tie)
    {
        var (node, other) = (PlanIndex.Of(plan).NameOf(tie.Node), PlanIndex.Of(plan).NameOf(tie.Other));
        if (!tie.TakesAgain)
        {
            yield return new($"Put “{node}” after “{other}”", plan with { Links = plan.Links.Add(new(tie.Node, tie.Other)) });
            yield break;
        }

        yield return new($"Let “{node}” take “{other}” again", plan with
        {
            Tasks = [.. plan.Tasks.Select(t => t.Id == tie.Node ? t with { TakesAgain = t.TakesAgain.Add(tie.Other) } : t)],
            Holds = [.. plan.Holds.Select(h => h.Id == tie.Node ? h with { TakesAgain = h.TakesAgain.Add(tie.Other) } : h)],
        });
    }

    private static IEnumerable<PlanRepair> ByCode(Plan plan, PlanFault fault, ShopFacts shop) => fault.Code switch
    {
        "unknown-id" => UnknownNames.Repairs(plan, fault.At),
        "hazard-unknown" => Place.Of(plan, fault.At).TakenOut("Take the hazard out").Concat(UnknownNames.Nearest(plan, fault.At + ".hazard", shop.Hazards.Select(h => (h.Id, h.Name)))).Reverse(),
        "circle" or "id-twice" when LinkAt(plan, fault.At) is { } link => [TakeOut(plan, link)],
        "id-twice" => Place.Of(plan, fault.At).Renamed(),
        "lead" when LinkAt(plan, fault.At) is { } link => [new("Make the lag 0", Replaced(plan, link, link with { Lag = 0 }))],
        "hold-link" when LinkAt(plan, fault.At) is { } link => [new("Make it “starts after it is finished”", Replaced(plan, link, link with { Kind = LinkKind.FinishStart, Lag = Math.Max(0, link.Lag) }))],
        "need-shop" => Place.Of(plan, fault.At[..fault.At.LastIndexOf('.')]).TakenOut("Take the need out"),
        "takes-again-early" => Place.Of(plan, fault.At).TakenOut("Take it out"),
        "empty" when fault.At.EndsWith(".conditions", StringComparison.Ordinal) && fault.At.Contains(".needs", StringComparison.Ordinal) => Place.Of(plan, fault.At[..^".conditions".Length]).TakenOut("Take the need out"),
        _ => OfTaskOrItem(plan, fault),
    };

    private static IEnumerable<PlanRepair> OfTaskOrItem(Plan plan, PlanFault fault)
    {
        if (Number(fault.At, "items") is { } i && fault.Code == "never-changed") return [Added(plan, plan.Items[i], plan.Items[i].AtTakeIn, null)];
        if (Number(fault.At, "tasks") is not { } n) return [];
        var task = plan.Tasks[n];
        return fault.Code switch
        {
            "empty" when task.Crew.IsEmpty => [With(plan, n, task with { Crew = [new("lead")] }, "Let one person do it")],
            "estimate" when InOrder(task.Estimate) is { } estimate => [With(plan, n, task with { Estimate = estimate }, $"Make it {estimate.Low}, {estimate.Usual}, {estimate.High} minutes")],
            "place" => [With(plan, n, task with { Place = "car" }, "Do it where the car stands")],
            "change-chain" or "left-off" => OfChange(plan, n, fault),
            _ => [],
        };
    }

    private static IEnumerable<PlanRepair> OfChange(Plan plan, int n, PlanFault fault)
    {
        var (task, match) = (plan.Tasks[n], ChangeAt().Match(fault.At));
        if (!match.Success) yield break;
        var at = int.Parse(match.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture);
        var change = task.Changes[at];
        if (PlanIndex.Of(plan).Item(change.Item) is not { } item) yield break;
        if (fault.Code == "left-off")
        {
            yield return Added(plan, item, change.To, task);
            yield break;
        }

        var changers = PlanIndex.Of(plan).Changers(item.Id);
        var before = changers.TakeWhile(c => c.Task.Id != task.Id).LastOrDefault();
        var left = before.Change?.To ?? item.AtTakeIn;
        yield return With(plan, n, task with { Changes = task.Changes.SetItem(at, change with { From = left }) }, $"Let “{task.Name}” change {item.Name} from {left}");
    }

    /// <summary>A task that puts an item as for the road, after another or after nothing.</summary>
    private static PlanRepair Added(Plan plan, Item item, string from, PlanTask? after)
    {
        var name = $"{item.Name}: {item.AsForTheRoad}";
        var id = FreeId(plan, $"{item.Id}-{Bare(item.AsForTheRoad)}");
        var task = new PlanTask
        {
            Id = id,
            Name = name,
            Stage = after?.Stage ?? plan.Stages.LastOrDefault()?.Id ?? "",
            Estimate = new(15, 30, 60),
            Changes = [new(item.Id, from, item.AsForTheRoad)],
        };
        var words = after is null ? $"Add a task “{name}”" : $"Add a task “{name}” after “{after.Name}”";
        var at = after is null ? plan.Tasks.Length : plan.Tasks.IndexOf(after) + 1;
        return new(words, plan with { Tasks = plan.Tasks.Insert(at, task), Links = after is null ? plan.Links : plan.Links.Add(new(id, after.Id)) });
    }

    /// <summary>An id no node has.</summary>
    internal static string FreeId(Plan plan, string wanted)
    {
        var index = PlanIndex.Of(plan);
        return Enumerable.Range(1, int.MaxValue - 1).Select(n => n == 1 ? wanted : $"{wanted}-{n}").First(id => !index.IsNode(id));
    }

    private static string Bare(string words) => NotOfAnId().Replace(words.ToLowerInvariant(), "-").Trim('-') is { Length: > 0 } bare ? bare : "done";

    private static Estimate? InOrder(Estimate e)
    {
        int[] sorted = [.. new[] { e.Low, e.Usual, e.High }.Order()];
        return sorted[0] > 0 && sorted[2] <= 60_000 ? new(sorted[0], sorted[1], sorted[2]) : null;
    }

    private static PlanRepair With(Plan plan, int n, PlanTask task, string words) => new(words, plan with { Tasks = plan.Tasks.SetItem(n, task) });

    private static PlanRepair TakeOut(Plan plan, Link link) => new(
        $"Take out the link: “{PlanIndex.Of(plan).NameOf(link.Task)}” after “{PlanIndex.Of(plan).NameOf(link.After)}”",
        plan with { Links = plan.Links.RemoveAt(plan.Links.LastIndexOf(link)) });

    private static Plan Replaced(Plan plan, Link link, Link by) => plan with { Links = plan.Links.Replace(link, by) };

    private static Link? LinkAt(Plan plan, string at) => Number(at, "links") is { } n && n < plan.Links.Length ? plan.Links[n] : null;

    /// <summary>The number in <c>list[number]</c> at the beginning of a place, or nothing.</summary>
    internal static int? Number(string at, string list)
    {
        var match = First().Match(at);
        return match.Success && match.Groups[1].Value == list ? int.Parse(match.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) : null;
    }

    [GeneratedRegex(@"^([a-zA-Z]+)\[(\d+)\]")]
    private static partial Regex First();

    [GeneratedRegex(@"\.changes\[(\d+)\]")]
    private static partial Regex ChangeAt();

    [GeneratedRegex("[^a-z0-9]+")]
    private static partial Regex NotOfAnId();
}

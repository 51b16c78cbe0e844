using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.EndToEnd.Browsers;

namespace JobBoard.EndToEnd.Story;

/// <summary>
/// The story, in a real browser: from an engine that was tried in and taken out again to its first start. What belongs to the
/// lift, suspension, fuel, cooling, priming, exhaust and start is done by taps and typed text on pages; air, controls and
/// harness by a script through the same commands.
/// </summary>
public partial class FirstStartStory(Chromium chromium, ITestOutputHelper output)
{
    private static readonly string[] ByTaps = ["s05", "s06", "s07", "s08", "s09", "s13", "s14", "s15", "s16"];

    [Fact]
    public async Task Engine_starts_and_every_screen_told_so_in_time()
    {
        var browser = await chromium.Browser();
        await using var shop = await Workshop.Open(browser, Say);
        await Begin(shop);
        foreach (var node in Order(shop.Plan, shop.Before)) await Pass(shop, node);
        Report(shop);

        Assert.Empty(shop.Traffic.Others);
        Assert.Equal(shop.Traffic.Taps, shop.Traffic.Posts);
        Assert.DoesNotContain(shop.Delays.All, d => d.Milliseconds > 5000);
    }

    /// <summary>One task or hold point: its scene where it has one, else plain work.</summary>
    private static async Task Pass(Workshop shop, string node)
    {
        var index = PlanIndex.Of(shop.Plan);
        var scene = Scenes.GetValueOrDefault(node);
        if (index.Task(node) is { } task)
        {
            if (shop.WasWorkedOn(node)) return;
            if (!IsByTaps(task.Stage)) await shop.Script.Do(task);
            else if (scene is null) await shop.Do(task);
            else await scene(shop);
        }
        else if (!IsByTaps(index.Hold(node)!.Stage))
        {
            await shop.Script.Release(index.Hold(node)!);
        }
        else if (scene is null)
        {
            await shop.Release(node);
        }
        else
        {
            await scene(shop);
        }
    }

    /// <summary>What is played out rather than merely done.</summary>
    private static readonly Dictionary<string, Func<Workshop, Task>> Scenes = new(StringComparer.Ordinal)
    {
        ["strap-fit"] = SameMomentAndReadingOut,
        ["release-bearing"] = OwnSecondCheck,
        ["hold-lift"] = shop => shop.Release("hold-lift", shop.Marit),
        ["raise-100"] = Lift,
        ["radiator-return"] = LinkTakenOut,
        ["header-tank"] = DroppedLine,
        ["hold-fuel"] = HoseMoved,
        ["hold-key-check"] = KeyCheck,
        ["first-start"] = FirstStart,
    };

    private static bool IsByTaps(string stage) => ByTaps.Contains(stage[..3]);

    /// <summary>Everything up to the first start that is not done yet, what comes before first; else in the plan's order.</summary>
    private static IEnumerable<string> Order(Plan plan, CarBoard before)
    {
        var index = PlanIndex.Of(plan);
        var left = plan.Stages.SelectMany(s => plan.Tasks.Where(t => t.Stage == s.Id).Select(t => t.Id).Concat(plan.Holds.Where(h => h.Stage == s.Id).Select(h => h.Id)))
            .Where(n => IsWanted(index, n) && !IsDone(before, n)).ToList();
        while (left.Count > 0)
        {
            var next = left.First(n => index.LinksInto(n).All(l => !left.Contains(l.After)));
            left.Remove(next);
            yield return next;
        }
    }

    private static bool IsDone(CarBoard car, string node) => car.Tasks.TryGetValue(node, out var task) ? task.Counts : car.Holds[node].Counts;

    private static bool IsWanted(PlanIndex index, string node)
    {
        var stage = (index.Task(node)?.Stage ?? index.Hold(node)!.Stage)[..3];
        if (node == "hot-idle") return false;
        return ByTaps.Contains(stage) || index.IsAfter("first-start", node);
    }

    private void Report(Workshop shop)
    {
        foreach (var slow in shop.Delays.All.OrderByDescending(d => d.Milliseconds).Take(5)) Say($"{slow.Milliseconds,6:0} ms  {slow.What}");
        Say($"{shop.Traffic.Posts} commands by taps, {shop.Script.Sent} by the script; {shop.Delays.All.Count} changes seen on screens: p50 {shop.Delays.At(0.5):0} ms, p95 {shop.Delays.At(0.95):0} ms, most {shop.Delays.At(1):0} ms after the tap");
    }

    private void Say(string words)
    {
        output.WriteLine(words);
        TestContext.Current.SendDiagnosticMessage(words);
    }
}

using JobBoard.Domain.Plans;
using JobBoard.EndToEnd.Browsers;
using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Servers;
using static Microsoft.Playwright.Assertions;

namespace JobBoard.EndToEnd.Story;

/// <summary>
/// A whole car, from take-in to handover, by taps and typed text on pages alone: nine browsers at once, among them the wall and
/// the customer. It takes minutes and is played where JOBBOARD_WHOLE_CAR=1 asks for it. Nights, cures and cooling down are gone over by moving the shop's clock; nothing else is done for anybody.
/// </summary>
public sealed class WholeCarStory(Chromium chromium, ITestOutputHelper output)
{
    [Fact]
    public async Task A_car_goes_from_take_in_to_handover_by_taps_alone()
    {
        if (Environment.GetEnvironmentVariable("JOBBOARD_WHOLE_CAR") != "1")
        {
            Assert.Skip("A whole car takes five to nine minutes; JOBBOARD_WHOLE_CAR=1 plays it.");
            return;
        }

        await using var shop = await WholeShop.Open(await chromium.Browser(), Say);
        await shop.TakeIn();
        await shop.LetTheCustomerLook();
        await shop.PartsOntoTheShelf();
        foreach (var node in Order(shop.Plan)) await Pass(shop, node);
        await HandedOver(shop);

        Assert.Empty(shop.Traffic.Others);
        Say($"{shop.Traffic.Posts} commands by taps on {shop.Devices} devices");
    }

    private static async Task Pass(WholeShop shop, string node)
    {
        var index = PlanIndex.Of(shop.Plan);
        if (node == "hold-key-check") await shop.KeyCheck();
        if (node == "hold-handover") await Snag(shop);
        if (index.Task(node) is { } task) await shop.Do(task);
        else await shop.Release(index.Hold(node)!);
    }

    /// <summary>A snag keeps the car from being handed over until it is put right.</summary>
    private static async Task Snag(WholeShop shop)
    {
        await shop.RaiseSnag("Scratch on the left door sill");
        await shop.Holds.Page.ReloadAsync();
        await Expect(shop.Holds.Page.Locator($"#point-{shop.Car}-hold-handover")).ToContainTextAsync("Scratch on the left door sill");
        await shop.PutSnagRight();
    }

    private static async Task HandedOver(WholeShop shop)
    {
        await Expect(shop.Customer.Locator("#customer-stages li").Filter(new() { HasText = "done " })).ToHaveCountAsync(shop.Plan.Stages.Length);
        var page = await shop.Look("/items");
        await Expect(page.Locator("#walk-sum")).ToHaveTextAsync($"All {shop.Plan.Items.Length} items are as for the road.");
        page = await shop.Look("");
        foreach (var stage in shop.Plan.Stages) await Expect(page.Locator($"#stage-{stage.Id} > summary .fold-note")).ToHaveTextAsync("all signed off");
        page = await shop.Look("/readings");
        await Expect(page.Locator("#readings-sum")).ToHaveTextAsync($"{shop.Plan.Tasks.Sum(t => t.Readings.Length)} of {shop.Plan.Tasks.Sum(t => t.Readings.Length)} are taken and stand.");
    }

    /// <summary>All nodes of the plan, what comes before first; else in the plan's order, hold points after the tasks of their stage.</summary>
    private static IEnumerable<string> Order(Plan plan)
    {
        var index = PlanIndex.Of(plan);
        var left = plan.Stages.SelectMany(s => plan.Tasks.Where(t => t.Stage == s.Id).Select(t => t.Id).Concat(plan.Holds.Where(h => h.Stage == s.Id).Select(h => h.Id))).ToList();
        while (left.Count > 0)
        {
            var next = left.First(n => index.LinksInto(n).All(l => !left.Contains(l.After)));
            left.Remove(next);
            yield return next;
        }
    }

    private void Say(string words)
    {
        output.WriteLine(words);
        TestContext.Current.SendDiagnosticMessage(words);
    }
}

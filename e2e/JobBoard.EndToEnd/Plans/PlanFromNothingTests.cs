using JobBoard.EndToEnd.Browsers;
using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;
using JobBoard.EndToEnd.Servers;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace JobBoard.EndToEnd.Plans;

/// <summary>A plan without a file: drawn up from nothing by taps and typing, a car started from it, and changed while it runs.</summary>
public class PlanFromNothingTests(Chromium chromium)
{
    [Fact]
    public async Task Plan_is_drawn_up_run_and_changed_without_a_file()
    {
        var browser = await chromium.Browser();
        using var folder = new ShopFolder();
        await SmallShop.Make(folder.Path);
        await using var server = await Server.Serve(folder.Path);
        await using var device = await Device.Open(browser, server.Url, Size.Phone, new Traffic(), new Dictionary<string, string> { ["fritz"] = SmallShop.Pin });
        var page = await device.Tab();
        await device.SignIn(page, "fritz");

        await page.GotoAsync("/plans/new");
        await DrawUp(page);
        await page.ReloadAsync();
        await Expect(page.Locator("#plan-kept")).ToContainTextAsync("is here again");
        await PasteOneMore(page);
        await StartACar(page);
        await Change(page);
    }

    private static ILocator Entry(IPage page, string id) => page.Locator($"[data-entry='tasks:{id}']");

    /// <summary>Two tasks, one after the other, and a fault put right by a tap.</summary>
    private static async Task DrawUp(IPage page)
    {
        await page.Locator("#plan-name").FillAsync("Small job");
        await Add(page, "Strip", "strip");
        await Add(page, "Fit", "fit");
        var fit = Entry(page, "fit");
        await fit.Locator("[data-plan-link=task]").SelectOptionAsync("strip");
        await Expect(fit.Locator("summary .row-note").First).ToContainTextAsync("after Strip");
        await fit.Locator("[data-plan-link=after]").SelectOptionAsync("strip");
        await Expect(page.Locator("#plan-report")).ToContainTextAsync("The links go round in a circle");
        await page.Locator("#plan-report [data-plan-do=mend]").First.ClickAsync();
        await Expect(page.Locator("#plan-report")).ToContainTextAsync("No faults");
        await fit.Locator("[data-at='estimate.usual']").FillAsync("soon");
        await Expect(fit.Locator(".plan-error")).ToContainTextAsync("is not a whole number");
        await fit.Locator("[data-at='estimate.usual']").FillAsync("1,5");
        await Expect(page.Locator("#plan-report")).ToContainTextAsync("No faults");
    }

    private static async Task Add(IPage page, string name, string id)
    {
        await page.Locator("[data-plan-do=add-task]").ClickAsync();
        await Expect(page.Locator("[data-at=name]:focus")).ToHaveCountAsync(1);
        await page.Keyboard.TypeAsync(name);
        await page.Keyboard.PressAsync("Tab");
        await Expect(Entry(page, id)).ToHaveCountAsync(1);
    }

    private static async Task PasteOneMore(IPage page)
    {
        await page.Locator("[data-plan-do=paste]").ClickAsync();
        await page.Locator("#plan-table").FillAsync("task\tafter\tusual\nLook it over\tFit\t20 min\nTidy\tNobody\t5\n");
        await page.Locator("#plan-table-look").ClickAsync();
        await Expect(page.Locator("#plan-table-report")).ToContainTextAsync("There is no task “Nobody”");
        await page.Locator("#plan-table-add").ClickAsync();
        await Expect(Entry(page, "look-it-over").Locator("summary .row-note").First).ToContainTextAsync("after Fit");
        await Expect(page.Locator("#plan-table")).ToHaveValueAsync("task\tafter\tusual\nTidy\tNobody\t5");
    }

    private static async Task StartACar(IPage page)
    {
        await Expect(page.Locator("#plan-name")).ToHaveValueAsync("Small job");
        await page.Locator("#plan-do").ClickAsync();
        await page.Locator("#plan-answer a[href='/cars/new?template=small-job']").ClickAsync();
        await page.Locator("#name").FillAsync("Nightjar");
        await page.Locator("button[type=submit]", new() { HasText = "Take the car in" }).ClickAsync();
        await page.WaitForURLAsync("**/cars/nightjar");
    }

    private static async Task Change(IPage page)
    {
        await page.GotoAsync("/cars/nightjar/plan");
        await Expect(page.Locator("#plan-sum")).ToContainTextAsync("Nothing is changed");
        await Expect(page.Locator("#plan-do")).ToBeDisabledAsync();
        var fit = Entry(page, "fit");
        await fit.Locator("summary").First.ClickAsync();
        await fit.Locator("[data-at='estimate.high']").FillAsync("10");
        await fit.Locator("[data-at='estimate.usual']").FillAsync("5.5");
        await Expect(page.Locator("#plan-ready")).ToContainTextAsync("4 h later");
        await Expect(page.Locator("#plan-moved summary")).ToContainTextAsync("2 dates move");
        await page.Locator("#plan-do").ClickAsync();
        await Expect(page.Locator("#plan-answer")).ToContainTextAsync("Say why the plan changes");
        await page.Locator("#plan-why").FillAsync("harder than it looked");
        await page.Locator("#plan-do").ClickAsync();
        await Expect(page.Locator("#plan-kept")).ToContainTextAsync("The plan is changed.");
        await Expect(Entry(page, "fit").Locator("summary .row-note").First).ToContainTextAsync("30, 330, 600 min");
    }
}

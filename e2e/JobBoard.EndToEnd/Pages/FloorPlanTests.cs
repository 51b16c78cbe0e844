using JobBoard.EndToEnd.Browsers;
using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;
using JobBoard.EndToEnd.Servers;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace JobBoard.EndToEnd.Pages;

/// <summary>The map of the shop, laid out by keys, by tap, by dragging and by typing.</summary>
public class FloorPlanTests(Chromium chromium)
{
    private const string Map = "/people-and-places/map";

    [Fact]
    public async Task A_place_is_moved_by_keys_by_tap_by_dragging_and_by_typing()
    {
        var browser = await chromium.Browser();
        using var folder = new ShopFolder();
        await SmallShop.Make(folder.Path);
        await using var server = await Server.Serve(folder.Path);
        await using var device = await Device.Open(browser, server.Url, Size.Desk, new Traffic(), new Dictionary<string, string> { ["ada"] = SmallShop.Pin });
        var page = await device.Page("/sign-in");
        await device.SignIn(page, "ada");
        await page.GotoAsync(Map);
        var (bay, says, keep) = (page.Locator("#spot-place-bay-1"), page.Locator("#floor-plan-says"), page.Locator("[data-keep]"));

        await Expect(keep).ToBeDisabledAsync();
        await bay.FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("Shift+ArrowDown");
        await page.Keyboard.PressAsync("Control+ArrowRight");
        await Expect(says).ToHaveTextAsync("Bay 1: 0.5 m from the left wall, 0.1 m from the upper, 4.5 by 6 m.");
        await page.Locator("[data-move='1 0']").ClickAsync();
        await page.Locator("[data-size='0 -1']").ClickAsync();
        await Expect(says).ToHaveTextAsync("Bay 1: 1 m from the left wall, 0.1 m from the upper, 4.5 by 5.5 m.");
        await Drag(page, bay, metres: 2);
        await Expect(says).ToHaveTextAsync("Bay 1: 3 m from the left wall, 0.1 m from the upper, 4.5 by 5.5 m.");
        await page.Locator("#place-bay-1-d").FillAsync("5,25");
        await Expect(says).ToContainTextAsync("4.5 by 5.25 m");
        await Expect(page.Locator("#floor-plan-changed")).ToHaveTextAsync("Moved and not kept yet: Bay 1.");
        await keep.ClickAsync();
        await Expect(page.Locator("#floor-plan-changed")).ToHaveTextAsync("Nothing is moved yet.");

        await page.ReloadAsync();
        await Expect(page.Locator("#place-bay-1-x")).ToHaveValueAsync("3");
        await Expect(page.Locator("#place-bay-1-d")).ToHaveValueAsync("5.25");
    }

    [Fact]
    public async Task What_cannot_be_kept_stays_with_its_answer()
    {
        var browser = await chromium.Browser();
        using var folder = new ShopFolder();
        await SmallShop.Make(folder.Path);
        await using var server = await Server.Serve(folder.Path);
        await using var device = await Device.Open(browser, server.Url, Size.Desk, new Traffic(), new Dictionary<string, string> { ["ada"] = SmallShop.Pin });
        var page = await device.Page("/sign-in");
        await device.SignIn(page, "ada");
        await page.GotoAsync(Map);

        await page.Locator("#spot-place-bay-1").ClickAsync();
        await page.Locator("#place-bay-1-w").FillAsync("five");
        await Expect(page.Locator("#floor-plan-says")).ToContainTextAsync("a number in metres is missing");
        await page.Locator("[data-keep]").ClickAsync();

        await Expect(page.Locator("#form-place-bay-1 .answer")).ToContainTextAsync("The width: 'five' is not a number.");
        await Expect(page.Locator("#place-bay-1-w")).ToHaveValueAsync("five");
        await Expect(page.Locator("#place-bay-1-w")).ToHaveAttributeAsync("aria-invalid", "true");
    }

    private static async Task Drag(IPage page, ILocator place, int metres)
    {
        var box = (await place.Locator("rect").BoundingBoxAsync())!;
        var perMetre = await page.EvaluateAsync<double>("() => document.getElementById('floor-plan-map').getScreenCTM().a");
        var (x, y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await page.Mouse.MoveAsync((float)x, (float)y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync((float)(x + (perMetre * metres)), (float)y, new() { Steps = 8 });
        await page.Mouse.UpAsync();
    }
}

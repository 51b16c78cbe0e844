using JobBoard.EndToEnd.Browsers;
using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;
using JobBoard.EndToEnd.Servers;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace JobBoard.EndToEnd.WhenReady;

/// <summary>The picture by keys and by touch: steps are reached and opened, sizes change, and it stays as it is when the board changes.</summary>
public class ReadyPictureTests(Chromium chromium)
{
    [Fact]
    public async Task Steps_are_reached_opened_and_closed_by_keys()
    {
        await using var shop = await Open(Size.Desk);
        var page = shop.Page;

        await page.Locator("#ready-frame").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(page.Locator("#step-test")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#ready-open")).ToContainTextAsync("Comes afterFuel line");
        await Expect(page.Locator("#step-line")).ToHaveClassAsync(new System.Text.RegularExpressions.Regex("is-linked"));
        await page.Keyboard.PressAsync("Escape");
        await Expect(page.Locator("#ready-open")).ToBeHiddenAsync();
        await page.Keyboard.PressAsync("ArrowLeft");
        await Expect(page.Locator("#step-line")).ToBeFocusedAsync();
    }

    [Fact]
    public async Task Size_stays_when_the_board_changes()
    {
        await using var shop = await Open(Size.Desk);
        var page = shop.Page;

        await page.Locator("#ready-frame").FocusAsync();
        await page.Keyboard.PressAsync("+");
        await page.WaitForFunctionAsync("() => { const s = document.getElementById('ready-svg'); return s.getAttribute('width') / s.dataset.width > 1.2; }");
        await shop.Door.Do("inga", "start-task", ("car", "heron"), ("task", "line"), ("crew[0].person", "inga"), ("crew[0].duty", "lead"));
        await Expect(page.Locator("#step-line")).ToHaveAttributeAsync("aria-label", "Fuel line: in hand, Inga");

        Assert.Equal(1.25, await Scale(page), 2);
        await page.Keyboard.PressAsync("0");
        await page.WaitForFunctionAsync("() => { const s = document.getElementById('ready-svg'); return s.getAttribute('width') / s.dataset.width < 1.2; }");
        Assert.Equal(1, await Scale(page), 2);
    }

    [Fact]
    public async Task A_tap_opens_a_step_and_its_links_lead_on()
    {
        await using var shop = await Open(Size.Phone);
        var page = shop.Page;

        await page.Locator("#step-line").TapAsync();
        await Expect(page.Locator("#ready-open h2")).ToContainTextAsync("Fuel line");
        await page.Locator("#ready-open [data-to=test]").TapAsync();
        await Expect(page.Locator("#ready-open h2")).ToContainTextAsync("Leak test");
        foreach (var target in await page.Locator("#ready-open button, .ready-bar .button").AllAsync())
            Assert.True((await target.BoundingBoxAsync())!.Height >= 48);
    }

    /// <summary>How large the picture is shown against its natural size, which changes with the work.</summary>
    private static Task<double> Scale(IPage page) => page.Locator("#ready-svg").EvaluateAsync<double>("s => s.getBoundingClientRect().width / s.dataset.width");

    private async Task<OpenPage> Open(Size size)
    {
        var browser = await chromium.Browser();
        var folder = new ShopFolder();
        await SmallShop.Make(folder.Path);
        var server = await Server.Serve(folder.Path);
        var pins = new Dictionary<string, string> { ["fritz"] = SmallShop.Pin, ["inga"] = SmallShop.Pin };
        var device = await Device.Open(browser, server.Url, size, new Traffic(), pins);
        var page = await device.Page("/sign-in");
        await device.SignIn(page, "fritz");
        await page.GotoAsync("/cars/heron/when-ready");
        await Expect(page.Locator("html")).ToHaveAttributeAsync("data-feed", "live", new() { Timeout = 20_000 });
        return new(folder, server, device, page, new FormDoor(server.Url, pins));
    }

    private sealed record OpenPage(ShopFolder Folder, Server Server, Device Device, IPage Page, FormDoor Door) : IAsyncDisposable
    {
        public async ValueTask DisposeAsync()
        {
            Door.Dispose();
            await Device.DisposeAsync();
            await Server.DisposeAsync();
            Folder.Dispose();
        }
    }
}

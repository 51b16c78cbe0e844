using JobBoard.EndToEnd.Browsers;
using JobBoard.EndToEnd.Screens;
using JobBoard.EndToEnd.Servers;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace JobBoard.EndToEnd.Pages;

/// <summary>Without a mouse and without touch.</summary>
public class KeyboardTests(Chromium chromium)
{
    [Fact]
    public async Task Signs_in_starts_and_signs_off_by_keys_alone()
    {
        var browser = await chromium.Browser();
        using var folder = new ShopFolder();
        await SmallShop.Make(folder.Path);
        await using var server = await Server.Serve(folder.Path);
        await using var context = await browser.NewContextAsync(new() { BaseURL = server.Url.ToString() });
        var page = await context.NewPageAsync();

        await page.GotoAsync("/");
        await To(page, "a[href*='person=inga&']");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#pin")).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync(SmallShop.Pin);
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/bay");

        await To(page, "#next-heron-line-ask > summary");
        await page.Keyboard.PressAsync("Enter");
        await To(page, "#form-next-heron-line > button");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#task-heron-line")).ToContainTextAsync("in hand since");

        await To(page, "#end-heron-line-sign > summary");
        await page.Keyboard.PressAsync("Space");
        await To(page, "#form-end-heron-line-sign > button");
        await page.Keyboard.PressAsync("Space");
        await Expect(page.Locator("#bay-hand")).ToContainTextAsync("Nothing in hand.");
        await Expect(page.Locator("#next-heron-test")).ToContainTextAsync("Leak test");
    }

    /// <summary>Goes on by Tab until an element has the focus; it has to be in sight there.</summary>
    private static async Task To(IPage page, string selector)
    {
        for (var tab = 0; tab < 80; tab++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (!await page.EvaluateAsync<bool>("s => document.activeElement?.matches(s) ?? false", selector)) continue;
            await Expect(page.Locator(selector)).ToBeInViewportAsync();
            return;
        }

        Assert.Fail($"{selector} is not reached by Tab.");
    }
}

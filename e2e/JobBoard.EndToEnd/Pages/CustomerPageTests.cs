using JobBoard.EndToEnd.Browsers;
using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;
using JobBoard.EndToEnd.Servers;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace JobBoard.EndToEnd.Pages;

/// <summary>The foreman's desk and the customer's phone: what one says the other shows, until the link is withdrawn.</summary>
public class CustomerPageTests(Chromium chromium)
{
    private static readonly IReadOnlyDictionary<string, string> Pins = new Dictionary<string, string> { ["fritz"] = SmallShop.Pin };

    [Fact]
    public async Task Shows_what_the_foreman_says_until_the_link_is_withdrawn()
    {
        var browser = await chromium.Browser();
        using var folder = new ShopFolder();
        await SmallShop.Make(folder.Path);
        await using var server = await Server.Serve(folder.Path);
        await using var desk = await Device.Open(browser, server.Url, Size.Desk, new Traffic(), Pins);
        var shop = await desk.Page("/sign-in");
        await desk.SignIn(shop, "fritz");
        var link = await MakeLink(desk, shop);
        var traffic = new Traffic();
        await using var phone = await Device.Open(browser, server.Url, Size.Phone, traffic, Pins);
        var page = await phone.Page(link);
        await Expect(page.Locator("html")).ToHaveAttributeAsync("data-feed", "live", new() { Timeout = 20_000 });
        Assert.Empty(await phone.Context.CookiesAsync());

        await desk.Unfold(shop.Locator("#ask-question"));
        await shop.FillAsync("#ask-words", "Silencer: quiet or sporty?");
        Assert.Equal("done", (await desk.Send(shop.Locator("#form-ask"))).Outcome);
        await Expect(page.Locator("#customer-waiting")).ToContainTextAsync("Silencer: quiet or sporty?");
        await Expect(shop.Locator(".customer-preview #customer-waiting")).ToContainTextAsync("Silencer: quiet or sporty?");

        await desk.Tap(shop.Locator("[id^=form-withdraw-] button"));
        await Expect(page.Locator("main")).ToHaveTextAsync("This link no longer works. Ask the shop.", new() { Timeout = 4_000 });
        Assert.Equal(404, (await page.ReloadAsync())!.Status);
        Assert.Empty(traffic.Others);
        Assert.Equal(0, traffic.Posts);
    }

    /// <summary>WCAG 2.2, 1.4.4 and 1.4.10: a window zoomed in is a narrower one, and 320 px is the narrowest that has to do.</summary>
    [Theory]
    [InlineData(1280, 1)]
    [InlineData(640, 1)]
    [InlineData(360, 1)]
    [InlineData(320, 1)]
    [InlineData(640, 2)]
    public async Task Nothing_runs_off_the_side(int width, int letters)
    {
        var browser = await chromium.Browser();
        using var folder = new ShopFolder();
        await SmallShop.Make(folder.Path);
        await using var server = await Server.Serve(folder.Path);
        await using var desk = await Device.Open(browser, server.Url, Size.Desk, new Traffic(), Pins);
        var shop = await desk.Page("/sign-in");
        await desk.SignIn(shop, "fritz");
        var link = await MakeLink(desk, shop);
        await desk.Unfold(shop.Locator("#ask-question"));
        await shop.FillAsync("#ask-words", "Windschutzscheibenwischerblattbefestigungsschraubensatz: which one?");
        await desk.Send(shop.Locator("#form-ask"));

        foreach (var path in new[] { link, "/cars/heron/customer" })
        {
            var page = await desk.Page(path);
            await page.SetViewportSizeAsync(width, 720);
            if (letters > 1) await page.EvaluateAsync("() => document.documentElement.style.setProperty('font-size', '200%')");
            Assert.Equal((path, 0), (path, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth")));
        }
    }

    private static async Task<string> MakeLink(Device desk, IPage shop)
    {
        await shop.GotoAsync("/cars/heron/customer");
        await desk.Unfold(shop.Locator("#ask-link"));
        await shop.FillAsync("#link-label", "Them");
        await desk.Tap(shop.Locator("#form-link button"));
        return new Uri(await shop.InputValueAsync("#new-link")).AbsolutePath;
    }
}

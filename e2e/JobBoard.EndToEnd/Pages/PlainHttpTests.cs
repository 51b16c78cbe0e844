using JobBoard.EndToEnd.Browsers;
using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;
using JobBoard.EndToEnd.Servers;
using static Microsoft.Playwright.Assertions;

namespace JobBoard.EndToEnd.Pages;

/// <summary>Over an address of the shop's network, plain HTTP: browsers give such a page less than one on the loopback address.</summary>
public class PlainHttpTests(Chromium chromium)
{
    [Fact]
    public async Task Starts_and_stops_over_the_shops_network()
    {
        var browser = await chromium.Browser();
        var address = Ports.OutwardAddress();
        if (address is null) Assert.Skip("This machine has no address but its loopback one.");
        using var folder = new ShopFolder();
        await SmallShop.Make(folder.Path);
        await using var server = await Server.Serve(folder.Path, $"http://{address}:0");
        var traffic = new Traffic();
        await using var device = await Device.Open(browser, server.Url, Size.Phone, traffic, new Dictionary<string, string> { ["inga"] = SmallShop.Pin });
        var page = await device.Page("/sign-in");
        await device.SignIn(page, "inga");

        Assert.False(await page.EvaluateAsync<bool>("() => window.isSecureContext"));
        await Expect(page.Locator("html")).ToHaveAttributeAsync("data-feed", "live", new() { Timeout = 20_000 });
        await device.Unfold(page.Locator("#next-heron-line-ask"));
        Assert.Equal("done", (await device.Send(page.Locator("#form-next-heron-line"))).Outcome);
        await Expect(page.Locator("#task-heron-line")).ToContainTextAsync("Fuel line");

        await device.Unfold(page.Locator("#stop-sheet"));
        Assert.Equal("done", (await device.Send(page.Locator("#form-stop"), page.Locator("#form-stop button[value=leak]"))).Outcome);
        await Expect(page.Locator(".stop-banner")).ToContainTextAsync("leak");
        await Expect(page.Locator(".stop-banner")).ToContainTextAsync("Stop: Heron coupe, Fuel line");
        Assert.Empty(traffic.Others);
        Assert.Equal(traffic.Taps, traffic.Posts);
    }
}

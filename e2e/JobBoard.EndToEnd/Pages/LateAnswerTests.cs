using JobBoard.EndToEnd.Browsers;
using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;
using JobBoard.EndToEnd.Servers;
using static Microsoft.Playwright.Assertions;

namespace JobBoard.EndToEnd.Pages;

/// <summary>Where the push of a change is quicker than the answer to the tap that made it.</summary>
public class LateAnswerTests(Chromium chromium)
{
    [Fact]
    public async Task Page_stays_when_its_form_went_before_the_answer()
    {
        var browser = await chromium.Browser();
        using var folder = new ShopFolder();
        await SmallShop.Make(folder.Path);
        await using var server = await Server.Serve(folder.Path);
        await using var device = await Device.Open(browser, server.Url, Size.Phone, new Traffic(), new Dictionary<string, string> { ["inga"] = SmallShop.Pin });
        var page = await device.Tab();
        await device.SignIn(page, "inga");
        await Expect(page.Locator("html")).ToHaveAttributeAsync("data-feed", "live", new() { Timeout = 20_000 });
        await page.RouteAsync("**/do/**", async route =>
        {
            var answer = await route.FetchAsync();
            await Expect(page.Locator(route.Request.Url.EndsWith("start-task", StringComparison.Ordinal) ? "#form-next-heron-line" : "#form-end-heron-line-sign")).ToHaveCountAsync(0);
            await route.FulfillAsync(new() { Response = answer });
        });

        var loads = 0;
        page.DOMContentLoaded += (_, _) => loads++;
        await device.Unfold(page.Locator("#next-heron-line-ask"));
        Assert.Equal("done", (await device.Send(page.Locator("#form-next-heron-line"))).Outcome);
        await device.Unfold(page.Locator("#end-heron-line-sign"));
        Assert.Equal("done", (await device.Send(page.Locator("#form-end-heron-line-sign"))).Outcome);

        Assert.Equal(0, loads);
    }
}

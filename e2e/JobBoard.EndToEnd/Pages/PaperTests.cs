using System.Text;
using System.Text.RegularExpressions;
using JobBoard.EndToEnd.Browsers;
using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;

namespace JobBoard.EndToEnd.Pages;

/// <summary>A car's sheet of paper, printed by the browser.</summary>
[Collection(DemoShopTests.Name)]
public partial class PaperTests(Chromium chromium, DemoShop demo)
{
    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task A_car_is_one_page(string format)
    {
        var browser = await chromium.Browser();
        var server = await demo.Server;
        await using var device = await Device.Open(browser, server.Url, Size.Desk, new Traffic(), server.Pins);
        var page = await device.Page("/sign-in");
        await device.SignIn(page, "oskar");
        var pages = new List<(string, int)>();

        foreach (var car in new[] { "heron-coupe", "dunlin-estate", "plover-saloon", "siskin-pick-up" })
        {
            await page.GotoAsync($"/cars/{car}/paper");
            var pdf = await page.PdfAsync(new() { Format = format, PreferCSSPageSize = false });
            pages.Add((car, Page().Count(Encoding.Latin1.GetString(pdf))));
        }

        Assert.All(pages, p => Assert.Equal((p.Item1, 1), p));
    }

    [GeneratedRegex("/Type\\s*/Page[^s]")]
    private static partial Regex Page();
}

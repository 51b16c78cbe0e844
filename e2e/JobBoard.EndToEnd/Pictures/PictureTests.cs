using System.Globalization;
using JobBoard.EndToEnd.Browsers;
using JobBoard.EndToEnd.Pages;
using JobBoard.EndToEnd.Servers;
using Microsoft.Playwright;

namespace JobBoard.EndToEnd.Pictures;

/// <summary>
/// Pictures of the running demo, into the folder named by JOBBOARD_PICTURES; skipped without it. Among them are the README's:
/// <c>JOBBOARD_PICTURES=e2e/pictures dotnet test e2e/JobBoard.EndToEnd -c Release --filter PictureTests</c> from the
/// repository's folder writes those; with JOBBOARD_PICTURES_ALL=1 every screen in every size, light and dark.
/// </summary>
[Collection(DemoShopTests.Name)]
public class PictureTests(Chromium chromium, DemoShop demo)
{
    private sealed record Shot(string Name, string Person, string Path, int Width, int Height, bool Touch = false, bool Whole = false);

    /// <summary>The README's.</summary>
    private static readonly Shot[] Readme =
    [
        new("floor", "wall", "/floor", 1920, 1080),
        new("bay", "inga", "/bay", 412, 915, Touch: true),
        new("holds", "oskar", "/holds", 1440, 900),
        new("car", "oskar", "/cars/dunlin-estate", 1440, 900),
        new("when-ready", "oskar", "/cars/siskin-pick-up/when-ready", 1440, 900),
        new("items", "oskar", "/cars/siskin-pick-up/items", 1440, 900),
        new("key-check", "oskar", "/cars/siskin-pick-up/key-check", 1440, 900),
        new("customer", "customer", "", 412, 915, Touch: true),
    ];

    private static readonly Shot[] Others =
    [
        new("floor-4k", "wall", "/floor", 3840, 2160),
        new("bay-tablet", "noor", "/bay", 820, 1180, Touch: true, Whole: true),
        new("bay-whole", "inga", "/bay", 412, 915, Touch: true, Whole: true),
        new("holds-whole", "oskar", "/holds", 1440, 900, Whole: true),
        new("holds-phone", "oskar", "/holds", 412, 915, Touch: true, Whole: true),
        new("car-whole", "oskar", "/cars/dunlin-estate", 1440, 900, Whole: true),
        new("car-phone", "inga", "/cars/dunlin-estate", 412, 915, Touch: true, Whole: true),
        new("task-phone", "inga", "/cars/heron-coupe/task/raise-100", 412, 915, Touch: true, Whole: true),
        new("for-customer", "oskar", "/cars/heron-coupe/customer", 1440, 900, Whole: true),
        new("cars", "oskar", "/cars", 1440, 900, Whole: true),
        new("parts", "oskar", "/parts", 1440, 900, Whole: true),
        new("items-phone", "inga", "/cars/siskin-pick-up/items", 412, 915, Touch: true, Whole: true),
        new("readings", "oskar", "/cars/dunlin-estate/readings", 1440, 900, Whole: true),
        new("readings-phone", "inga", "/cars/dunlin-estate/readings", 412, 915, Touch: true, Whole: true),
        new("map", "marit", "/people-and-places/map", 1440, 900),
        new("snags", "inga", "/snags", 412, 915, Touch: true, Whole: true),
        new("people-and-places", "marit", "/people-and-places", 1440, 900, Whole: true),
        new("sign-in", "nobody", "/sign-in", 820, 1180, Touch: true),
        new("when-ready-phone", "oskar", "/cars/heron-coupe/when-ready", 412, 915, Touch: true, Whole: true),
        new("key-check-phone", "inga", "/cars/siskin-pick-up/key-check", 412, 915, Touch: true, Whole: true),
        new("floor-phone", "inga", "/floor", 412, 915, Touch: true, Whole: true),
    ];

    [Fact]
    public async Task Screens_of_the_demo_are_written()
    {
        if (Environment.GetEnvironmentVariable("JOBBOARD_PICTURES") is not { Length: > 0 } folder)
        {
            Assert.Skip("Pictures are made where JOBBOARD_PICTURES names a folder.");
            return;
        }

        var browser = await chromium.Browser();
        var server = await demo.Server;
        Directory.CreateDirectory(folder);
        var all = Environment.GetEnvironmentVariable("JOBBOARD_PICTURES_ALL") == "1";
        foreach (var shot in all ? Readme.Concat(Others) : Readme)
        {
            await Take(browser, server, shot, ColorScheme.Light, Path.Combine(folder, shot.Name + ".png"));
            if (all) await Take(browser, server, shot, ColorScheme.Dark, Path.Combine(folder, shot.Name + "-dark.png"));
        }

        foreach (var shot in Readme) Assert.True(new FileInfo(Path.Combine(folder, shot.Name + ".png")).Length > 10_000);
    }

    private static async Task Take(IBrowser browser, Server server, Shot shot, ColorScheme scheme, string file)
    {
        await using var context = await browser.NewContextAsync(new()
        {
            BaseURL = server.Url.ToString(),
            ViewportSize = new() { Width = shot.Width, Height = shot.Height },
            HasTouch = shot.Touch,
            IsMobile = shot.Touch,
            DeviceScaleFactor = shot.Touch ? 2 : 1,
            ColorScheme = scheme,
            ReducedMotion = ReducedMotion.Reduce,
        });
        var page = await context.NewPageAsync();
        await SignIn(page, server, shot.Person);
        await page.GotoAsync(shot.Person == "customer" ? server.Customer.AbsolutePath : shot.Path, new() { WaitUntil = WaitUntilState.Load });
        if (await page.Locator("[data-fragment]").CountAsync() > 0)
            await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("data-feed", "live", new() { Timeout = 20_000 });
        await page.EvaluateAsync("() => document.fonts.ready.then(() => true)");
        await page.ScreenshotAsync(new() { Path = file, FullPage = shot.Whole });
    }

    private static async Task SignIn(IPage page, Server server, string person)
    {
        if (person is "nobody" or "customer") return;
        if (person == "wall")
        {
            await page.GotoAsync(server.Wall.AbsolutePath);
            return;
        }

        await page.GotoAsync(string.Create(CultureInfo.InvariantCulture, $"/sign-in?person={person}&back=/bay"));
        await page.FillAsync("#pin", server.Pins[person]);
        await page.ClickAsync(".pin-form button[type=submit]");
        await page.WaitForURLAsync("**/bay");
    }
}

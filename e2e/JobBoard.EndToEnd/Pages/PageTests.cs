using System.Collections.Concurrent;
using JobBoard.EndToEnd.Browsers;
using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;
using Microsoft.Playwright;

namespace JobBoard.EndToEnd.Pages;

/// <summary>Every page of the demo for every position: it opens, its console stays silent, and nothing is asked for from elsewhere.</summary>
[Collection(DemoShopTests.Name)]
public class PageTests(Chromium chromium, DemoShop demo)
{
    internal static readonly string[] Everybodys =
    [
        "/floor", "/bay", "/cars", "/cars/heron-coupe", "/cars/heron-coupe/task/lift-plan", "/cars/siskin-pick-up", "/cars/siskin-pick-up/when-ready",
        "/cars/siskin-pick-up/key-check", "/cars/siskin-pick-up/items", "/cars/dunlin-estate/readings", "/cars/dunlin-estate/paper", "/holds", "/parts", "/snags", "/people-and-places",
    ];

    internal static readonly string[] Foremans = ["/cars/new", "/cars/heron-coupe/plan/new-task", "/cars/heron-coupe/customer", "/cars/heron-coupe/plan", "/plans", "/plans/new", "/plans/mid-engine-v8"];

    internal static readonly string[] Owners = ["/access", "/people-and-places/map", "/people-and-places/change/person?id=noor", "/people-and-places/change/place?id=bay-1"];

    [Theory]
    [InlineData("mirek")]
    [InlineData("inga")]
    [InlineData("oskar")]
    [InlineData("marit")]
    public async Task Opens_and_keeps_to_itself(string person)
    {
        var browser = await chromium.Browser();
        var server = await demo.Server;
        var traffic = new Traffic();
        await using var device = await Device.Open(browser, server.Url, Size.Desk, traffic, server.Pins);
        var page = await device.Page("/sign-in");
        await device.SignIn(page, person);
        var complaints = Listen(page);

        foreach (var path in May(person)) Assert.Equal((path, 200), (path, (await Loaded(page, path))!.Status));
        foreach (var path in MayNot(person)) Assert.DoesNotContain(path.Split('?')[0], new Uri((await Loaded(page, path))!.Url).AbsolutePath, StringComparison.Ordinal);

        Assert.Empty(complaints);
        Assert.Empty(traffic.Others);
    }

    [Fact]
    public async Task Wall_shows_the_floor_and_nothing_else()
    {
        var browser = await chromium.Browser();
        var server = await demo.Server;
        var traffic = new Traffic();
        await using var device = await Device.Open(browser, server.Url, Size.Wall, traffic, server.Pins);
        var page = await device.Page(server.Wall.AbsolutePath);
        var complaints = Listen(page);

        Assert.Equal("/floor", new Uri(page.Url).AbsolutePath);
        await Loaded(page, "/floor");
        Assert.Empty(complaints);
        foreach (var path in Everybodys.Skip(1)) Assert.Equal((path, "/sign-in"), (path, new Uri((await page.GotoAsync(path))!.Url).AbsolutePath));
        Assert.Empty(traffic.Others);
    }

    /// <summary>Loads a page and waits until its feed is live, where it has one.</summary>
    private static async Task<IResponse?> Loaded(IPage page, string path)
    {
        var response = await page.GotoAsync(path);
        if (await page.Locator("[data-fragment]").CountAsync() > 0)
            await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("data-feed", "live", new() { Timeout = 20_000 });
        return response;
    }

    private static ConcurrentBag<string> Listen(IPage page)
    {
        var heard = new ConcurrentBag<string>();
        page.PageError += (_, error) => heard.Add($"{page.Url}: {error}");
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning") heard.Add($"{page.Url}: {message.Text}");
        };
        return heard;
    }

    private static IEnumerable<string> May(string person) => person switch
    {
        "marit" => [.. Everybodys, .. Foremans, .. Owners],
        "oskar" => [.. Everybodys, .. Foremans],
        _ => Everybodys,
    };

    private static IEnumerable<string> MayNot(string person) => Foremans.Concat(Owners).Except(May(person));
}

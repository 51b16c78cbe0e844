using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace JobBoard.EndToEnd.Story;

/// <summary>What is played out after the lift: a line that drops, a hose that is moved after its test, a link that is taken out, the first start.</summary>
public partial class FirstStartStory
{
    /// <summary>
    /// A start-start link of half an hour of shop hours stands between two hoses: the foreman takes it out, as they are done in one go.
    /// </summary>
    private static async Task LinkTakenOut(Workshop shop)
    {
        var task = shop.TaskOf("radiator-return");
        var form = await shop.Sol.ToStartOnItsPage(Workshop.Car, task.Id, ["sol"]);
        Assert.Equal("refused", (await shop.Sol.Device.Send(form)).Outcome);
        await Expect(form.Locator(".answer")).ToContainTextAsync("30 min after Manifold to radiator are not over.");

        var page = await shop.Oskar.Device.Page($"/cars/{Workshop.Car}/task/{task.Id}");
        var link = $"{task.Id}-water-manifold-startstart";
        await shop.Oskar.Device.Unfold(page.Locator($"#ask-unlink-{link}"));
        await page.FillAsync($"#unlink-why-{link}", "both hoses are laid in one go today");
        var watched = await shop.Delays.Watch([new(shop.Oskar.Car, $"#node-{task.Id}-side", "can start")]);
        var answer = await shop.Oskar.Device.Send(page.Locator($"#form-unlink-{link}"));
        await Workshop.Done(answer, page, "link out");
        await watched.Shown("link taken out", answer.At);
        await page.CloseAsync();
        await shop.Do(task, ["sol"]);
    }

    /// <summary>What Inga does while Tove's line is down; it was offered to Tove too.</summary>
    private const string Meanwhile = "oil-in";

    /// <summary>The line of the tablet drops in the middle of a task while others go on; what was typed is kept, and after the line is back the right picture shows.</summary>
    private static async Task DroppedLine(Workshop shop)
    {
        var task = shop.TaskOf("header-tank");
        await shop.Start(task, ["tove"]);
        var tove = shop.Tablet;
        var html = tove.Bay.Page.Locator("html");
        await Expect(html).ToHaveAttributeAsync("data-feed", "live");
        await SameAsLoadedAnew(tove);
        var before = await Offered(tove);
        Assert.Contains(Meanwhile, before);
        shop.Line.Cut();
        await Expect(html).ToHaveAttributeAsync("data-feed", "old", new() { Timeout = 15_000 });
        await Expect(tove.InBay(".line .feed-old")).ToBeVisibleAsync();
        await Expect(tove.InBay(".line .feed-old")).ToContainTextAsync("The feed is old");

        var form = await tove.ToLeave(Workshop.Car, task.Id, "clamps loose");
        await tove.Device.SendIntoTheVoid(form);
        await Expect(form.Locator(".answer")).ToContainTextAsync("Not sent: no signal.", new() { Timeout = 15_000 });
        await Expect(tove.InBay("[data-unsent-words]")).ToContainTextAsync("1 not yet sent");
        await shop.Do(shop.TaskOf(Meanwhile), ["inga"]);
        Assert.Equal(before, await Offered(tove));
        await LineIsBack(shop);
        Assert.DoesNotContain(Meanwhile, await Offered(tove));
        await SentAgain(shop, form);
        await shop.Start(task, ["tove"]);
        await shop.SignOff(tove, task);
    }

    /// <summary>What others did meanwhile shows, and what was typed is still there.</summary>
    private static async Task LineIsBack(Workshop shop)
    {
        var tove = shop.Tablet;
        shop.Line.Mend();
        await Expect(tove.Bay.Page.Locator("html")).ToHaveAttributeAsync("data-feed", "live", new() { Timeout = 20_000 });
        await Expect(tove.InBay(".line .feed-old")).ToBeHiddenAsync();
        await SameAsLoadedAnew(tove);
        await Expect(tove.InBay("[data-unsent-words]")).ToContainTextAsync("1 not yet sent");
    }

    private static async Task SentAgain(Workshop shop, ILocator form)
    {
        var tove = shop.Tablet;
        var watched = await shop.Delays.Watch([new(tove.Bay, $"#task-{Workshop.Car}-header-tank", Gone: true), new(shop.Oskar.Car, "#node-header-tank-state", "left part-done")]);
        var answer = await tove.Device.Send(form);
        await Workshop.Done(answer, tove.Bay.Page, "left part-done, sent again");
        await watched.Shown("left part-done", answer.At);
        await SameAsLoadedAnew(tove);
        await Expect(tove.InBay("[data-unsent-words]")).ToBeEmptyAsync();
        shop.Say("the line dropped and came back: nothing lost, the right picture shows");
    }

    /// <summary>What the pushes left on the screen says what a page loaded now says.</summary>
    private static async Task SameAsLoadedAnew(Hands hands)
    {
        var fresh = await hands.Device.Page("/bay");
        var expected = await Lists(fresh);
        await fresh.CloseAsync();
        var shown = await Lists(hands.Bay.Page);
        for (var again = 0; again < 20 && !expected.SequenceEqual(shown); again++)
        {
            await Task.Delay(200);
            shown = await Lists(hands.Bay.Page);
        }

        Assert.Equal(expected, shown);
    }

    /// <summary>What somebody's screen offers to start on the car.</summary>
    private static async Task<string[]> Offered(Hands hands) =>
        [.. (await hands.InBay("#bay-can-start > .rows > li").EvaluateAllAsync<string[]>("rows => rows.map(r => r.id)")).Select(id => id.Replace($"next-{Workshop.Car}-", "", StringComparison.Ordinal))];

    /// <summary>What somebody can start and waits on, in the words of their screen.</summary>
    private static Task<string[]> Lists(IPage bay) =>
        bay.EvaluateAsync<string[]>("() => [...document.querySelectorAll('#bay-can-start li, #bay-waiting li')].map(e => e.textContent.replace(/\\s+/g, ' ').trim())");

    /// <summary>The hold after the leak test is released; then a hose is moved. Test and release lapse, and nothing after them starts until both are given again.</summary>
    private static async Task HoseMoved(Workshop shop)
    {
        await shop.Release("hold-fuel");
        await MoveHose(shop);
        var form = await shop.Noor.ToStartOnItsPage(Workshop.Car, "return-back", ["noor"]);
        Assert.Equal("refused", (await shop.Noor.Device.Send(form)).Outcome);
        await Expect(form.Locator(".answer")).ToContainTextAsync("Fuel leak test, 10 min has lapsed: Fuel feed and joints (tight) changed outside the plan, Sol.");
        await Expect(form.Locator(".answer")).ToContainTextAsync("The release of Fuel leak test seen has lapsed");

        await Expect(shop.Noor.InBay($"#next-{Workshop.Car}-leak-test")).ToContainTextAsync("lapsed, to be done again");
        await shop.Do(shop.TaskOf("leak-test"), ["noor", "runa"]);
        await shop.Release("hold-fuel");
        shop.Say("the hose was moved, the leak test lapsed and was taken again");
    }

    private static async Task MoveHose(Workshop shop)
    {
        var sol = shop.Sol;
        await sol.Other.GotoAsync($"/cars/{Workshop.Car}/items");
        await sol.Device.Unfold(sol.Other.Locator("#item-fuel-lines"));
        await sol.Device.Unfold(sol.Other.Locator("#ask-item-fuel-lines"));
        var form = sol.Other.Locator("#form-item-fuel-lines");
        await sol.Device.Choose(form.Locator("input[name=aspects][value=tight]"));
        await form.Locator("#item-why-fuel-lines").FillAsync("feed hose moved off the bulkhead bracket");
        Sight[] sights =
        [
            new(shop.Oskar.Car, "#node-leak-test-state", "lapsed: has to be done again"), new(shop.Oskar.Car, "#node-hold-fuel-state", "release lapsed"),
            new(shop.Noor.Bay, $"#next-{Workshop.Car}-leak-test", "lapsed"),
        ];
        var watched = await shop.Delays.Watch(sights);
        var answer = await sol.Device.Send(form);
        await Workshop.Done(answer, sol.Other, "hose moved");
        await watched.Shown("lapsed", answer.At);
        await Expect(shop.Oskar.InCar("#node-leak-test .mark-32").First).ToBeVisibleAsync();
    }

    /// <summary>The call is taken aloud: a no, then a go of everybody in the shop, tapped by themselves or by the foreman; then his word.</summary>
    private static async Task KeyCheck(Workshop shop)
    {
        await ExtractionOn(shop);
        var foreman = await shop.Oskar.Device.Page(KeyCheckOfCar);
        await Expect(foreman.Locator("#key-PeopleAndPlace")).ToContainTextAsync("go");
        await Expect(foreman.Locator("#key-word-title")).ToHaveTextAsync("Foreman's word: not yet");
        await SaysNo(shop, foreman);
        foreach (var hands in shop.Everybody)
        {
            await hands.Other.GotoAsync(KeyCheckOfCar);
            await Workshop.Done(await hands.Device.Send(hands.Other.Locator($"#call-go-{hands.Person}")), hands.Other, $"{hands.Person} calls go");
            await Expect(foreman.Locator($".key-one.go:has-text(\"{char.ToUpperInvariant(hands.Person[0])}{hands.Person[1..]}\")")).ToHaveCountAsync(1);
        }

        while (await foreman.Locator("form[id^=call-go-]").CountAsync() > 0)
        {
            var form = foreman.Locator("form[id^=call-go-]").First;
            var id = await form.GetAttributeAsync("id");
            await Workshop.Done(await shop.Oskar.Device.Send(foreman.Locator("#" + id)), foreman, "the foreman taps what is called out");
            await Expect(foreman.Locator("#" + id)).ToHaveCountAsync(0);
        }

        await shop.Release("hold-key-check");
        await Expect(foreman.Locator("#key-word-title")).ToHaveTextAsync("Foreman's word: given");
        await foreman.CloseAsync();
        shop.Say("the call was taken, the foreman gave his word");
    }

    private static string KeyCheckOfCar => $"/cars/{Workshop.Car}/key-check";

    private static async Task SaysNo(Workshop shop, IPage foreman)
    {
        var noor = shop.Noor;
        await noor.Other.GotoAsync(KeyCheckOfCar);
        await noor.Device.Unfold(noor.Other.Locator("#call-no-ask-noor"));
        await noor.Other.FillAsync("#call-why-noor", "extinguisher still in bay 2");
        await Workshop.Done(await noor.Device.Send(noor.Other.Locator("#call-no-noor")), noor.Other, "Noor calls no go");
        await Expect(foreman.Locator(".key-one.no")).ToContainTextAsync("no go: extinguisher still in bay 2");
        await Expect(foreman.Locator("#key-word-ask")).ToHaveCountAsync(0);
    }

    /// <summary>The engine runs: the wall says so to everybody in the shop.</summary>
    private static async Task FirstStart(Workshop shop)
    {
        var task = shop.TaskOf("first-start");
        var lead = await shop.Start(task, ["inga", "sol", "noor"]);
        await Expect(shop.Wall.Page.Locator("#floor-map")).ToContainTextAsync("First start");
        await Expect(shop.Wall.Page.Locator("#floor-words-bay-1")).ToContainTextAsync("Exhaust running");
        foreach (var need in task.Readings) await shop.Read(lead, task, need, Numbers.InLimits(need));
        await shop.SignOff(lead, task);
        await Expect(shop.Oskar.InCar("#node-first-start-state")).ToContainTextAsync("signed off, Inga");
        var walk = await shop.Oskar.Device.Page($"/cars/{Workshop.Car}/items");
        await Expect(walk.Locator("#item-engine-run-is")).ToHaveTextAsync("run");
        await walk.CloseAsync();
        shop.Say("the engine ran");
    }

    private static async Task ExtractionOn(Workshop shop)
    {
        var sol = shop.Sol;
        await sol.Other.GotoAsync("/people-and-places");
        await sol.Device.Unfold(sol.Other.Locator("#ask-item-extraction"));
        await sol.Other.FillAsync("#item-why-extraction", "before an engine runs indoors");
        var answer = await sol.Device.Send(sol.Other.Locator("#form-item-extraction"));
        await Workshop.Done(answer, sol.Other, "extraction on");
        await Expect(sol.Other.Locator("#item-extraction .row-title")).ToContainTextAsync("on");
    }
}

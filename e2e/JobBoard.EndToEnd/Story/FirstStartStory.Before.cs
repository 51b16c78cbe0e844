using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Servers;
using static Microsoft.Playwright.Assertions;

namespace JobBoard.EndToEnd.Story;

/// <summary>The morning, and what is played out before the lift.</summary>
public partial class FirstStartStory
{
    /// <summary>Everybody says in; the foreman opens what he wants to see; somebody wants to lift long before its time.</summary>
    private static async Task Begin(Workshop shop)
    {
        foreach (var hands in shop.Everybody)
        {
            await Expect(hands.InBay("#bay-not-in")).ToContainTextAsync("You are not in");
            var watched = await shop.Delays.Watch([new(hands.Bay, "#bay-not-in", Gone: true)]);
            var answer = await hands.Device.Send(hands.InBay("#form-say-in"));
            await watched.Shown("in", answer.At);
        }

        foreach (var stage in await shop.Oskar.InCar("details.fold[id^=stage-]").AllAsync()) await shop.Oskar.Device.Unfold(stage);
        await Expect(shop.Wall.Page.Locator("#floor-shop")).ToHaveTextAsync("Tarn Lane Conversions");
        await Expect(shop.Wall.Page.Locator("#floor-map")).ToContainTextAsync("Heron coupe");
        await TooEarly(shop);
    }

    /// <summary>All that lifting the engine waits on while it is not prepared: the hold point and five conditions.</summary>
    private static readonly string[] LongBeforeItsTime =
    [
        "Before the lift is not released.", "Blanks and rags in the ports has to be in;", "Gearbox has to be mated;", "Engine mounts and adapters has to be fitted;",
        "Electric coolant pump has to be fitted;", "Rear earth strap has to be fitted;",
    ];

    /// <summary>A start long before its time is refused with everything it waits on, the same as the page lists.</summary>
    private static async Task TooEarly(Workshop shop)
    {
        var form = await shop.Sol.ToStartOnItsPage(Workshop.Car, "raise-100", ["sol", "inga", "tove", "noor"]);
        var listed = await shop.Sol.Other.Locator("#task-stands .waiting-on .what").AllInnerTextsAsync();
        var answer = await shop.Sol.Device.Send(form);

        Assert.Equal("refused", answer.Outcome);
        await Expect(form.Locator(".answer .refusal-title")).ToContainTextAsync("It waits on");
        var shown = await form.Locator(".answer .waiting-on .what").AllInnerTextsAsync();
        Assert.Equal(listed.Order(), shown.Order());
        foreach (var words in LongBeforeItsTime) Assert.Single(shown, s => s.StartsWith(words, StringComparison.Ordinal));
        Assert.Equal(LongBeforeItsTime.Length, shown.Count);
        shop.Say($"too early: refused with all of {shown.Count} things it waits on: {string.Join(" | ", shown)}");
    }

    /// <summary>Two people take the same task in the same moment: one has it, the other is told by whom. The one who has it reads out of limits first.</summary>
    private static async Task SameMomentAndReadingOut(Workshop shop)
    {
        var task = shop.TaskOf("strap-fit");
        var (one, other) = (await shop.Inga.ToStart(Workshop.Car, task.Id, ["inga"]), await shop.Sol.ToStart(Workshop.Car, task.Id, ["sol"]));
        var moment = DateTimeOffset.UtcNow.AddSeconds(2);
        var answers = await Task.WhenAll(shop.Inga.Device.SendAt(moment, one), shop.Sol.Device.SendAt(moment, other));

        Assert.Equal(["done", "refused"], answers.Select(a => a.Outcome).Order());
        var (winner, loser, refused) = answers[0].IsDone ? (shop.Inga, shop.Sol, other) : (shop.Sol, shop.Inga, one);
        var name = winner == shop.Inga ? "Inga" : "Sol";
        await Expect(winner.InBay($"#task-{Workshop.Car}-strap-fit")).ToContainTextAsync("Rear earth strap");
        var told = refused.Page.Locator(".refusal:visible");
        await Expect(told).ToContainTextAsync($"by {name}");
        await Expect(loser.InBay("#bay-hand")).ToContainTextAsync("Nothing in hand.");
        foreach (var read in await refused.Page.Locator(".answer-kept > button").AllAsync()) await loser.Device.Tap(read);
        shop.Took(task, [winner.Person]);
        shop.Say($"the same moment: {name} has it, the other is told so");
        await ReadOut(shop, winner);
        await shop.SignOff(winner, task);
    }

    private static async Task ReadOut(Workshop shop, Hands hands)
    {
        var task = shop.TaskOf("strap-fit");
        var held = shop.Oskar.InHolds($"#reading-{Workshop.Car}-strap-fit-strap-ohms");
        await shop.Read(hands, task, task.Readings[0], "0.031", "out");
        await Expect(hands.InBay($"#end-{Workshop.Car}-strap-fit-waits")).ToContainTextAsync("is out: 0.031 Ω");
        await Expect(hands.InBay($"#end-{Workshop.Car}-strap-fit-sign")).ToHaveCountAsync(0);
        await Expect(held).ToContainTextAsync("0.031 Ω");
        await Expect(held).ToContainTextAsync("limit at most 0.01 Ω");

        var watched = await shop.Delays.Watch([new(shop.Oskar.Holds, $"#reading-{Workshop.Car}-strap-fit-strap-ohms", Gone: true)]);
        await shop.Read(hands, task, task.Readings[0], "0.004");
        await watched.Shown("reading hold gone", await hands.Bay.Page.EvaluateAsync<double>("() => jobboardEyes.posted"));
        await Expect(hands.InBay($"#end-{Workshop.Car}-strap-fit-sign")).ToBeVisibleAsync();
        shop.Say("a reading out holds; taken again in limits it holds no more");
    }

    /// <summary>
    /// Nobody checks their own work. Sol's bay offers the check only of what he had no hand in; on a page that was cut off before
    /// he took a reading of that work himself the form still stands, and the rules refuse it.
    /// </summary>
    private static async Task OwnSecondCheck(Workshop shop)
    {
        var task = shop.TaskOf("release-bearing");
        var inga = await shop.Start(task, ["inga"]);
        await shop.Read(inga, task, task.Readings[0], "3.5");
        await inga.SignOff(Workshop.Car, task.Id);
        await Expect(inga.InBay($"#check-{Workshop.Car}-release-bearing")).ToContainTextAsync("your own work: another person checks it");
        await Expect(inga.InBay($"#check-{Workshop.Car}-release-bearing-ask")).ToHaveCountAsync(0);

        await shop.Sol.Other.RouteAsync("**/live/**", route => route.AbortAsync());
        await shop.Sol.Other.GotoAsync($"/cars/{Workshop.Car}/task/release-bearing");
        await ReadAgainOnAnotherPage(shop);
        await shop.Sol.Device.Unfold(shop.Sol.Other.Locator("#ask-check"));
        var form = shop.Sol.Other.Locator($"#form-check-{Workshop.Car}-release-bearing");
        await shop.Sol.Device.Choose(form.Locator("input[value=true]"));
        var answer = await shop.Sol.Device.Send(form);
        Assert.Equal("refused", answer.Outcome);
        await Expect(form.Locator(".answer")).ToContainTextAsync("Nobody checks their own work.");
        await shop.Sol.Other.UnrouteAllAsync();

        shop.HadAHand(task, "sol");
        await shop.Check(task);
        shop.Say("nobody checks their own work");
    }

    private static async Task ReadAgainOnAnotherPage(Workshop shop)
    {
        var page = await shop.Sol.Device.Page($"/cars/{Workshop.Car}/task/release-bearing");
        await shop.Sol.Device.Unfold(page.Locator("#ask-reading-air-gap"));
        await page.FillAsync("#reading-text-air-gap", "3.4");
        var with = page.Locator("#reading-with-air-gap");
        if (await with.CountAsync() > 0) await with.SelectOptionAsync("rule");
        var answer = await shop.Sol.Device.Send(page.Locator("#form-reading-air-gap"));
        Assert.Equal("done", answer.Outcome);
        await page.CloseAsync();
    }
}

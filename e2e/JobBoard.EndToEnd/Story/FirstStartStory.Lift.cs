using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;
using JobBoard.EndToEnd.Servers;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace JobBoard.EndToEnd.Story;

/// <summary>The lift: while the load hangs nobody goes under the car beside it; a stop; made safe; released; gone on with.</summary>
public partial class FirstStartStory
{
    private const string Under = "driveshafts-in";

    private static readonly string[] LiftCrew = ["inga", "sol", "tove", "noor"];

    private static async Task Lift(Workshop shop)
    {
        var task = shop.TaskOf("raise-100");
        await shop.Start(task, [.. LiftCrew]);
        await Expect(shop.Wall.Page.Locator("#floor-words-bay-1")).ToContainTextAsync("hanging");
        await Expect(shop.Wall.Page.Locator("#floor-map")).ToContainTextAsync("100 mm up");
        await Expect(shop.Wall.Page.Locator("#floor-zone-gantry")).ToHaveCountAsync(1);
        await NotUnder(shop, "Suspended load stands at Heron coupe, Bay 1: keep apart");

        var stop = await RaiseStop(shop);
        await Hear(shop, stop);
        await NotUnder(shop, "Suspended load stands at Heron coupe, Bay 1: keep apart");
        await NothingStarts(shop);
        await Expect(shop.Oskar.InHolds($"#release-{stop}")).ToHaveCountAsync(0);
        await MakeSafe(shop, stop);
        await NothingStarts(shop);
        await GoUnder(shop);
        await ReleaseStop(shop, stop);
        await GoOn(shop);
        await shop.SignOff(shop.Inga, await ReadLift(shop));
    }

    /// <summary>Runa wants to go under the car beside, within the sweep of the same gantry.</summary>
    private static async Task NotUnder(Workshop shop, string because)
    {
        var form = await shop.Runa.ToStartOnItsPage(StoryShop.Plover, Under, ["runa", "jarle"]);
        var answer = await shop.Runa.Device.Send(form);
        Assert.Equal("refused", answer.Outcome);
        await Expect(form.Locator(".answer")).ToContainTextAsync(because);
        await Expect(shop.Runa.InBay("#bay-hand")).ToContainTextAsync("Nothing in hand.");
        shop.Say("under the other car: refused while the load hangs");
    }

    /// <summary>Whatever is tried on the stopped car is refused, with who ends that.</summary>
    private static async Task NothingStarts(Workshop shop)
    {
        var form = await shop.Noor.ToStartOnItsPage(Workshop.Car, "radiator-fit", ["noor"]);
        Assert.Equal("refused", (await shop.Noor.Device.Send(form)).Outcome);
        var stopped = form.Locator(".answer .waiting-on li", new() { HasText = "Stop by Sol: load not right" });
        await Expect(stopped).ToContainTextAsync("Marit or Oskar");
    }

    /// <summary>Sol stops the car with two taps and a choice. It sounds on the screens of all it touches, and the wall says who has not heard.</summary>
    private static async Task<string> RaiseStop(Workshop shop)
    {
        var sol = shop.Sol;
        await sol.Device.Unfold(sol.InBay("#stop-sheet"));
        await sol.Device.Choose(sol.InBay("#form-stop input[name=scope][value=car]"));
        Sight[] sights =
        [
            .. new[] { shop.Inga, shop.Tablet, shop.Noor }.Select(h => new Sight(h.Bay, "[data-alarm]", "Stop: Heron coupe load not right")),
            new(shop.Wall, "#floor-stops", "not heard yet:"), new(shop.Oskar.Holds, "article[id^=hold-stop-]", "load not right"),
        ];
        await shop.Inga.Bay.Page.EvaluateAsync("() => window.scrollTo(0, document.body.scrollHeight)");
        var watched = await shop.Delays.Watch(sights);
        var answer = await sol.Device.Send(sol.InBay("#form-stop"), sol.InBay("#form-stop button[value='load not right']"));
        await Workshop.Done(answer, sol.Bay.Page, "stop");
        await watched.Shown("stop", answer.At);
        foreach (var told in new[] { shop.Inga, shop.Tablet, shop.Noor })
        {
            await InSight(told);
            await Expect(told.Bay.Page.Locator("html[data-sounded]")).ToHaveCountAsync(1);
            await Expect(told.InBay(".stop-banner")).ToContainTextAsync("A stop here is no emergency stop.");
        }

        var id = await sol.InBay(".stop-banner").First.GetAttributeAsync("id");
        return id!["stop-".Length..];
    }

    /// <summary>A stop is in sight wherever its reader has scrolled to: its line stands at the top, and a tap on it goes to all of it.</summary>
    private static async Task InSight(Hands told)
    {
        var line = told.InBay(".alarm[data-out-of-view]");
        if (await line.CountAsync() > 0)
        {
            await Expect(line.Locator(".alarm-words")).ToBeInViewportAsync();
            await told.Device.Tap(line.Locator(".alarm-show"));
        }

        await Expect(told.InBay(".stop-banner")).ToBeInViewportAsync();
        await Expect(line).ToHaveCountAsync(0);
    }

    /// <summary>Each confirms; until the last has, the wall names who has not.</summary>
    private static async Task Hear(Workshop shop, string stop)
    {
        var wall = shop.Wall.Page.Locator($"#floor-stop-{stop}");
        foreach (var hands in new[] { shop.Noor, shop.Tablet })
        {
            var name = hands == shop.Noor ? "Noor" : "Tove";
            await Expect(wall).ToContainTextAsync(name);
            await HeardBy(shop, hands, stop, new Sight(shop.Oskar.Holds, $"#hold-{stop} dd:nth-of-type(2)", name));
            await Expect(hands.InBay(".alarm-words")).ToHaveCountAsync(0);
        }

        await Expect(wall).ToContainTextAsync("not heard yet:");
        await Expect(wall).ToContainTextAsync("Inga");
        await HeardBy(shop, shop.Inga, stop, new Sight(shop.Wall, $"#floor-stop-{stop}", "heard by all 4"));
        shop.Say("the stop is heard by all four, Sol by raising it");
    }

    private static async Task HeardBy(Workshop shop, Hands hands, string stop, Sight sight)
    {
        var watched = await shop.Delays.Watch([sight]);
        var answer = await hands.Device.Send(hands.InBay($"#form-heard-{stop}"));
        await Workshop.Done(answer, hands.Bay.Page, "heard");
        await watched.Shown("heard", answer.At);
    }

    /// <summary>The engine goes back onto its stand, and that is said; the task is left part-done and the stop goes on holding.</summary>
    private static async Task MakeSafe(Workshop shop, string stop)
    {
        var inga = shop.Inga;
        await inga.Device.Unfold(inga.InBay($"#safe-{stop}"));
        var form = inga.InBay($"#form-safe-{stop}");
        await Expect(form).ToContainTextAsync("Suspended load");
        foreach (var ended in await form.Locator("input[name$='.ended'][value=true]").AllAsync())
        {
            var isLoad = (await ended.Locator("xpath=ancestor::fieldset").InnerTextAsync()).Contains("Suspended load", StringComparison.Ordinal);
            await inga.Device.Choose(isLoad ? ended : ended.Locator("xpath=ancestor::fieldset").Locator("input[value=false]"));
        }

        foreach (var asked in await form.Locator("fieldset:has(input[name^='items'])").AllAsync()) await inga.Device.Choose(asked.Locator("input[value=out]"));
        await form.Locator("textarea[name=how]").FillAsync("engine back on its stand, slings slack");
        var watched = await shop.Delays.Watch(
            [new(shop.Wall, $"#floor-stop-{stop}", "made safe"), new(shop.Oskar.Holds, $"#hold-{stop}", "engine back on its stand"), new(inga.Bay, $"#task-{Workshop.Car}-raise-100", Gone: true)]);
        var answer = await inga.Device.Send(form);
        await Workshop.Done(answer, inga.Bay.Page, "made safe");
        await watched.Shown("made safe", answer.At);
        await Expect(shop.Wall.Page.Locator("#floor-words-bay-1")).Not.ToContainTextAsync("hanging");
        shop.Say("made safe: the engine is back on its stand");
    }

    /// <summary>Now Runa may go under; and while she is there the load may not go up again.</summary>
    private static async Task GoUnder(Workshop shop)
    {
        var form = await shop.Runa.ToStart(StoryShop.Plover, Under, ["runa", "jarle"]);
        var watched = await shop.Delays.Watch([new(shop.Runa.Bay, $"#task-{StoryShop.Plover}-{Under}", "Driveshafts in"), new(shop.Wall, "#floor-words-bay-2", "Person under the car")]);
        var answer = await shop.Runa.Device.Send(form);
        await Workshop.Done(answer, form.Page, "under the other car");
        await watched.Shown("under the other car", answer.At);
    }

    /// <summary>The foreman's PIN is a quarter of an hour old: it is asked for again.</summary>
    private static async Task ReleaseStop(Workshop shop, string stop)
    {
        var watched = await shop.Delays.Watch([new(shop.Wall, $"#floor-stop-{stop}", Gone: true), new(shop.Inga.Bay, ".stop-banner", Gone: true), new(shop.Oskar.Holds, $"#hold-{stop}", Gone: true)]);
        var answer = await shop.Oskar.Release(stop, "slings hung anew, angle seen", "watched the hook take the weight");
        await Workshop.Done(answer, shop.Oskar.Holds.Page, "stop released");
        Assert.True(answer.AskedPin, "The PIN was not asked for although it was typed a quarter of an hour ago.");
        await watched.Shown("stop released", answer.At);
        shop.Say("the stop is released; the PIN was asked for again");
    }

    /// <summary>Whoever goes on has read how it was left; and waits until nobody is under the other car.</summary>
    private static async Task GoOn(Workshop shop)
    {
        var left = $"left-{Workshop.Car}-raise-100";
        foreach (var hands in new[] { shop.Sol, shop.Tablet, shop.Noor })
        {
            await Expect(hands.InBay("#" + left)).ToContainTextAsync("engine back on its stand, slings slack");
            var watched = await shop.Delays.Watch([new(hands.Bay, "#" + left, Gone: true)]);
            var read = await hands.Device.Send(hands.InBay("#form-" + left));
            await watched.Shown("how it was left is read", read.At);
        }

        var form = await shop.Inga.ToStartOnItsPage(Workshop.Car, "raise-100", [.. LiftCrew]);
        Assert.Equal("refused", (await shop.Inga.Device.Send(form)).Outcome);
        await Expect(form.Locator(".answer")).ToContainTextAsync("Person under the car stands at Plover saloon, Bay 2: keep apart");
        shop.Say("the load stays down while somebody is under the other car");
        await OutFromUnder(shop);
        await shop.Start(shop.TaskOf("raise-100"), [.. LiftCrew]);
    }

    private static async Task OutFromUnder(Workshop shop)
    {
        var watched = await shop.Delays.Watch([new(shop.Runa.Bay, $"#task-{StoryShop.Plover}-{Under}", Gone: true)]);
        var answer = await shop.Runa.SignOff(StoryShop.Plover, Under);
        await Workshop.Done(answer, shop.Runa.Bay.Page, "out from under");
        await watched.Shown("signed off", answer.At);
        await Expect(shop.Wall.Page.Locator("#floor-words-bay-2")).Not.ToContainTextAsync("Person under the car");
    }

    private static async Task<Domain.Plans.PlanTask> ReadLift(Workshop shop)
    {
        var task = shop.TaskOf("raise-100");
        foreach (var need in task.Readings) await shop.Read(shop.Inga, task, need, Numbers.InLimits(need));
        return task;
    }
}

using System.Globalization;
using JobBoard.EndToEnd.Browsers;
using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;
using JobBoard.EndToEnd.Servers;
using Microsoft.Playwright;

namespace JobBoard.EndToEnd.WhenReady;

/// <summary>
/// 500 tasks in When ready with the browser's processor slowed four times: how long frames take while the picture is panned
/// and sized. The times are printed, not judged; that the picture moved and that frames were drawn is.
/// </summary>
public class FrameTests(Chromium chromium, ITestOutputHelper output)
{
    private const string Watch = """
        () => {
          window.frames500 = [];
          let last = performance.now();
          const next = (at) => { window.frames500.push(at - last); last = at; window.frames500on = requestAnimationFrame(next); };
          window.frames500on = requestAnimationFrame(next);
        }
        """;

    private const string Place = "f => f.scrollLeft + f.scrollTop";

    [Fact]
    public async Task Frames_of_500_tasks_on_a_slow_processor()
    {
        var browser = await chromium.Browser();
        using var folder = new ShopFolder();
        await LargeShop.Make(folder.Path);
        await using var server = await Server.Serve(folder.Path);
        await using var device = await Device.Open(browser, server.Url, Size.Desk, new Traffic(), new Dictionary<string, string> { ["ada"] = LargeShop.Pin });
        var page = await device.Page("/sign-in");
        await device.SignIn(page, "ada");
        await page.GotoAsync("/cars/heron/when-ready");
        await page.Locator("#ready-frame").ScrollIntoViewIfNeededAsync();
        Assert.Equal(LargeShop.Tasks, await page.Locator(".ready-step").CountAsync());
        var box = (await page.Locator("#ready-frame").BoundingBoxAsync())!;
        var slow = await page.Context.NewCDPSessionAsync(page);
        await slow.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = 4 });

        await Measured(page, "wheel, panned sideways", () => Wheel(page, box, 120, ctrl: false), Place);
        await Measured(page, "mouse, dragged", () => Drag(page, box), Place);
        await Measured(page, "ctrl and wheel, made smaller", () => Wheel(page, box, 15, ctrl: true), "f => document.querySelector('#ready-svg').getBoundingClientRect().width");
        await Measured(page, "wheel, panned at that size", () => Wheel(page, box, 120, ctrl: false), Place);
        await Measured(page, "ctrl and wheel, made larger", () => Wheel(page, box, -40, ctrl: true), "f => document.querySelector('#ready-svg').getBoundingClientRect().width");
    }

    private async Task Measured(IPage page, string what, Func<Task> act, string place)
    {
        var frame = page.Locator("#ready-frame");
        var before = await frame.EvaluateAsync<double>(place);
        await page.EvaluateAsync(Watch);
        await act();
        await page.WaitForTimeoutAsync(400);
        var times = await page.EvaluateAsync<double[]>("() => { cancelAnimationFrame(window.frames500on); return window.frames500; }");
        Assert.NotEqual(before, await frame.EvaluateAsync<double>(place));
        Assert.True(times.Length > 0, $"{what}: no frame was drawn.");
        Array.Sort(times);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{what}: {times.Length} frames, median {At(times, 0.5):0} ms, p95 {At(times, 0.95):0} ms, longest {times[^1]:0} ms"));
    }

    private static double At(double[] sorted, double share) => sorted[(int)(share * (sorted.Length - 1))];

    private static async Task Wheel(IPage page, LocatorBoundingBoxResult box, float by, bool ctrl)
    {
        await page.Mouse.MoveAsync(box.X + (box.Width / 2), box.Y + (box.Height / 2));
        if (ctrl) await page.Keyboard.DownAsync("Control");
        for (var i = 0; i < 30; i++)
        {
            await page.Mouse.WheelAsync(ctrl ? 0 : by, ctrl ? by : by / 2);
            await page.WaitForTimeoutAsync(16);
        }

        if (ctrl) await page.Keyboard.UpAsync("Control");
    }

    private static async Task Drag(IPage page, LocatorBoundingBoxResult box)
    {
        await page.Mouse.MoveAsync(box.X + box.Width - 60, box.Y + (box.Height / 2));
        await page.Mouse.DownAsync();
        for (var i = 1; i <= 30; i++)
        {
            await page.Mouse.MoveAsync(box.X + box.Width - 60 - (i * 30), box.Y + (box.Height / 2));
            await page.WaitForTimeoutAsync(16);
        }

        await page.Mouse.UpAsync();
    }
}

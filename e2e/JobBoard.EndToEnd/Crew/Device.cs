using System.Text.Json;
using JobBoard.EndToEnd.Screens;
using Microsoft.Playwright;

namespace JobBoard.EndToEnd.Crew;

/// <summary>How big a device is, and whether it is touched.</summary>
internal sealed record Size(string Name, int Width, int Height, bool Touch)
{
    public static Size Phone { get; } = new("phone", 412, 915, true);

    public static Size Tablet { get; } = new("tablet", 820, 1180, true);

    public static Size Desk { get; } = new("desk", 1440, 900, false);

    public static Size Wall { get; } = new("wall", 1920, 1080, false);
}

/// <summary>A phone, tablet or desk with one person signed in: what is tapped and typed on it.</summary>
internal sealed class Device : IAsyncDisposable
{
    private readonly Traffic _traffic;
    private readonly IReadOnlyDictionary<string, string> _pins;
    private readonly Size _size;
    private IPage? _front;

    private Device(IBrowserContext context, Size size, Traffic traffic, IReadOnlyDictionary<string, string> pins) =>
        (Context, _size, _traffic, _pins) = (context, size, traffic, pins);

    /// <summary>The browser of this device.</summary>
    public IBrowserContext Context { get; }

    /// <summary>Who is signed in.</summary>
    public string Person { get; private set; } = "";

    /// <summary>A device that nobody has signed in on, with its screens watched.</summary>
    public static async Task<Device> Open(IBrowser browser, Uri url, Size size, Traffic traffic, IReadOnlyDictionary<string, string> pins)
    {
        traffic.Allow(url);
        var context = await browser.NewContextAsync(new()
        {
            BaseURL = url.ToString(),
            ViewportSize = new() { Width = size.Width, Height = size.Height },
            HasTouch = size.Touch,
            IsMobile = size.Touch,
            Locale = "en-GB",
            ReducedMotion = ReducedMotion.Reduce,
        });
        await context.AddInitScriptAsync(Eyes.Script);
        traffic.ListenTo(context);
        return new(context, size, traffic, pins);
    }

    /// <summary>Opens a page in a tab of its own.</summary>
    public async Task<IPage> Page(string path)
    {
        var page = await Tab();
        await page.GotoAsync(path);
        return page;
    }

    /// <summary>Opens an empty tab.</summary>
    public async Task<IPage> Tab() => _front = await Context.NewPageAsync();

    /// <summary>Signs a person in on a page, by name and PIN; also when somebody else is signed in.</summary>
    public async Task SignIn(IPage page, string person, string back = "/bay")
    {
        await page.GotoAsync("/sign-in?back=" + back);
        await Tap(page.Locator($".people a[href*='person={person}&']"));
        if (_size.Touch) foreach (var digit in _pins[person]) await Tap(page.Locator($".pin-keys button:text-is('{digit}')"));
        else await page.FillAsync("#pin", _pins[person]);
        await Tap(page.Locator(".pin-form button[type=submit]"));
        await page.WaitForURLAsync("**" + back);
        Person = person;
    }

    /// <summary>One tap, on the tab that is looked at: a tab behind another is drawn once a second.</summary>
    public async Task Tap(ILocator what)
    {
        if (_front != what.Page) await what.Page.BringToFrontAsync();
        _front = what.Page;
        await (_size.Touch ? what.TapAsync() : what.ClickAsync());
    }

    /// <summary>Opens a fold or a form that is folded away, when it is not open.</summary>
    public async Task Unfold(ILocator details)
    {
        if (await details.GetAttributeAsync("open") is null) await Tap(details.Locator(":scope > summary"));
    }

    /// <summary>Chooses a radio button or ticks a box by its label.</summary>
    public Task Choose(ILocator input) => Tap(input.Locator("xpath=.."));

    /// <summary>Taps the button of a form and waits for the answer; a PIN that is asked for is typed.</summary>
    public async Task<Answer> Send(ILocator form, ILocator? button = null)
    {
        var page = form.Page;
        var id = await form.GetAttributeAsync("id") ?? "";
        var (outcome, at) = await Sent(page, button ?? form.Locator(":scope > button"));
        if (outcome != "pin") return new(outcome, at, id);
        await form.Locator(".answer input[name=pin]").FillAsync(_pins[Person]);
        (outcome, at) = await Sent(page, form.Locator(".answer button"));
        return new(outcome, at, id, AskedPin: true);
    }

    /// <summary>Taps the button of a form at an agreed moment, as several people do in the same one.</summary>
    public async Task<Answer> SendAt(DateTimeOffset moment, ILocator form)
    {
        var (outcome, at) = await Sent(form.Page, () => form.Locator(":scope > button").EvaluateAsync("(b, at) => void setTimeout(() => b.click(), at - Date.now())", moment.ToUnixTimeMilliseconds()));
        return new(outcome, at, "");
    }

    /// <summary>Taps the button of a form without a line to the board: nothing can answer.</summary>
    public async Task SendIntoTheVoid(ILocator form)
    {
        _traffic.Tapped();
        await Tap(form.Locator(":scope > button"));
    }

    private Task<(string Outcome, double At)> Sent(IPage page, ILocator button) => Sent(page, () => Tap(button));

    private async Task<(string Outcome, double At)> Sent(IPage page, Func<Task> tap)
    {
        _traffic.Tapped();
        var response = await page.RunAndWaitForResponseAsync(tap, r => r.Request.Method == "POST" && new Uri(r.Url).AbsolutePath.StartsWith("/do/", StringComparison.Ordinal));
        var said = JsonDocument.Parse(await response.TextAsync()).RootElement;
        return (said.GetProperty("outcome").GetString()!, await page.EvaluateAsync<double>("() => jobboardEyes.posted"));
    }

    public async ValueTask DisposeAsync() => await Context.CloseAsync();
}

using System.Collections.Immutable;
using System.Diagnostics;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;
using JobBoard.EndToEnd.Servers;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace JobBoard.EndToEnd.Story;

/// <summary>The demo's shop with a car of its own to be taken in: everybody at their devices.</summary>
internal sealed class WholeShop : IAsyncDisposable
{
    private static readonly ImmutableArray<string> Leads = ["inga", "sol", "noor", "tove"];

    private readonly Stack<IAsyncDisposable> _opened = new();
    private readonly Stopwatch _since = Stopwatch.StartNew();
    private readonly Action<string> _say;
    private readonly Dictionary<string, ImmutableArray<string>> _crews = new(StringComparer.Ordinal);
    private readonly OwnServer _server;
    private CrewBook _book = default!;
    private ImmutableArray<Hands> _hands = [];
    private Desk _oskar = default!;
    private Desk _marit = default!;
    private IPage _look = default!;
    private IBrowser _browser = default!;
    private int _turn;

    private WholeShop(OwnServer server, Action<string> say) => (_server, _say) = (server, say);

    /// <summary>The plan of the car.</summary>
    public Plan Plan { get; } = Seeds.MidEngine;

    /// <summary>The car's id, once it is taken in.</summary>
    public string Car { get; private set; } = "";

    /// <summary>Every request of the browsers.</summary>
    public Traffic Traffic { get; } = new();

    /// <summary>How many devices there are.</summary>
    public int Devices => _opened.OfType<Device>().Count();

    /// <summary>The foreman's holds.</summary>
    public Screen Holds => _oskar.Holds;

    /// <summary>The customer's page, open on a phone of their own since the car was taken in.</summary>
    public IPage Customer { get; private set; } = default!;

    /// <summary>Opens it all.</summary>
    public static async Task<WholeShop> Open(IBrowser browser, Action<string> say)
    {
        var shop = new WholeShop(await OwnServer.Start(), say);
        try
        {
            await shop.Open(browser);
            return shop;
        }
        catch
        {
            await shop.DisposeAsync();
            throw;
        }
    }

    private async Task Open(IBrowser browser)
    {
        (_book, _browser) = (new(_server.Runner.State), browser);
        _oskar = await DeskOf(await Device(browser, Size.Desk), "oskar");
        _marit = await DeskOf(await Device(browser, Size.Desk), "marit");
        _hands = [await HandsOf(browser, "inga", Size.Phone), await HandsOf(browser, "sol", Size.Tablet), await HandsOf(browser, "noor", Size.Phone), await HandsOf(browser, "tove", Size.Tablet), await HandsOf(browser, "runa", Size.Phone)];
        await (await Device(browser, Size.Wall)).Page("/wall/" + _server.Wall);
        _look = await _oskar.Device.Tab();
        foreach (var hands in _hands) await SayIn(hands);
        foreach (var person in new[] { "jarle", "bela", "petra" })
        {
            await Shared.ChangeTo(person);
            await SayIn(Shared);
        }

        Say("everybody is in");
    }

    private Hands Shared => _hands[3];

    private async Task<Device> Device(IBrowser browser, Size size)
    {
        var device = await Crew.Device.Open(browser, _server.Url, size, Traffic, Seeds.Demo.Pins);
        _opened.Push(device);
        return device;
    }

    private static async Task<Desk> DeskOf(Device device, string person)
    {
        var holds = await device.Tab();
        await device.SignIn(holds, person, "/holds");
        return new(device, holds);
    }

    private async Task<Hands> HandsOf(IBrowser browser, string person, Size size)
    {
        var device = await Device(browser, size);
        var bay = await device.Tab();
        await device.SignIn(bay, person);
        return new(device, bay, await device.Tab(), [.. _server.Runner.State.Instruments.Values]);
    }

    private static async Task SayIn(Hands hands)
    {
        if (await hands.InBay("#form-say-in").CountAsync() > 0) await Done(await hands.Device.Send(hands.InBay("#form-say-in")), hands.InBay("#form-say-in"), $"{hands.Person} is in");
    }

    /// <summary>The foreman takes the car in, from a template.</summary>
    public async Task TakeIn()
    {
        await _look.GotoAsync("/cars/new");
        await _look.FillAsync("#name", "Curlew coupe");
        await _look.SelectOptionAsync("#place", "bay-1");
        await _look.SelectOptionAsync("#template", new SelectOptionValue { Value = Plan.Id });
        Traffic.Tapped();
        await _oskar.Device.Tap(_look.Locator("main form button.main"));
        await _look.WaitForURLAsync("**/cars/curlew-coupe");
        Car = "curlew-coupe";
        await Expect(_look.Locator("h1")).ToHaveTextAsync("Curlew coupe");
        Say("taken in");
    }

    /// <summary>The foreman makes a link to the customer's page, and the customer opens it.</summary>
    public async Task LetTheCustomerLook()
    {
        await _look.GotoAsync($"/cars/{Car}/customer");
        await _oskar.Device.Unfold(_look.Locator("#ask-link"));
        await _look.FillAsync("#link-label", "By letter");
        await _oskar.Device.Tap(_look.Locator("#form-link button"));
        Customer = await (await Device(_browser, Size.Phone)).Page(new Uri(await _look.InputValueAsync("#new-link")).AbsolutePath);
        await Expect(Customer.Locator("#customer-car")).ToHaveTextAsync("Your Curlew coupe");
    }

    /// <summary>Everything arrives and is checked right.</summary>
    public async Task PartsOntoTheShelf()
    {
        await _look.GotoAsync("/parts");
        foreach (var part in Plan.Parts)
        {
            var key = $"{Car}-{part.Id}";
            await _oskar.Device.Unfold(_look.Locator("#part-" + key));
            await _oskar.Device.Unfold(_look.Locator("#ask-arrived-" + key));
            await _look.FillAsync("#shelf-" + key, "shelf C");
            await Done(await _oskar.Device.Send(_look.Locator("#form-arrived-" + key)), _look.Locator("#form-arrived-" + key), part.Name + " arrived");
            await Done(await _oskar.Device.Send(_look.Locator("#form-right-" + key)), _look.Locator("#form-right-" + key), part.Name + " right");
        }

        Say($"{Plan.Parts.Length} parts on the shelf");
    }

    /// <summary>Does a task from start to second check, by taps of its crew.</summary>
    public async Task Do(PlanTask task)
    {
        await MayStart(task);
        var crew = _book.For(task, Leads.Select((_, i) => Leads[(i + _turn) % Leads.Length]));
        _turn++;
        _crews[task.Id] = crew;
        var lead = await With(crew[0]);
        var form = await lead.ToStart(Car, task.Id, crew);
        await Done(await lead.Device.Send(form), form, $"{crew[0]} starts {task.Name}");
        foreach (var need in task.Readings)
        {
            var key = $"#form-reading-{Car}-{task.Id}-{need.Id}";
            await Done(await lead.Read(Car, task.Id, need, Numbers.InLimits(need), lead.Person == "jarle" ? "petra" : "jarle"), lead.InBay(key), need.Name);
        }

        await Done(await lead.SignOff(Car, task.Id), lead.InBay($"#form-end-{Car}-{task.Id}-sign"), $"{task.Name} signed off");
        foreach (var hazard in task.Hazards.Where(h => _server.Runner.State.Hazards[h.Hazard].Ends == Domain.Hazards.HazardEnd.WhenMadeSafe))
            await Done(await _oskar.MakeSafe(Car, $"{task.Id}/{hazard.Hazard}"), _oskar.InHolds("main"), $"{task.Name} made safe");
        if (task.SecondCheck) await Check(task);
        Say($"{task.Name}: {string.Join(", ", crew)}");
    }

    /// <summary>Where only time stands between the task and its start, the shop's clock goes on.</summary>
    private async Task MayStart(PlanTask task)
    {
        for (var again = 0; again < 3; again++)
        {
            var state = _server.Runner.State;
            var waiting = StartCheck.Of(new(state, state.Cars[Car], task, _server.Runner.Now, RuleBook.Full, Domain.Places.ShopHours.Of(state)), new());
            if (waiting.Select(w => w.When).OfType<DateTimeOffset>().Where(w => w > _server.Runner.Now).Order().LastOrDefault() is not { Ticks: > 0 } when) return;
            _server.GoOnAt(when);
            Say($"the clock goes on to {_server.Runner.Now:ddd HH:mm} for {task.Name}");
            await Task.Delay(300);
        }
    }

    private async Task<Hands> With(string person)
    {
        if (_hands.FirstOrDefault(h => h.Person == person) is { } own) return own;
        await Shared.ChangeTo(person);
        return Shared;
    }

    private async Task Check(PlanTask task)
    {
        var by = _hands.FirstOrDefault(h => !_crews[task.Id].Contains(h.Person) && _book.Is(h.Person, task.SecondCheckQualification) && h != Shared);
        if (by is null) await Again(() => _marit.Check(Car, task.Id), _marit.InHolds($"#form-check-{Car}-{task.Id}"), $"second check of {task.Name}");
        else await Again(() => by.Check(Car, task.Id), by.InBay($"#form-check-{Car}-{task.Id}"), $"second check of {task.Name}");
    }

    /// <summary>Releases a hold point from the foreman's desk, after its call where it has one.</summary>
    public async Task Release(HoldPoint hold)
    {
        await Again(() => _oskar.Release($"{Car}-{hold.Id}", "Seen: " + hold.Asks, "looked at with the crew"), _oskar.InHolds($"#form-release-{Car}-{hold.Id}"), $"release of {hold.Name}");
        Say($"released: {hold.Name}");
    }

    /// <summary>Extraction on, then the call: everybody who is in, tapped by the foreman as they call it out.</summary>
    public async Task KeyCheck()
    {
        await _look.GotoAsync("/people-and-places");
        await _oskar.Device.Unfold(_look.Locator("#ask-item-extraction"));
        await _look.FillAsync("#item-why-extraction", "before an engine runs indoors");
        await Done(await _oskar.Device.Send(_look.Locator("#form-item-extraction")), _look.Locator("#form-item-extraction"), "extraction on");
        await _look.GotoAsync($"/cars/{Car}/key-check");
        while (await _look.Locator("form[id^=call-go-]").CountAsync() > 0)
        {
            var id = await _look.Locator("form[id^=call-go-]").First.GetAttributeAsync("id");
            await Done(await _oskar.Device.Send(_look.Locator("#" + id)), _look.Locator("#" + id), "go");
            await Expect(_look.Locator("#" + id)).ToHaveCountAsync(0);
        }
    }

    /// <summary>Somebody finds something to put right.</summary>
    public async Task RaiseSnag(string words)
    {
        await _look.GotoAsync("/snags");
        await _oskar.Device.Unfold(_look.Locator("#ask-snag-" + Car));
        await _look.FillAsync("#snag-words-" + Car, words);
        await Done(await _oskar.Device.Send(_look.Locator("#form-snag-" + Car)), _look.Locator("#form-snag-" + Car), "snag");
    }

    /// <summary>It is put right.</summary>
    public async Task PutSnagRight()
    {
        var ask = _look.Locator($"details[id^=ask-done-{Car}-]").First;
        await _oskar.Device.Unfold(ask);
        await ask.Locator("input[name=how]").FillAsync("polished out");
        await Done(await _oskar.Device.Send(ask.Locator("form")), ask, "snag put right");
    }

    /// <summary>A page of the car on the foreman's desk.</summary>
    public async Task<IPage> Look(string path)
    {
        await _look.GotoAsync($"/cars/{Car}{path}");
        return _look;
    }

    /// <summary>Says how far the story is.</summary>
    public void Say(string words) => _say($"{_since.Elapsed.TotalSeconds,6:0.0} s  {words}");

    /// <summary>Whoever is told that it changed since they looked, looks again and says it again.</summary>
    private static async Task Again(Func<Task<Answer>> say, ILocator form, string what)
    {
        var answer = await say();
        if (answer.Outcome == "stale" || (answer.Outcome == "refused" && (await form.InnerTextAsync()).Contains("Changed since you looked", StringComparison.Ordinal))) answer = await say();
        await Done(answer, form, what);
    }

    private static async Task Done(Answer answer, ILocator form, string what)
    {
        if (!answer.IsDone) Assert.Fail($"{what}: {answer.Outcome}: {await form.InnerTextAsync()}");
    }

    /// <summary>Closes all, the last opened first.</summary>
    public async ValueTask DisposeAsync()
    {
        while (_opened.TryPop(out var last)) await last.DisposeAsync();
        await _server.DisposeAsync();
    }
}

using System.Collections.Immutable;
using System.Diagnostics;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;
using JobBoard.EndToEnd.Servers;
using Microsoft.Playwright;

namespace JobBoard.EndToEnd.Story;

/// <summary>
/// The shop of the story: a real server, five technicians' phones and tablets, the foreman's desk and the owner's, and the
/// wall, each a browser of its own.
/// </summary>
internal sealed partial class Workshop : IAsyncDisposable
{
    /// <summary>The car of the story.</summary>
    public const string Car = StoryShop.Heron;

    private readonly Stack<IAsyncDisposable> _opened = new();
    private readonly ShopFolder _folder = new();
    private readonly Stopwatch _since = Stopwatch.StartNew();
    private readonly Action<string> _say;

    private Workshop(Action<string> say) => _say = say;

    /// <summary>The plan of the car when it was taken in.</summary>
    public Plan Plan { get; } = Seeds.MidEngine;

    /// <summary>The car before the story.</summary>
    public CarBoard Before { get; private set; } = default!;

    /// <summary>Who can do what.</summary>
    public CrewBook Crews { get; private set; } = default!;

    /// <summary>Every request of the browsers.</summary>
    public Traffic Traffic { get; } = new();

    /// <summary>How long changes took to show.</summary>
    public Delays Delays { get; } = new();

    /// <summary>The script for what the story leaves out.</summary>
    public Script Script { get; private set; } = default!;

    /// <summary>The line of the second tablet, which can be cut.</summary>
    public Line Line { get; private set; } = default!;

    /// <summary>Inga's phone.</summary>
    public Hands Inga { get; private set; } = default!;

    /// <summary>Sol's tablet.</summary>
    public Hands Sol { get; private set; } = default!;

    /// <summary>Noor's phone.</summary>
    public Hands Noor { get; private set; } = default!;

    /// <summary>The shared tablet, Tove's at first.</summary>
    public Hands Tablet { get; private set; } = default!;

    /// <summary>Runa's phone, at the other car.</summary>
    public Hands Runa { get; private set; } = default!;

    /// <summary>The foreman's desk; his PIN was typed a quarter of an hour ago.</summary>
    public Desk Oskar { get; private set; } = default!;

    /// <summary>The owner's desk.</summary>
    public Desk Marit { get; private set; } = default!;

    /// <summary>The wall.</summary>
    public Screen Wall { get; private set; } = default!;

    /// <summary>All technicians' devices.</summary>
    public IEnumerable<Hands> Everybody => [Inga, Sol, Noor, Tablet, Runa];

    /// <summary>Opens it all.</summary>
    public static async Task<Workshop> Open(IBrowser browser, Action<string> say)
    {
        var shop = new Workshop(say);
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
        var made = await StoryShop.Make(_folder.Path);
        Say($"the past of two cars is made: {made.State.Seq} entries");
        (Crews, Before) = (new(made.State), made.State.Cars[Car]);
        var url = new Uri($"http://127.0.0.1:{Ports.Free()}/");
        var desk = await SignInEarlier(browser, url, made);
        _opened.Push(await Server.Serve(_folder.Path, url.ToString()));
        Line = new(url);
        _opened.Push(Line);
        var door = new FormDoor(url, made.Pins);
        Script = new(door, made.State, Crews, Car);
        Oskar = new(desk, await desk.Page("/holds"), await desk.Page("/cars/" + Car));
        Marit = await OwnersDesk(await Device(browser, url, Size.Desk, made));
        Wall = new(await (await Device(browser, url, Size.Wall, made)).Page("/wall/" + made.Wall), "the wall");
        await HandOut(browser, url, made);
        Say("everybody is signed in");
    }

    private async Task<Device> SignInEarlier(IBrowser browser, Uri url, StoryShop made)
    {
        await using var earlier = await EarlierServer.Start(_folder.Path, url.Port);
        var desk = await Device(browser, url, Size.Desk, made);
        var page = await desk.Tab();
        await desk.SignIn(page, "oskar", "/parts");
        await page.CloseAsync();
        return desk;
    }

    private async Task<Device> Device(IBrowser browser, Uri url, Size size, StoryShop made)
    {
        var device = await Crew.Device.Open(browser, url, size, Traffic, made.Pins);
        lock (_opened) _opened.Push(device);
        return device;
    }

    private static async Task<Desk> OwnersDesk(Device device)
    {
        var holds = await device.Tab();
        await device.SignIn(holds, "marit", "/holds");
        return new(device, holds);
    }

    private async Task HandOut(IBrowser browser, Uri url, StoryShop made)
    {
        var all = await Task.WhenAll(
            Hands("inga", url, Size.Phone), Hands("sol", url, Size.Tablet), Hands("noor", url, Size.Phone), Hands("tove", Line.Url, Size.Tablet), Hands("runa", url, Size.Phone));
        (Inga, Sol, Noor, Tablet, Runa) = (all[0], all[1], all[2], all[3], all[4]);

        async Task<Hands> Hands(string person, Uri at, Size size)
        {
            var device = await Device(browser, at, size, made);
            var bay = await device.Tab();
            await device.SignIn(bay, person);
            return new(device, bay, await device.Tab(), [.. made.State.Instruments.Values]);
        }
    }

    /// <summary>Says how far the story is.</summary>
    public void Say(string words) => _say($"{_since.Elapsed.TotalSeconds,6:0.0} s  {words}");

    /// <summary>Closes all, the last opened first.</summary>
    public async ValueTask DisposeAsync()
    {
        while (_opened.TryPop(out var last)) await last.DisposeAsync();
        _folder.Dispose();
    }
}

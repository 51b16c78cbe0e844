using JobBoard.Domain.Commands;
using JobBoard.Shop.Running;
using Microsoft.Extensions.Time.Testing;

namespace JobBoard.Shop.Tests.Running;

/// <summary>Time alone raises the same bare signal.</summary>
public class PulseTests
{
    [Fact]
    public async Task Signals_when_the_next_change_comes()
    {
        await using var shop = await LiveShop.Start();
        var system = new FakeTimeProvider();
        using var pulse = new Pulse(shop.Runner, (_, now) => now.AddSeconds(7), system);
        var signals = 0;
        shop.Runner.HeadMoved += () => signals++;

        system.Advance(Pulse.Settle);
        system.Advance(TimeSpan.FromSeconds(6));
        Assert.Equal(0, signals);
        system.Advance(TimeSpan.FromSeconds(1));

        Assert.Equal(1, signals);
    }

    [Fact]
    public async Task Signals_every_half_minute_at_least()
    {
        await using var shop = await LiveShop.Start();
        var system = new FakeTimeProvider();
        using var pulse = new Pulse(shop.Runner, (_, _) => null, system);
        var signals = 0;
        shop.Runner.HeadMoved += () => signals++;

        for (var i = 0; i < 2; i++)
        {
            system.Advance(Pulse.Settle);
            system.Advance(Pulse.Longest);
        }

        Assert.Equal(2, signals);
    }

    [Fact]
    public async Task The_writer_does_not_look_for_the_next_change()
    {
        await using var shop = await LiveShop.Start();
        var looked = 0;
        using var pulse = new Pulse(shop.Runner, (_, _) => { looked++; return null; }, new FakeTimeProvider());

        await shop.Does("ada", new GoOut("ada"));

        Assert.Equal(0, looked);
    }

    [Fact]
    public async Task What_fell_due_since_the_last_picture_is_not_lost()
    {
        await using var shop = await LiveShop.Start();
        var system = new FakeTimeProvider();
        var due = shop.Runner.Now.AddMilliseconds(10);
        using var pulse = new Pulse(shop.Runner, (_, since) => since < due ? due : null, system);
        var signals = 0;
        shop.Runner.HeadMoved += () => signals++;

        shop.Clock.Advance(TimeSpan.FromSeconds(1));
        system.Advance(Pulse.Settle);
        system.Advance(TimeSpan.FromSeconds(1));

        Assert.Equal(1, signals);
    }

    [Fact]
    public async Task An_entry_sets_the_timer_anew()
    {
        await using var shop = await LiveShop.Start();
        var system = new FakeTimeProvider();
        var next = TimeSpan.FromSeconds(20);
        using var pulse = new Pulse(shop.Runner, (_, now) => now + next, system);
        var signals = 0;

        next = TimeSpan.FromSeconds(3);
        await shop.Does("ada", new GoOut("ada"));
        shop.Runner.HeadMoved += () => Interlocked.Increment(ref signals);
        await shop.Does("ada", new ComeIn("ada"));
        Assert.Equal(1, Volatile.Read(ref signals));
        system.Advance(Pulse.Settle);
        system.Advance(next);

        Assert.Equal(2, Volatile.Read(ref signals));
    }
}

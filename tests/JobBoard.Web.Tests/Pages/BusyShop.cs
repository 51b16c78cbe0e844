using JobBoard.Domain.Commands;
using JobBoard.Domain.Holds;

namespace JobBoard.Web.Tests.Pages;

/// <summary>A shop to look at: work in hand, a stop, a snag, a note, a reading that is out.</summary>
public sealed class BusyShop : IAsyncLifetime
{
    internal Server Server { get; private set; } = default!;

    public async ValueTask InitializeAsync()
    {
        Server = await Workshop.Closing();
        await Server.Does("inga", new LogReading("fall", "80", "kPa") { Car = Workshop.Car, Task = "close-line" });
        await Server.Does("sol", new RaiseStop(StopScope.Car, "smell of fuel") { Car = Workshop.Car });
        await Server.Does("sol", new RaiseSnag("rattle", "rattle at the rear shelf") { Car = Workshop.Car });
        await Server.Does("sol", new WriteNote("line looks old") { Car = Workshop.Car, Task = "close-line" });
    }

    public ValueTask DisposeAsync() => Server.DisposeAsync();
}

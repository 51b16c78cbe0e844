using JobBoard.EndToEnd.Screens;
using Microsoft.Playwright;

namespace JobBoard.EndToEnd.Crew;

/// <summary>A foreman's or owner's desk: the holds, and the foreman's also one car, open all the time.</summary>
internal sealed class Desk(Device device, IPage holds, IPage? car = null)
{
    /// <summary>The device.</summary>
    public Device Device => device;

    /// <summary>The holds.</summary>
    public Screen Holds { get; } = new(holds, "holds");

    /// <summary>The page of the car.</summary>
    public Screen Car => new(car ?? throw new InvalidOperationException("No car is open on this desk."), "car");

    /// <summary>An element of the holds.</summary>
    public ILocator InHolds(string selector) => holds.Locator(selector);

    /// <summary>An element of the car's page.</summary>
    public ILocator InCar(string selector) => Car.Page.Locator(selector);

    /// <summary>Releases a hold point or a stop by its key, with why and on what evidence.</summary>
    public async Task<Answer> Release(string key, string why, string evidence)
    {
        await device.Unfold(holds.Locator($"#release-{key}"));
        await holds.Locator($"#why-{key}").FillAsync(why);
        await holds.Locator($"#evidence-{key}").FillAsync(evidence);
        return await device.Send(holds.Locator($"#form-release-{key}"));
    }

    /// <summary>Gives a second check on the holds.</summary>
    public async Task<Answer> Check(string carId, string task)
    {
        var form = holds.Locator($"#form-check-{carId}-{task}");
        await device.Choose(form.Locator("input[name=passed][value=true]"));
        await form.Locator("textarea").FillAsync("looked at every bolt and its paint");
        return await device.Send(form);
    }

    /// <summary>Says that a danger was made safe.</summary>
    public async Task<Answer> MakeSafe(string carId, string hazard)
    {
        var key = $"{carId}-{hazard.Replace('/', '-')}";
        await device.Unfold(holds.Locator($"#hazard-safe-{key}"));
        await holds.Locator($"#hazard-how-{key}").FillAsync("Pressure let down into the can, gauge at nought, joints wiped");
        return await device.Send(holds.Locator($"#form-hazard-safe-{key}"));
    }
}

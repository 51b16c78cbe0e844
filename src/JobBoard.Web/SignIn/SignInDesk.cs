using JobBoard.Shop.Running;
using Microsoft.AspNetCore.Authentication;

namespace JobBoard.Web.SignIn;

/// <summary>Where a person gives their PIN: to sign in, and again for what asks for it.</summary>
public sealed class SignInDesk(PinBook pins, DevicePatience patience, ShopRunner runner, TimeProvider clock)
{
    /// <summary>A PIN given longer ago is asked for again at a release, second check or key check.</summary>
    public static readonly TimeSpan FreshFor = TimeSpan.FromMinutes(5);

    /// <summary>Whether the PIN was typed recently enough for what asks for it.</summary>
    public bool IsFresh(PersonViewer viewer) => clock.GetUtcNow() - viewer.PinAt <= FreshFor;

    /// <summary>Signs a person in with their PIN; a wrong one slows the device down.</summary>
    /// <returns>What to say when it did not work, or nothing.</returns>
    public async Task<string?> SignIn(HttpContext http, string person, string? pin)
    {
        if (patience.SecondsToWait(http) is > 0 and var seconds) return $"Too many wrong PINs on this device. Wait {seconds} s, then try again.";
        var known = runner.State.People.TryGetValue(person, out var found) && !found.Left;
        if (!pins.IsRight(person, pin ?? "") || !known)
        {
            patience.CountWrong(http);
            return "That is not the PIN. Try again.";
        }

        patience.Clear(http);
        await http.SignInAsync(Viewers.Scheme, Viewers.ForPerson(person, clock.GetUtcNow(), pins.Mark(person)!)).ConfigureAwait(false);
        return null;
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Running;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.First;

/// <summary>Makes the owner of a new shop, with the one-time code from the console.</summary>
[AllowAnonymous]
public sealed class FirstModel(FirstRun first, ShopRunner runner, PinBook pins, SignInDesk desk, DevicePatience patience) : PageModel
{
    private static readonly DayOfWeek[] WeekDays = [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday];
    private readonly Dictionary<string, string> _faults = new(StringComparer.Ordinal);

    /// <summary>IANA zones of this machine.</summary>
    public static ImmutableArray<string> Zones { get; } =
        [.. TimeZoneInfo.GetSystemTimeZones().Where(z => z.HasIanaId).Select(z => z.Id).Order(StringComparer.Ordinal)];

    /// <summary>Whether the shop has its name already.</summary>
    public bool HasShop => runner.State.Name.Length > 0;

    /// <summary>What was typed in a field.</summary>
    public string Typed(string field) =>
        Request.HasFormContentType ? Request.Form[field].ToString().Trim() : field == "zone" && TimeZoneInfo.Local.HasIanaId ? TimeZoneInfo.Local.Id : "";

    /// <summary>What is wrong with a field, or nothing.</summary>
    public string? Fault(string field) => _faults.GetValueOrDefault(field);

    /// <summary>Shows the form while it is needed.</summary>
    public IActionResult OnGet() => first.IsNeeded ? Page() : Redirect("/");

    /// <summary>Makes the owner and signs them in.</summary>
    public async Task<IActionResult> OnPostAsync()
    {
        if (!first.IsNeeded) return Redirect("/");
        Check();
        if (_faults.Count == 0 && await Make() is { } owner)
        {
            pins.Set(owner, Typed("pin"));
            await desk.SignIn(HttpContext, owner, Typed("pin"));
            return Redirect("/welcome");
        }

        Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        return Page();
    }

    private void Check()
    {
        if (patience.SecondsToWait(HttpContext) is > 0 and var seconds) _faults["code"] = $"Too many wrong codes from this device. Wait {seconds} s.";
        else if (!first.IsCode(Typed("code"))) WrongCode();
        if (!HasShop && Typed("shop").Length == 0) _faults["shop"] = "Type what the shop is called.";
        if (!HasShop && !TimeZoneInfo.TryFindSystemTimeZoneById(Typed("zone"), out _)) _faults["zone"] = "Choose a zone of the list, such as Europe/London.";
        if (Typed("name").Length == 0) _faults["name"] = "Type your name.";
        if (PinBook.Fault(Typed("pin")) is { } fault) _faults["pin"] = fault;
        else if (Typed("pin") != Typed("again")) _faults["again"] = "The two PINs differ. Type the same one twice.";
    }

    private void WrongCode()
    {
        patience.CountWrong(HttpContext);
        _faults["code"] = "That is not the code. It stands on the console where the server was started.";
    }

    // An owner who is in the day book already and lost their PIN is found by name; else a new person is made.
    private async Task<string?> Make()
    {
        var shop = runner.State;
        if (shop.People.Values.FirstOrDefault(p => p is { Left: false, Position: Position.Owner } && p.Name == Typed("name")) is { } known) return known.Id;
        var id = PersonIds.For(Typed("name"), shop);
        var done = await Send(id, new SetPerson(id, Typed("name"), Position.Owner));
        if (done && !HasShop) done = await Send(id, new SetShop(Typed("shop"), Typed("zone"), Week, []));
        return done ? id : null;
    }

    private async Task<bool> Send(string actor, Command command)
    {
        var outcome = await runner.Send(new Envelope(Guid.CreateVersion7(), actor, runner.Now, null, command));
        if (outcome is Outcome.Refused refused) _faults[""] = string.Join(" ", refused.Reasons.Select(r => runner.State.Say(r.Words)));
        if (outcome is Outcome.Unavailable none) _faults[""] = none.Words;
        return outcome is Outcome.Accepted;
    }

    private static ImmutableArray<OpenHours> Week => [.. WeekDays.Select(d => new OpenHours(d, new TimeOnly(8, 0), new TimeOnly(17, 0)))];
}

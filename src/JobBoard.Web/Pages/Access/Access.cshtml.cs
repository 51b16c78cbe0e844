using System.Collections.Immutable;
using JobBoard.Domain.People;
using JobBoard.Shop.Running;
using JobBoard.Storage.SignIn;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Paper;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Access;

/// <summary>Where the owner gives out PINs and wall links.</summary>
[Authorize(Policies.Owner)]
public sealed class AccessModel(ShopRunner runner, PinBook pins, WallLinks walls, Viewers viewers, SignInDesk desk, EveningPaper paper) : PageModel
{
    private (string Person, string Words)? _fault;

    /// <summary>Everybody of the shop, and whether they have a PIN.</summary>
    public ImmutableArray<(Person Person, bool HasPin)> People { get; private set; } = [];

    /// <summary>Wall links that stand, with their screens.</summary>
    public ImmutableArray<(TokenRow Link, WallScreen Screen)> Walls { get; private set; } = [];

    /// <summary>What is wrong with the screen typed for a link (nothing: for a new one), or nothing.</summary>
    public (string? Link, string Words)? ScreenFault { get; private set; }

    /// <summary>What was typed for a new link.</summary>
    public (string? Label, string? Metres, string? Inches) Typed { get; private set; } = (null, "4", "65");

    /// <summary>The link just made, shown once.</summary>
    public string? NewWallLink { get; private set; }

    /// <summary>The sheets that are written every evening.</summary>
    public EveningPaper Paper => paper;

    /// <summary>The bar.</summary>
    public TopBarView TopBar => new() { Where = runner.State.Name, Person = viewers.PersonOf(User)?.Person.Name, Here = "/access" };

    /// <summary>What is wrong with the PIN typed for a person, or nothing.</summary>
    public string? FaultOf(string person) => _fault is { } fault && fault.Person == person ? fault.Words : null;

    /// <summary>Shows what there is.</summary>
    public void OnGet() => Prepare();

    /// <summary>Gives a person a PIN; the owner who gives themselves one stays signed in.</summary>
    public async Task<IActionResult> OnPostPinAsync(string? person, string? pin)
    {
        var known = person is not null && runner.State.People.ContainsKey(person);
        if (!known) return NotFound("There is no such person.");
        if (PinBook.Fault(pin) is { } fault)
        {
            _fault = (person!, fault);
            Prepare();
            return Page();
        }

        pins.Set(person!, pin!);
        if (viewers.PersonOf(User)?.Id == person) await desk.SignIn(HttpContext, person!, pin);
        return RedirectToPage();
    }

    /// <summary>Makes a wall link.</summary>
    public IActionResult OnPostWall(string? label, string? metres, string? inches)
    {
        var (screen, fault) = WallLinks.Read(metres, inches);
        if (screen is null)
            (ScreenFault, Typed) = ((null, fault!), (label, metres, inches));
        else
            NewWallLink = $"{Request.Scheme}://{Request.Host}/wall/{walls.Make(string.IsNullOrWhiteSpace(label) ? "wall" : label.Trim(), screen)}";

        Prepare();
        return Page();
    }

    /// <summary>Says how far a wall's screen is looked at from and how large it is.</summary>
    public IActionResult OnPostScreen(string? id, string? metres, string? inches)
    {
        var (screen, fault) = WallLinks.Read(metres, inches);
        if (screen is not null) return id is not null && walls.Set(id, screen) ? RedirectToPage() : NotFound("There is no such wall link.");
        ScreenFault = (id, fault!);
        Prepare();
        return Page();
    }

    /// <summary>Withdraws a wall link.</summary>
    public IActionResult OnPostWithdraw(string? id)
    {
        if (id is not null) walls.Withdraw(id);
        return RedirectToPage();
    }

    private void Prepare()
    {
        var withPin = pins.People.ToHashSet(StringComparer.Ordinal);
        People = [.. runner.State.People.Values.Where(p => !p.Left).OrderBy(p => p.Name, StringComparer.CurrentCulture).Select(p => (p, withPin.Contains(p.Id)))];
        Walls = [.. walls.All.Where(t => walls.Stands(t.Id)).Select(t => (t, walls.ScreenOf(t.Id)))];
    }
}

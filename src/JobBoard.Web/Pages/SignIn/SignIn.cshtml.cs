using JobBoard.Domain.People;
using JobBoard.Shop.Running;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.SignIn;

/// <summary>Pick your name, type your PIN. The same page changes the person on a shared tablet.</summary>
[AllowAnonymous]
public sealed class SignInModel(ShopRunner runner, PinBook pins, SignInDesk desk, Viewers viewers) : PageModel
{
    /// <summary>People who can sign in, by name.</summary>
    public IReadOnlyList<Person> People { get; private set; } = [];

    /// <summary>Whose PIN is asked, or nothing while the name is to be picked.</summary>
    public Person? Chosen { get; private set; }

    /// <summary>What was wrong with the PIN, or nothing.</summary>
    public string? Wrong { get; private set; }

    /// <summary>Where to go then.</summary>
    public string Back { get; private set; } = "/";

    /// <summary>Who is signed in now, or nothing.</summary>
    public string? SignedIn { get; private set; }

    /// <summary>The shop's name.</summary>
    public string ShopName { get; private set; } = "";

    /// <summary>Shows the names, or the PIN of one.</summary>
    public void OnGet(string? person, string? back) => Prepare(person, back);

    /// <summary>Signs in.</summary>
    public async Task<IActionResult> OnPostAsync(string? person, string? pin, string? back)
    {
        Prepare(person, back);
        if (Chosen is null) return Page();
        Wrong = await desk.SignIn(HttpContext, Chosen.Id, pin);
        if (Wrong is null) return LocalRedirect(Back);
        Response.StatusCode = StatusCodes.Status401Unauthorized;
        return Page();
    }

    /// <summary>Signs out.</summary>
    public async Task<IActionResult> OnPostOutAsync()
    {
        await HttpContext.SignOutAsync(Viewers.Scheme);
        return Redirect("/sign-in");
    }

    private void Prepare(string? person, string? back)
    {
        var shop = runner.State;
        ShopName = shop.Name.Length == 0 ? "Job Board" : shop.Name;
        People = [.. pins.People.Select(id => shop.People.GetValueOrDefault(id)).OfType<Person>().Where(p => !p.Left)
            .OrderBy(p => p.Name, StringComparer.CurrentCulture)];
        Chosen = People.FirstOrDefault(p => p.Id == person);
        Back = Url.IsLocalUrl(back) ? back! : "/";
        SignedIn = viewers.PersonOf(User)?.Person.Name;
    }
}

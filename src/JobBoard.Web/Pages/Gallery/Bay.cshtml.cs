using JobBoard.Web.Pages.Bay;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Gallery;

/// <summary>The bay screen with invented data.</summary>
[DevelopmentOnly]
[AllowAnonymous]
public sealed class BayModel : PageModel
{
    /// <summary>light, dark, or nothing for the system's wish.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Theme { get; set; }

    /// <summary>What to show.</summary>
    public BayView View { get; private set; } = BaySamples.Usual;

    /// <summary>Shows the sample of this name.</summary>
    public void OnGet(string? name) => View = BaySamples.Named(name);
}

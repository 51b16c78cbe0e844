using JobBoard.Web.Pages.Bay;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Gallery;

/// <summary>The bay screen with invented data.</summary>
[DevelopmentOnly]
public sealed class BayModel : PageModel
{
    /// <summary>light, dark, or nothing for the system's wish.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Theme { get; set; }

    /// <summary>What to show.</summary>
    public BayView View { get; private set; } = BaySamples.Usual;

    /// <summary>What has not been sent.</summary>
    public IReadOnlyList<BayNotSent> NotSent { get; private set; } = [];

    /// <summary>Shows the sample of this name.</summary>
    public void OnGet(string? name) => (View, NotSent) = (BaySamples.Named(name), BaySamples.NotSent(name));
}

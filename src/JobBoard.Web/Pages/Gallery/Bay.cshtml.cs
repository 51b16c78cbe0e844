using JobBoard.Web.Live;
using JobBoard.Web.Pages.Bay;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Gallery;

/// <summary>The bay screen with invented data, or as it stands now for the person whose id is the name.</summary>
[DevelopmentOnly]
[AllowAnonymous]
public sealed class BayModel(Fragments fragments) : PageModel
{
    /// <summary>light, dark, or nothing for the system's wish.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Theme { get; set; }

    /// <summary>What to show.</summary>
    public BayView View { get; private set; } = BaySamples.Usual;

    /// <summary>Shows the sample of this name.</summary>
    public void OnGet(string? name)
    {
        var picture = fragments.Picture();
        View = name is not null && picture.Shop.People.ContainsKey(name) ? BayMapping.Of(picture, name) : BaySamples.Named(name);
    }
}

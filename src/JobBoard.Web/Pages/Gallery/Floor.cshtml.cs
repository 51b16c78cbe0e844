using JobBoard.Web.Live;
using JobBoard.Web.Pages.Floor;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Gallery;

/// <summary>The wall with invented data, or as the shop stands now under the name <c>now</c>.</summary>
[DevelopmentOnly]
[AllowAnonymous]
public sealed class FloorModel(Fragments fragments) : PageModel
{
    /// <summary>light, dark, or nothing for the system's wish.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Theme { get; set; }

    /// <summary>What to show.</summary>
    public FloorView View { get; private set; } = FloorSamples.Usual;

    /// <summary>Shows the sample of this name.</summary>
    public void OnGet(string? name) => View = name == "now" ? FloorMapping.Of(fragments.Picture()) : FloorSamples.Named(name);
}

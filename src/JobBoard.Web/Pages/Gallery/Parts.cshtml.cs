using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Gallery;

/// <summary>Every part and mark on one page.</summary>
[DevelopmentOnly]
[AllowAnonymous]
public sealed class PartsModel : PageModel
{
    /// <summary>light, dark, or nothing for the system's wish.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Theme { get; set; }
}

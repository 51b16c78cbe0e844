using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Html;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.PeopleAndPlaces.Change;

/// <summary>Where the owner sets one thing of the shop: a new one, or one there is.</summary>
[Authorize(Policies.Owner)]
public sealed class ChangeModel(ShopRunner runner, Viewers viewers, Fragments fragments, Markup markup) : PageModel
{
    /// <summary>The form.</summary>
    public ChangeForm Form { get; private set; } = default!;

    /// <summary>The bar.</summary>
    public TopBarView TopBar => new() { Where = runner.State.Name, Person = viewers.PersonOf(User)?.Person.Name, Here = "/people-and-places" };

    /// <summary>Shows the form.</summary>
    public IActionResult OnGet(string what, string? id)
    {
        if (ChangeForms.Of(fragments.Picture(), what, id) is not { } form) return NotFound();
        Form = form;
        return Page();
    }

    /// <summary>The form, ready for this reader.</summary>
    public async Task<IHtmlContent> Render() =>
        new HtmlString(fragments.Sealed(HttpContext, await markup.Render(Form.Component, Form.Parameters), runner.State.Seq));
}

using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Html;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.PeopleAndPlaces.FloorPlan;

/// <summary>Where the owner lays out the places and the sweeps of the gear on a metre grid.</summary>
[Authorize(Policies.Owner)]
public sealed class FloorPlanModel(ShopRunner runner, Viewers viewers, Fragments fragments, Markup markup) : PageModel
{
    /// <summary>The bar.</summary>
    public TopBarView TopBar => new() { Where = runner.State.Name, Person = viewers.PersonOf(User)?.Person.Name, Here = "/people-and-places" };

    /// <summary>The map with its forms, ready for this reader.</summary>
    public async Task<IHtmlContent> Render()
    {
        var shop = runner.State;
        var html = await markup.Render(typeof(FloorPlanBoard), new Dictionary<string, object?> { ["View"] = FloorPlanView.Of(shop) });
        return new HtmlString(fragments.Sealed(HttpContext, html, shop.Seq));
    }
}

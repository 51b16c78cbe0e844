using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Floor;

/// <summary>What is going on and what is stuck, for everybody in the shop and on the wall.</summary>
[Authorize(Policies.Look)]
public sealed class FloorModel(Fragments fragments, Viewers viewers) : PageModel
{
    /// <summary>Renders what is live.</summary>
    public Fragments Fragments => fragments;

    /// <summary>The wall link that is looked through, or nothing for a person.</summary>
    public string? Wall => (viewers.Of(User) as WallViewer)?.TokenId;

    /// <summary>The bar for a person; a wall has none.</summary>
    public TopBarView? TopBar => viewers.PersonOf(User) is { } viewer
        ? new() { Where = fragments.Picture().Shop.Name, Person = viewer.Person.Name, Here = "/floor" }
        : null;
}

using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Parts;

/// <summary>The parts of all cars: how far each is, what it holds up, when it is needed.</summary>
public sealed class PartsModel(ShopRunner runner, Viewers viewers, Fragments fragments) : PageModel
{
    /// <summary>The live parts.</summary>
    public Fragments Fragments => fragments;

    /// <summary>Who looks.</summary>
    public string Me => viewers.PersonOf(User)!.Id;

    /// <summary>The bar.</summary>
    public TopBarView TopBar => new() { Where = runner.State.Name, Person = viewers.PersonOf(User)?.Person.Name, Here = "/parts" };
}

using JobBoard.Domain.Commands;
using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Cars;

/// <summary>All cars in the shop: where, how far, when.</summary>
public sealed class CarsModel(ShopRunner runner, Viewers viewers, Fragments fragments) : PageModel
{
    /// <summary>The live parts.</summary>
    public Fragments Fragments => fragments;

    /// <summary>Whether this person takes cars in.</summary>
    public bool MayTakeIn => MayPost.May<TakeInCar>(viewers.PersonOf(User)!.Person.Position);

    /// <summary>The bar.</summary>
    public TopBarView TopBar => new() { Where = runner.State.Name, Person = viewers.PersonOf(User)?.Person.Name, Here = "/cars" };
}

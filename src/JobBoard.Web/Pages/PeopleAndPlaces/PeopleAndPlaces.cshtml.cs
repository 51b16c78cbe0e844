using JobBoard.Domain.Plans;
using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Pages.Welcome;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>Who is in and can do what; hours, places, gear, instruments, and what is kept apart.</summary>
public sealed class PeopleAndPlacesModel(ShopRunner runner, PinBook pins, Viewers viewers, Fragments fragments) : PageModel
{
    /// <summary>The live parts.</summary>
    public Fragments Fragments => fragments;

    /// <summary>Who looks.</summary>
    public string Me => viewers.PersonOf(User)!.Id;

    /// <summary>How many steps of setting the shop up are open; none for anybody but the owner.</summary>
    public int IsMissing => viewers.PersonOf(User)!.Person.Position == Position.Owner ? WelcomeMapping.Steps(runner.State, pins.People).Count(s => !s.IsDone) : 0;

    /// <summary>The bar.</summary>
    public TopBarView TopBar => new() { Where = runner.State.Name, Person = viewers.PersonOf(User)?.Person.Name, Here = "/people-and-places" };
}

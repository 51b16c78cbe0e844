using JobBoard.Domain.Boards;
using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Html;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Cars.Readings;

/// <summary>What was and is to be measured on a car, by where it is.</summary>
public sealed class ReadingsModel(ShopRunner runner, Viewers viewers, Fragments fragments) : PageModel
{
    /// <summary>The car.</summary>
    public CarBoard Board { get; private set; } = default!;

    /// <summary>The bar.</summary>
    public TopBarView TopBar => TopBarView.OfCar(Board, viewers.PersonOf(User)?.Person, "/readings");

    /// <summary>Shows them.</summary>
    public IActionResult OnGet(string id)
    {
        if (!runner.State.Cars.TryGetValue(id, out var car)) return NotFound("There is no such car in this shop.");
        Board = car;
        return Page();
    }

    /// <summary>The readings, for people of this reader's position.</summary>
    public Task<IHtmlContent> Show() =>
        fragments.Show(HttpContext, "car-measured", Audience.OfCar(Board.Id, viewers.PersonOf(User)!.Person.Position));
}

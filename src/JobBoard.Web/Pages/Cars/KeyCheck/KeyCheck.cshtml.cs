using JobBoard.Domain.Boards;
using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Html;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Cars.KeyCheck;

/// <summary>The go / no-go before the engine of a car is first turned under its own power.</summary>
public sealed class KeyCheckModel(ShopRunner runner, Viewers viewers, Fragments fragments) : PageModel
{
    /// <summary>The car.</summary>
    public CarBoard Board { get; private set; } = default!;

    /// <summary>The bar.</summary>
    public TopBarView TopBar => TopBarView.OfCar(Board, viewers.PersonOf(User)?.Person, "/key-check");

    /// <summary>Shows the key check.</summary>
    public IActionResult OnGet(string id)
    {
        if (!runner.State.Cars.TryGetValue(id, out var car)) return NotFound("There is no such car in this shop.");
        if (KeyCheckMapping.HoldOf(car) is null) return NotFound($"The plan of {car.Name} has no key check.");
        Board = car;
        return Page();
    }

    /// <summary>The live part, for this reader.</summary>
    public Task<IHtmlContent> Show() => fragments.Show(HttpContext, "key-check", Audience.OfPerson(viewers.PersonOf(User)!.Id), fragments.Picture(), Board.Id);
}

using JobBoard.Domain.Boards;
using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Html;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Cars.Car;

/// <summary>One car: all its work by stages, its items, parts, snags and notes.</summary>
public sealed class CarModel(ShopRunner runner, Viewers viewers, Fragments fragments) : PageModel
{
    private Picture? _picture;

    /// <summary>The car.</summary>
    public CarBoard Board { get; private set; } = default!;

    /// <summary>The bar.</summary>
    public TopBarView TopBar => TopBarView.OfCar(Board, viewers.PersonOf(User)?.Person, "");

    /// <summary>Shows the car.</summary>
    public IActionResult OnGet(string id)
    {
        if (!runner.State.Cars.TryGetValue(id, out var car)) return NotFound("There is no such car in this shop.");
        (Board, _picture) = (car, fragments.Picture());
        return Page();
    }

    /// <summary>A live part for people of this reader's position.</summary>
    public Task<IHtmlContent> Show(string name, string? subject = null) =>
        fragments.Show(HttpContext, name, Audience.OfCar(Board.Id, viewers.PersonOf(User)!.Person.Position), _picture, subject);

    /// <summary>The snags, for this reader.</summary>
    public Task<IHtmlContent> ShowSnags() =>
        fragments.Show(HttpContext, "car-snags", Audience.OfPerson(viewers.PersonOf(User)!.Id), _picture, Board.Id);
}

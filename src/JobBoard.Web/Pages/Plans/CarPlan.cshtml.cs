using JobBoard.Domain.Boards;
using JobBoard.Shop.Running;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Plans;

/// <summary>The running plan of a car, to be gone over.</summary>
[Authorize(Policies.Foreman)]
public sealed class CarPlanModel(ShopRunner runner, Viewers viewers) : PageModel
{
    /// <summary>The car.</summary>
    public CarBoard Board { get; private set; } = default!;

    /// <summary>What the screen is opened on.</summary>
    public PlanEditorView Editor => new("Plan", "Is this plan sound?", Board.Id, null, "/cars/" + Board.Id);

    /// <summary>The bar.</summary>
    public TopBarView TopBar => TopBarView.OfCar(Board, viewers.PersonOf(User)?.Person, "/plan");

    /// <summary>Shows the screen.</summary>
    public IActionResult OnGet(string id)
    {
        if (!runner.State.Cars.TryGetValue(id, out var car)) return NotFound("There is no such car in this shop.");
        Board = car;
        return Page();
    }
}

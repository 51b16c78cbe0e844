using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Cars.CarTask;

/// <summary>One task of a car with everything about it and every form it has.</summary>
public sealed class CarTaskModel(ShopRunner runner, Viewers viewers, Fragments fragments) : PageModel
{
    /// <summary>The live parts.</summary>
    public Fragments Fragments => fragments;

    /// <summary>Who looks.</summary>
    public string Me => viewers.PersonOf(User)!.Id;

    /// <summary>The car.</summary>
    public CarBoard Board { get; private set; } = default!;

    /// <summary>The task.</summary>
    public PlanTask PlanTask { get; private set; } = default!;

    /// <summary>The bar.</summary>
    public TopBarView TopBar => TopBarView.OfCar(Board, viewers.PersonOf(User)?.Person, "/task");

    /// <summary>Shows the task.</summary>
    public IActionResult OnGet(string id, string task)
    {
        if (!runner.State.Cars.TryGetValue(id, out var car) || PlanIndex.Of(car.Plan).Task(task) is not { } found) return NotFound("There is no such task in the plan of that car.");
        (Board, PlanTask) = (car, found);
        return Page();
    }
}

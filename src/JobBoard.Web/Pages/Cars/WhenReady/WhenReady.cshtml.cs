using JobBoard.Domain.Boards;
using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Html;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Cars.WhenReady;

/// <summary>When a car will be ready, and what decides that.</summary>
public sealed class WhenReadyModel(ShopRunner runner, Viewers viewers, Fragments fragments) : PageModel
{
    private Picture? _picture;

    /// <summary>The car.</summary>
    public CarBoard Board { get; private set; } = default!;

    /// <summary>Whether finished stages are shown task by task.</summary>
    public bool Unfolded { get; private set; }

    /// <summary>How many stages are finished.</summary>
    public int FinishedStages { get; private set; }

    /// <summary>The subject of the picture and the table.</summary>
    public string Subject => Unfolded ? ReadyPictureFragment.Unfolded : ReadyPictureFragment.Folded;

    /// <summary>The same page the other way.</summary>
    public string Other => $"/cars/{Board.Id}/when-ready{(Unfolded ? "" : "?finished=unfolded")}";

    /// <summary>The bar.</summary>
    public TopBarView TopBar => TopBarView.OfCar(Board, viewers.PersonOf(User)?.Person, "/when-ready");

    /// <summary>Shows it.</summary>
    public IActionResult OnGet(string id, string? finished)
    {
        if (!runner.State.Cars.TryGetValue(id, out var car)) return NotFound("There is no such car in this shop.");
        (Board, Unfolded, _picture) = (car, finished == ReadyPictureFragment.Unfolded, fragments.Picture());
        FinishedStages = ReadyUnits.Of(_picture, car, unfolded: false).FinishedStages;
        return Page();
    }

    /// <summary>A live part for people of this reader's position.</summary>
    public Task<IHtmlContent> Show(string name, string? subject = null) =>
        fragments.Show(HttpContext, name, Audience.OfCar(Board.Id, viewers.PersonOf(User)!.Person.Position), _picture, subject);
}

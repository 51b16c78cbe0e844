using JobBoard.Domain.Boards;
using JobBoard.Web.Live;
using JobBoard.Web.Paper;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Cars.Paper;

/// <summary>One car on one printed page.</summary>
public sealed class PaperModel(Viewers viewers, Fragments fragments, EveningPaper evening) : PageModel
{
    /// <summary>The car.</summary>
    public CarBoard Board { get; private set; } = default!;

    /// <summary>The sheet.</summary>
    public PaperView Sheet { get; private set; } = default!;

    /// <summary>The sheets that are written by themselves.</summary>
    public EveningPaper Evening => evening;

    /// <summary>Shows it.</summary>
    public IActionResult OnGet(string id)
    {
        var picture = fragments.Picture();
        if (!picture.Shop.Cars.TryGetValue(id, out var car)) return NotFound("There is no such car in this shop.");
        (Board, Sheet) = (car, CarPaper.Of(picture, car, $"printed by {viewers.PersonOf(User)!.Person.Name}"));
        return Page();
    }
}

using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Rules;
using JobBoard.Shop.Running;
using JobBoard.Shop.Templates;
using JobBoard.Web.Hosting;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Do;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Welcome;

/// <summary>Leads the owner of a new shop from one form to the next until the shop can work.</summary>
[Authorize(Policies.Owner)]
public sealed class WelcomeModel(ShopRunner runner, Viewers viewers, Fragments fragments) : PageModel
{
    /// <summary>The live parts.</summary>
    public Fragments Fragments => fragments;

    /// <summary>Who looks.</summary>
    public string Me => viewers.PersonOf(User)!.Id;

    /// <summary>Why the usual things were not loaded, or nothing.</summary>
    public AnswerView? Answer { get; private set; }

    /// <summary>The bar.</summary>
    public TopBarView TopBar => new() { Where = runner.State.Name, Person = viewers.PersonOf(User)?.Person.Name, Here = "/welcome" };

    /// <summary>Shows what is missing.</summary>
    public void OnGet()
    {
    }

    /// <summary>Loads the usual hazards, things and keep-apart rules; what the shop has already stays as it is.</summary>
    public async Task<IActionResult> OnPostAsync()
    {
        foreach (var (_, command) in UsualThings.Read(Path.Combine(SeedData.Folder, "shop")).Where(t => !Has(runner.State, t.Command)))
        {
            var outcome = await runner.Send(new Envelope(Guid.CreateVersion7(), Me, runner.Now, null, command));
            if (outcome is Outcome.Accepted) continue;
            Answer = AnswerView.Of(Refusal(outcome), runner.State, runner.Now);
            Response.StatusCode = StatusCodes.Status409Conflict;
            return Page();
        }

        return RedirectToPage();
    }

    private static Posted Refusal(Outcome outcome) => outcome switch
    {
        Outcome.Refused refused => new Posted.Refused(refused.Reasons),
        Outcome.Unavailable none => new Posted.NotTaken(503, "unavailable", none.Words),
        _ => new Posted.Refused([new(RuleBook.Ids.Input, "Not all of it could be loaded. Load the page again and repeat it.")]),
    };

    private static bool Has(ShopState shop, Command command) => command switch
    {
        SetHazard c => shop.Hazards.ContainsKey(c.Hazard.Id),
        SetShopItem c => shop.Items.ContainsKey(c.Item.Id),
        SetKeepApart c => shop.KeepApart.ContainsKey(c.Rule.Id),
        _ => false,
    };
}

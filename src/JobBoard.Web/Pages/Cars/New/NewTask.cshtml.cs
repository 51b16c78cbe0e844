using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Bay;
using JobBoard.Web.Pages.Do;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Cars.New;

/// <summary>Adds a task to the plan of a car with its links. It is refused for every fault it would add; what was typed is kept.</summary>
[Authorize(Policies.Foreman), IgnoreAntiforgeryToken]
public sealed class NewTaskModel(ShopRunner runner, CommandDesk desk, Viewers viewers, Fragments fragments) : PageModel
{
    /// <summary>The car.</summary>
    public CarBoard Board { get; private set; } = default!;

    /// <summary>What was typed.</summary>
    [BindProperty]
    public TypedTask Task { get; set; } = new();

    /// <summary>Why it was not done, or nothing.</summary>
    public AnswerView? Answer { get; private set; }

    /// <summary>Kinds of places besides where the car stands.</summary>
    public ImmutableArray<string> PlaceKinds => [.. runner.State.Places.Values.Select(p => p.Kind).Where(k => k != "bay").Distinct().Order(StringComparer.Ordinal)];

    /// <summary>What people of the shop are qualified for.</summary>
    public ImmutableArray<string> Qualifications =>
        [.. runner.State.People.Values.Where(p => !p.Left).SelectMany(p => p.Qualifications).Select(q => q.For).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>Tasks and hold points in the order of the work.</summary>
    public ImmutableArray<BayChoice> Nodes => [.. PlanIndex.Of(Board.Plan).InOrder.Select(n => new BayChoice(n, PlanIndex.Of(Board.Plan).NameOf(n)))];

    /// <summary>The form's seal.</summary>
    public string Seal => fragments.Sealed(HttpContext, FormSeal.Blank, runner.State.Seq);

    /// <summary>The bar.</summary>
    public TopBarView TopBar => TopBarView.OfCar(Board, viewers.PersonOf(User)?.Person, "/plan/new-task");

    /// <summary>Shows the form.</summary>
    public IActionResult OnGet(string id) => Find(id) ? Page() : NotFound("There is no such car in this shop.");

    /// <summary>Adds the task.</summary>
    public async Task<IActionResult> OnPostAsync(string id)
    {
        if (!Find(id)) return NotFound("There is no such car in this shop.");
        var task = NewIds.For(Task.Name ?? "", t => t == "plan" || PlanIndex.Of(Board.Plan).IsNode(t), "task");
        var posted = Task.Fault() is { } fault ? new Posted.Invalid([fault]) : await desk.Send(Task.Change(id, task), HttpContext);
        if (posted is Posted.Done) return Redirect($"/cars/{id}/task/{task}");
        Answer = AnswerView.Of(posted, runner.State, runner.Now);
        Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        return Page();
    }

    private bool Find(string id)
    {
        if (!runner.State.Cars.TryGetValue(id, out var car)) return false;
        Board = car;
        return true;
    }
}

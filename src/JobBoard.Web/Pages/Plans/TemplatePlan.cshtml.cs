using JobBoard.Shop.Running;
using JobBoard.Shop.Templates;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Plans;

/// <summary>A template, or a plan begun from nothing.</summary>
[Authorize(Policies.Foreman)]
public sealed class TemplatePlanModel(ShopRunner runner, TemplateBook templates, Viewers viewers) : PageModel
{
    /// <summary>The address of a plan begun from nothing.</summary>
    public const string New = "new";

    /// <summary>What the screen is opened on.</summary>
    public PlanEditorView Editor { get; private set; } = default!;

    /// <summary>The bar.</summary>
    public TopBarView TopBar => new() { Where = runner.State.Name, Person = viewers.PersonOf(User)?.Person.Name, Here = "/cars" };

    /// <summary>Shows the screen.</summary>
    public IActionResult OnGet(string id)
    {
        var plan = id == New ? null : templates.Find(id);
        if (id != New && plan is null) return NotFound("There is no such template.");
        Editor = plan is null
            ? new("A new plan", "From nothing, kept as a template.", null, null, "/plans")
            : new(plan.Name, "A template.", null, plan.Id, "/plans");
        return Page();
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Running;
using JobBoard.Shop.Templates;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Plans;

/// <summary>All templates.</summary>
[Authorize(Policies.Foreman)]
public sealed class TemplatesModel(ShopRunner runner, TemplateBook templates, Viewers viewers) : PageModel
{
    /// <summary>The templates, by name.</summary>
    public ImmutableArray<Template> Templates => templates.All;

    /// <summary>The bar.</summary>
    public TopBarView TopBar => new() { Where = runner.State.Name, Person = viewers.PersonOf(User)?.Person.Name, Here = "/cars" };

    /// <summary>How many faults a template has in this shop today, in words; empty for none.</summary>
    public string FaultsOf(Template template) => PlanFaults.Find(template.Plan, ShopFacts.Of(runner.State, runner.Now)).Length switch
    {
        0 => "No faults today.",
        1 => "1 fault today.",
        var n => $"{n} faults today.",
    };
}

using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Running;
using JobBoard.Shop.Templates;
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

/// <summary>Takes a car in, with a template or a plan of its own. Faults of the plan are all listed; what was typed is kept.</summary>
[Authorize(Policies.Foreman), IgnoreAntiforgeryToken]
public sealed class NewCarModel(ShopRunner runner, TemplateBook shelf, CommandDesk desk, Viewers viewers, Fragments fragments) : PageModel
{
    /// <summary>The name typed.</summary>
    public string Name { get; private set; } = "";

    /// <summary>What is wrong with the name, or nothing.</summary>
    public string? NameFault { get; private set; }

    /// <summary>The place chosen, or empty.</summary>
    public string Place { get; private set; } = "";

    /// <summary>The template chosen, or empty.</summary>
    public string Template { get; private set; } = "";

    /// <summary>The plan typed or uploaded.</summary>
    public string Text { get; private set; } = "";

    /// <summary>Everything wrong with the plan.</summary>
    public ImmutableArray<PlanFault> Faults { get; private set; } = [];

    /// <summary>Why it was not done, or nothing.</summary>
    public AnswerView? Answer { get; private set; }

    /// <summary>Places where cars stand.</summary>
    public ImmutableArray<BayChoice> Places => [.. runner.State.Places.Values.Where(p => p.Kind == "bay").Select(p => new BayChoice(p.Id, p.Name))];

    /// <summary>The templates.</summary>
    public ImmutableArray<BayChoice> Templates => [.. shelf.All.Select(t => new BayChoice(t.Plan.Id, t.Plan.Name))];

    /// <summary>The form's seal.</summary>
    public string Seal => fragments.Sealed(HttpContext, FormSeal.Blank, runner.State.Seq);

    /// <summary>The bar.</summary>
    public TopBarView TopBar => new() { Where = runner.State.Name, Person = viewers.PersonOf(User)?.Person.Name, Here = "/cars" };

    /// <summary>Shows the form.</summary>
    public void OnGet(string? template) => Template = template is not null && shelf.Find(template) is not null ? template : shelf.All.FirstOrDefault()?.Plan.Id ?? "";

    /// <summary>Takes the car in.</summary>
    public async Task<IActionResult> OnPostAsync(string? name, string? place, string? template, string? text, IFormFile? file)
    {
        (Name, Place, Template) = (name?.Trim() ?? "", place ?? "", template ?? "");
        Text = await TextOf(text, file);
        var id = NewIds.For(Name, Taken, "car");
        if (Name.Length == 0) NameFault = "Give the car a name people can call across the shop.";
        var plan = ReadPlan();
        if (plan is not null && NameFault is null)
        {
            var posted = await desk.Send(new TakeInCar(Name, plan, Place.Length == 0 ? null : Place) { Car = id }, HttpContext);
            if (posted is Posted.Done) return Redirect("/cars/" + id);
            Answer = AnswerView.Of(posted, runner.State, runner.Now);
        }

        Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        return Page();
    }

    // These are addresses of their own below /cars, and the name of the shop's stream.
    private bool Taken(string id) => id is "new" or "shop" || runner.State.Cars.ContainsKey(id);

    private static async Task<string> TextOf(string? typed, IFormFile? file)
    {
        if (file is not { Length: > 0 and <= PlanReader.LongestText + 1 }) return typed ?? "";
        using var reader = new StreamReader(file.OpenReadStream());
        return await reader.ReadToEndAsync();
    }

    private Plan? ReadPlan()
    {
        var reading = Text.Trim().Length > 0 ? PlanReader.Read(Text) : new PlanReading(shelf.Find(Template), []);
        Faults = reading.Plan is { } plan ? PlanFaults.Find(plan, ShopFacts.Of(runner.State, runner.Now)) : reading.Faults;
        if (reading.Plan is null && Faults.IsEmpty) Faults = [new PlanFault("none", "template", "No plan was chosen.", "choose a template, or give a plan of its own")];
        return Faults.IsEmpty ? reading.Plan : null;
    }
}

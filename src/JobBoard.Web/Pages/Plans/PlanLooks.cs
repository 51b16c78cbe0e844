using System.Globalization;
using System.Text.Json;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Plans.Repairs;
using JobBoard.Shop.Dates;
using JobBoard.Shop.Plans;
using JobBoard.Shop.Running;
using JobBoard.Shop.Templates;
using JobBoard.Web.Live;
using JobBoard.Web.Posting;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Antiforgery;

namespace JobBoard.Web.Pages.Plans;

/// <summary>
/// What the plan screen asks while a plan is drawn up: its faults and what it would do, a fault put right, a pasted table, what can no
/// longer be reached, others' changes taken in. Nothing is written by any of it: each takes a plan and gives an answer.
/// </summary>
public sealed class PlanLooks(ShopRunner runner, DateBook dates, TemplateBook templates, Viewers viewers, Markup markup, IAntiforgery antiforgery)
{
    /// <summary>Where a plan begins: that of a car, of a template, or an empty one, with all there is to choose from.</summary>
    public IResult Begin(HttpContext http, string? car, string? template)
    {
        var shop = runner.State;
        if (car is not null) return shop.Cars.TryGetValue(car, out var board) ? Json(PlanBeginning.Of(shop, board, Me(http))) : NotHere("car", "There is no such car in this shop.");
        if (template is null) return Json(PlanBeginning.Of(shop, PlanBeginning.Empty, Me(http)));
        return templates.Find(template) is { } plan ? Json(PlanBeginning.Of(shop, plan, Me(http))) : NotHere("template", "There is no such template.");
    }

    /// <summary>An answer to one question about a plan.</summary>
    public async Task<IResult> Answer(string what, HttpContext http)
    {
        if (!await antiforgery.IsRequestValidAsync(http).ConfigureAwait(false)) return Fault(StatusCodes.Status400BadRequest, "token", "This page is too old to send from. What you typed is kept. Load the page again.");
        var form = await http.Request.ReadFormAsync().ConfigureAwait(false);
        var reading = PlanReader.Read(form["plan"].ToString());
        if (what == "check") return await Check(reading, form, http).ConfigureAwait(false);
        if (reading.Plan is not { } plan) return Unread(reading);
        return what switch
        {
            "mend" => Mend(plan, form),
            "table" => await Table(plan, form).ConfigureAwait(false),
            "reach" => ReachOf(plan, form),
            "merge" => Merge(plan, form),
            _ => NotHere("what", "There is nothing to ask by that name."),
        };
    }

    private async Task<IResult> Check(PlanReading reading, IFormCollection form, HttpContext http)
    {
        var shop = runner.State;
        if (form["car"].ToString() is not { Length: > 0 } id) return await Report(PlanReportView.Of(reading, Facts(shop))).ConfigureAwait(false);
        if (!shop.Cars.TryGetValue(id, out var car)) return NotHere("car", "There is no such car in this shop.");
        if (!long.TryParse(form["of"], NumberStyles.None, CultureInfo.InvariantCulture, out var of)) return Fault(StatusCodes.Status422UnprocessableEntity, "of", "Which plan it was made from is not said. Load the page again.");
        if (reading.Plan is not { } plan) return await Report(PlanReportView.Of(reading, Facts(shop))).ConfigureAwait(false);
        var outlook = PlanOutlook.Of(shop, new RevisePlan(plan, of, "") { Car = id }, Me(http), runner.Now, runner.Rules, dates);
        return await Report(PlanReportView.Of(shop, car, plan, of, outlook, Facts(shop))).ConfigureAwait(false);
    }

    private async Task<IResult> Report(PlanReportView view)
    {
        var html = await markup.Render<PlanReport>(new Dictionary<string, object?> { ["View"] = view }).ConfigureAwait(false);
        return Json(new PlanChecked(view.Faults, view.Sum, view.Ready, view.IsClean, view.IsChanged, view.IsStale, html));
    }

    private IResult Mend(Plan plan, IFormCollection form)
    {
        var facts = Facts(runner.State);
        var (code, at, words) = (form["code"].ToString(), form["at"].ToString(), form["words"].ToString());
        var fault = PlanFaults.Find(plan, facts).FirstOrDefault(f => f.Code == code && f.At == at && f.Words == words);
        var repairs = fault is null ? [] : PlanRepairs.For(plan, fault, facts);
        return int.TryParse(form["number"], NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n < repairs.Length
            ? Json(new PlanMended(repairs[n].Then, repairs[n].Words))
            : Fault(StatusCodes.Status409Conflict, "number", PlanWords.MendGone);
    }

    private async Task<IResult> Table(Plan plan, IFormCollection form)
    {
        var table = PlanTable.Read(form["table"].ToString(), plan, PlanBeginning.DayMinutes(runner.State));
        var html = await markup.Render<PlanTableReport>(new Dictionary<string, object?> { ["Table"] = table }).ConfigureAwait(false);
        return Json(new PlanTableRead(table.Plan, table.Rest, table.Rows.Count(r => r.Faults.IsEmpty), html));
    }

    private IResult ReachOf(Plan plan, IFormCollection form)
    {
        var task = form["task"].ToString();
        if (PlanIndex.Of(plan).Task(task) is null) return Fault(StatusCodes.Status422UnprocessableEntity, "task", $"There is no task '{task}' in the plan.");
        var car = runner.State.Cars.GetValueOrDefault(form["car"].ToString());
        var reached = Reach.Once(plan, task).Where(r => car?.Tasks.GetValueOrDefault(r.Task) is not { Counts: true });
        return Json(new PlanReached([.. reached.Select(r => new PlanReachedLine(r.Task, r.IsBefore, PlanWords.Reached(plan, r)))]));
    }

    private IResult Merge(Plan mine, IFormCollection form)
    {
        if (!runner.State.Cars.TryGetValue(form["car"].ToString(), out var car)) return NotHere("car", "There is no such car in this shop.");
        var origin = PlanReader.Read(form["origin"].ToString());
        if (origin.Plan is null) return Unread(origin);
        var merged = PlanMerge.Of(origin.Plan, mine, car.Plan);
        return Json(new PlanMerged(merged.Plan, car.Plan, car.PlanAt, merged.Both));
    }

    private string Me(HttpContext http) => viewers.PersonOf(http.User)!.Id;

    private ShopFacts Facts(ShopState shop) => ShopFacts.Of(shop, runner.Now);

    private static IResult Unread(PlanReading reading) =>
        Json(new PlanProblems([.. reading.Faults.Select(f => new FieldFault("plan." + f.At, f.Words))]), StatusCodes.Status422UnprocessableEntity);

    private static IResult NotHere(string field, string words) => Fault(StatusCodes.Status404NotFound, field, words);

    private static IResult Fault(int status, string field, string words) => Json(new PlanProblems([new(field, words)]), status);

    private static IResult Json(object value, int status = StatusCodes.Status200OK) =>
        Results.Text(JsonSerializer.Serialize(value, PlanJson.Options), "application/json", statusCode: status);
}

/// <summary>Where the plan screen asks.</summary>
internal static class PlanLooksSetup
{
    public static void MapPlanLooks(this IEndpointRouteBuilder app)
    {
        app.MapGet("/plans/begin", (HttpContext http, PlanLooks looks, string? car, string? template) => looks.Begin(http, car, template)).RequireAuthorization(Policies.Foreman);
        app.MapPost("/plans/look/{what}", (string what, HttpContext http, PlanLooks looks) => looks.Answer(what, http)).RequireAuthorization(Policies.Foreman).DisableAntiforgery();
    }
}

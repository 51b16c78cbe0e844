using System.Collections.Immutable;
using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Posting;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Do;

/// <summary>
/// Where every command form is posted to. Done leads back to where it came from; anything else shows the answer with all that
/// was typed. A script gets the same answer as JSON.
/// </summary>
[AllowAnonymous, IgnoreAntiforgeryToken]
public sealed class DoModel(CommandDesk desk, ShopRunner runner, Markup markup, IAntiforgery antiforgery) : PageModel
{
    private static readonly ImmutableHashSet<string> Targets = ImmutableHashSet.Create(
        StringComparer.Ordinal,
        "car", "task", "item", "hold", "stop", "reading", "part", "snag", "person", "hazard", "commandId", "place", "rule", "passed", "right", "scope", "occurred", "ago", "back");

    /// <summary>The command's kind.</summary>
    public string Kind { get; private set; } = "";

    /// <summary>What became of it.</summary>
    public AnswerView Answer { get; private set; } = new() { Title = "" };

    /// <summary>The seal of the form shown again.</summary>
    public string Seal { get; private set; } = "";

    /// <summary>Everything that was posted.</summary>
    public ImmutableArray<PostedField> Fields { get; private set; } = [];

    /// <summary>Where it came from.</summary>
    public string Back { get; private set; } = "/";

    /// <summary>Whether sending it again can help.</summary>
    public bool CanRepeat { get; private set; }

    /// <summary>There is nothing to look at here.</summary>
    public IActionResult OnGet() => Redirect("/");

    /// <summary>Sends the command.</summary>
    public async Task<IActionResult> OnPostAsync(string kind)
    {
        (Kind, var script) = (kind, Request.Headers.Accept.Contains("application/json"));
        var posted = await desk.Take(kind, HttpContext);
        Answer = AnswerView.Of(posted, runner.State, runner.Now);
        if (script) return await Json(posted);
        var form = await Request.ReadFormAsync();
        Back = BackFrom(form);
        if (posted is Posted.Done) return Redirect(Back);
        Response.StatusCode = posted.Status;
        Seal = FormSeal.Fill(FormSeal.Blank, antiforgery.GetAndStoreTokens(HttpContext).RequestToken, runner.State.Seq);
        CanRepeat = posted is Posted.Refused or Posted.Invalid or Posted.NotTaken { Name: "unavailable" or "signed-out" };
        Fields = [.. form.Where(f => f.Key is not ("command" or "seen" or "pin" or "__RequestVerificationToken"))
            .SelectMany(f => f.Value.Select(v => new PostedField(f.Key, v ?? "", IsTarget(f.Key))))];
        return Page();
    }

    private async Task<JsonResult> Json(Posted posted)
    {
        var html = posted is Posted.Done ? "" : await markup.Render<Answer>(new Dictionary<string, object?> { ["View"] = Answer });
        var faults = posted is Posted.Invalid invalid ? invalid.Faults : [];
        var seq = posted is Posted.Done done ? done.Seq : runner.State.Seq;
        return new JsonResult(new { outcome = posted.Word, seq, html, faults, reasons = Answer.Reasons }) { StatusCode = posted.Status };
    }

    // Ids of things that a form sets, and the weekday of a line of hours, are no more typed than a target is.
    private static bool IsTarget(string field) => Targets.Contains(field) || field.EndsWith(".id", StringComparison.Ordinal) || field.EndsWith("].day", StringComparison.Ordinal);

    private string BackFrom(IFormCollection form)
    {
        var back = form["back"].ToString();
        if (Url.IsLocalUrl(back)) return back;
        return Uri.TryCreate(Request.Headers.Referer, UriKind.Absolute, out var from) && from.Authority == Request.Host.Value ? from.PathAndQuery : "/";
    }
}

/// <summary>A field as it was posted.</summary>
public sealed record PostedField(string Name, string Value, bool Hidden);

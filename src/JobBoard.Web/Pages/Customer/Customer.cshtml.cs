using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Html;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Customer;

/// <summary>
/// A customer's page: whoever holds the link sees it, nothing can be written by it. A link that is unknown, has run out or was
/// withdrawn gives one and the same answer.
/// </summary>
[AllowAnonymous, IgnoreAntiforgeryToken]
public sealed class CustomerModel(CustomerLinks links, Fragments fragments, ShopRunner runner) : PageModel
{
    /// <summary>What is shown; nothing where the link does not work.</summary>
    public IHtmlContent? Fragment { get; private set; }

    /// <summary>The page's title: it says nothing about whose car it is.</summary>
    public string Title => Fragment is null ? "Not here" : "Your car";

    /// <summary>The shop's zone, for the clock; empty where the link does not work.</summary>
    public string Zone => Fragment is null ? "" : runner.State.Zone;

    /// <summary>The day book; empty where the link does not work.</summary>
    public string Journal => Fragment is null ? "" : runner.JournalId.ToString();

    /// <summary>The shop's time now.</summary>
    public string AsOf => ShopTime.Clock(TimeZoneInfo.ConvertTime(runner.Now, ShopZone.Of(runner.State)));

    /// <summary>Nothing but looking is possible.</summary>
    public override void OnPageHandlerExecuting(PageHandlerExecutingContext context)
    {
        var headers = Response.Headers;
        headers["Referrer-Policy"] = "no-referrer";
        headers["X-Robots-Tag"] = "noindex, nofollow";
        headers.CacheControl = "no-store";
        if (HttpMethods.IsGet(Request.Method) || HttpMethods.IsHead(Request.Method)) return;
        headers.Allow = "GET, HEAD";
        context.Result = new ContentResult { StatusCode = StatusCodes.Status405MethodNotAllowed, Content = CustomerWords.ReadOnly, ContentType = "text/plain; charset=utf-8" };
    }

    /// <summary>Shows the page.</summary>
    public async Task OnGetAsync(string token)
    {
        if (links.Find(token) is { } link)
        {
            links.NoteUse(link.Id);
            Fragment = await fragments.ShowReadOnly("page", Audience.OfCustomer(link.Id));
        }
        else
        {
            Response.StatusCode = StatusCodes.Status404NotFound;
        }
    }
}

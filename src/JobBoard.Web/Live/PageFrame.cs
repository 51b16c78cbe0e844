using JobBoard.Shop.Running;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Html;

namespace JobBoard.Web.Live;

/// <summary>What the layout of every page needs to be live: its stamp, its reader and what sounds for them.</summary>
public sealed class PageFrame(ShopRunner runner, ShopClock clock, Viewers viewers, Fragments fragments, IAntiforgery antiforgery)
{
    /// <summary>The day book the page is of.</summary>
    public string Journal => runner.JournalId.ToString();

    /// <summary>The program the page is of.</summary>
    public string Build => LivePublisher.Build;

    /// <summary>The last entry when the page was made.</summary>
    public long Seq => runner.State.Seq;

    /// <summary>The shop's time when the page was made, Unix milliseconds.</summary>
    public long At => runner.Now.ToUnixTimeMilliseconds();

    /// <summary>How many times as fast as a device's the shop's time runs.</summary>
    public int Pace => clock.Pace;

    /// <summary>The shop's zone, for clocks.</summary>
    public string Zone => runner.State.Zone;

    /// <summary><c>person</c>, <c>wall</c> or <c>nobody</c>.</summary>
    public string ViewerWord(HttpContext http) => viewers.Of(http.User) switch
    {
        PersonViewer => "person",
        WallViewer => "wall",
        _ => "nobody",
    };

    /// <summary>The reader's antiforgery token, for forms that were pushed.</summary>
    public string Token(HttpContext http) => antiforgery.GetAndStoreTokens(http).RequestToken ?? "";

    /// <summary>The stops that sound for this reader.</summary>
    public async Task<IHtmlContent> Alarm(HttpContext http) => viewers.Of(http.User) switch
    {
        PersonViewer person => await fragments.Show(http, "alarm", Audience.OfPerson(person.Id)).ConfigureAwait(false),
        WallViewer => await fragments.Show(http, "wall-alarm", Audience.Floor).ConfigureAwait(false),
        _ => HtmlString.Empty,
    };
}

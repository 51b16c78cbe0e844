using System.Collections.Immutable;
using System.Globalization;
using JobBoard.Domain.Boards;
using JobBoard.Shop.Running;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Html;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using QRCoder;

namespace JobBoard.Web.Pages.Cars.ForCustomer;

/// <summary>Where the foreman says what the customer of a car is told and asked, and gives out the links to their page.</summary>
[Authorize(Policies.Foreman)]
public sealed class ForCustomerModel(ShopRunner runner, Viewers viewers, Fragments fragments, CustomerLinks links) : PageModel
{
    private const int UsualDays = 90;
    private const int DaysAfterTheDate = 30;
    private const int MostDays = 365;

    /// <summary>The car.</summary>
    public CarBoard Board { get; private set; } = default!;

    /// <summary>Links that work, the newest first.</summary>
    public ImmutableArray<CustomerLink> Links { get; private set; } = [];

    /// <summary>The link just made, shown once: its address and its QR code as a picture.</summary>
    public (string Address, string Picture)? Made { get; private set; }

    /// <summary>What is wrong, by field.</summary>
    public Dictionary<string, string> Faults { get; } = new(StringComparer.Ordinal);

    /// <summary>What was typed for a new link.</summary>
    public (string? Label, string? Until) Typed { get; private set; }

    /// <summary>The bar.</summary>
    public TopBarView TopBar => TopBarView.OfCar(Board, viewers.PersonOf(User)?.Person, "/customer");

    /// <summary>Shows what there is.</summary>
    public IActionResult OnGet(string id) => Prepare(id) ? Page() : Missing();

    /// <summary>Makes a link.</summary>
    public IActionResult OnPostLink(string id, string? label, string? until)
    {
        if (!Prepare(id)) return Missing();
        Typed = (label, until);
        if (string.IsNullOrWhiteSpace(label) || label.Trim().Length > 60) Faults["label"] = "Say whom it is for, in at most 60 characters.";
        if (ReadEnd(until) is { } end && Faults.Count == 0)
        {
            var address = $"{Request.Scheme}://{Request.Host}/customer/{links.Make(id, label!.Trim(), end)}";
            Prepare(id);
            Made = (address, QrCode(address));
        }

        return Page();
    }

    /// <summary>Withdraws a link.</summary>
    public IActionResult OnPostWithdraw(string id, string? link)
    {
        if (link is not null) links.Withdraw(id, link);
        return RedirectToPage(new { id });
    }

    /// <summary>A live part for people of this reader's position.</summary>
    public Task<IHtmlContent> Show(string name) => fragments.Show(HttpContext, name, Audience.OfCar(Board.Id, viewers.PersonOf(User)!.Person.Position));

    /// <summary>The shop's day of an instant in Unix milliseconds.</summary>
    public string Day(long at) => ShopTime.Day(TimeZoneInfo.ConvertTime(DateTimeOffset.FromUnixTimeMilliseconds(at), Zone));

    private TimeZoneInfo Zone => ShopZone.Of(runner.State);

    private DateOnly Today => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(runner.Now, Zone).Date);

    private NotFoundObjectResult Missing() => NotFound("There is no such car in this shop.");

    private bool Prepare(string id)
    {
        if (!runner.State.Cars.TryGetValue(id, out var car)) return false;
        var usual = Today.AddDays(UsualDays);
        var afterTheDate = car.DateGiven is { } given ? DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(given, Zone).Date).AddDays(DaysAfterTheDate) : usual;
        var latest = Today.AddDays(MostDays);
        var until = afterTheDate > usual ? afterTheDate : usual;
        (Board, Links, Typed) = (car, links.Of(id), (null, (until < latest ? until : latest).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)));
        return true;
    }

    /// <summary>The end of the day typed; nothing, and the fault, where that cannot be.</summary>
    private DateTimeOffset? ReadEnd(string? until)
    {
        if (!DateOnly.TryParseExact(until, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) || day < Today || day > Today.AddDays(MostDays))
        {
            Faults["until"] = $"Give a day from today to {Today.AddDays(MostDays):yyyy-MM-dd}.";
            return null;
        }

        return FieldScalar.Parse($"{day:yyyy-MM-dd}T23:59", Zone);
    }

    private static string QrCode(string address)
    {
        using var data = QRCodeGenerator.GenerateQrCode(address, QRCodeGenerator.ECCLevel.M);
        using var code = new PngByteQRCode(data);
        return "data:image/png;base64," + Convert.ToBase64String(code.GetGraphic(6));
    }
}

using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace JobBoard.Web.Pages.Bay;

/// <summary>What do I do now?</summary>
public sealed class BayModel(Fragments fragments, Viewers viewers) : PageModel
{
    private Picture? _picture;

    /// <summary>Renders what is live.</summary>
    public Fragments Fragments => fragments;

    /// <summary>The picture the whole page is of.</summary>
    public Picture Picture => _picture ??= fragments.Picture();

    /// <summary>Whose bay it is.</summary>
    public PersonViewer Viewer => viewers.PersonOf(User) ?? throw new InvalidOperationException("The bay is a signed-in person's.");

    /// <summary>The bar: where this person works, or the shop.</summary>
    public TopBarView TopBar
    {
        get
        {
            var work = BayMapping.InHand(Picture.Shop, Viewer.Id).FirstOrDefault();
            var place = work.Car is null ? null : BayMapping.Where(Picture.Shop, work.Car, work.State);
            var where = work.Car is null ? Picture.Shop.Name : place is null ? work.Car.Name : $"{place} · {work.Car.Name}";
            return new() { Where = where, Person = Viewer.Person.Name, Here = "/bay" };
        }
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.PeopleAndPlaces.Change;

/// <summary>A form that sets one thing of the shop.</summary>
/// <param name="Title">What the page is called.</param>
/// <param name="Component">The form.</param>
/// <param name="Parameters">What it is made from.</param>
public sealed record ChangeForm(string Title, Type Component, IReadOnlyDictionary<string, object?> Parameters);

/// <summary>The owner's forms by the word in their address.</summary>
public static class ChangeForms
{
    /// <summary>Where every form leads back to.</summary>
    public const string Back = "/people-and-places";

    /// <summary>The words.</summary>
    public static ImmutableArray<string> All { get; } = ["shop", "person", "place", "gear", "instrument", "hazard", "keep-apart", "item"];

    /// <summary>The form for a thing that there is, or for a new one without an id; nothing where there is no such thing.</summary>
    public static ChangeForm? Of(Picture picture, string what, string? id)
    {
        var shop = picture.Shop;
        return what switch
        {
            "shop" => Form<ShopForm>("The shop and its hours", ("Shop", shop)),
            "person" => One<PersonForm, Domain.People.Person>(shop.People, id, "New person", p => p.Name, "Person", ("Shop", shop), ("Zone", picture.Zone)),
            "place" => One<PlaceForm, Domain.Places.Place>(shop.Places, id, "New place", p => p.Name, "Place", ("Kinds", Kinds(shop.Places.Values.Select(p => p.Kind), "bay", "bench", "fuel corner", "store"))),
            "gear" => One<GearForm, Domain.Places.Gear>(shop.Gear, id, "New gear", g => g.Name, "Gear", ("Kinds", Kinds(shop.Gear.Values.Select(g => g.Kind), "hoist", "load beam", "jack")), ("Zone", picture.Zone)),
            "instrument" => One<InstrumentForm, Domain.Places.Instrument>(shop.Instruments, id, "New instrument", i => i.Name, "Instrument", ("Zone", picture.Zone)),
            "hazard" => One<HazardForm, Domain.Hazards.HazardKind>(shop.Hazards, id, "New hazard", h => h.Name, "Hazard"),
            "keep-apart" => One<KeepApartForm, Domain.Hazards.KeepApart>(shop.KeepApart, id, "New keep-apart rule", _ => "a keep-apart rule", "Rule", ("Shop", shop)),
            "item" => One<ShopItemForm, Domain.Places.ShopItem>(shop.Items, id, "New thing of the shop", i => i.Name, "Item", ("Shop", shop)),
            _ => null,
        };
    }

    /// <summary>What people may be qualified for: what anybody is, what plans ask for, and the usual ones.</summary>
    public static ImmutableArray<string> Qualifications(ShopState shop) => Kinds(
        shop.People.Values.SelectMany(p => p.Qualifications).Select(q => q.For)
            .Concat(shop.Cars.Values.SelectMany(c => c.Plan.Tasks).SelectMany(t => t.Crew).Select(c => c.Qualification).OfType<string>()),
        "lifting", "signalling", "fuel", "auto-electric", "welding", "coolant", "inspection");

    private static ChangeForm? One<TForm, TThing>(
        IReadOnlyDictionary<string, TThing> all, string? id, string titleOfNew, Func<TThing, string> name, string parameter, params (string Name, object? Value)[] more)
        where TThing : class
    {
        if (id is null) return Form<TForm>(titleOfNew, more);
        return all.TryGetValue(id, out var thing) ? Form<TForm>($"Change {name(thing)}", [(parameter, thing), .. more]) : null;
    }

    private static ChangeForm Form<TForm>(string title, params (string Name, object? Value)[] parameters) =>
        new(title, typeof(TForm), parameters.ToDictionary(p => p.Name, p => p.Value));

    private static ImmutableArray<string> Kinds(IEnumerable<string> known, params string[] usual) =>
        [.. known.Concat(usual).Distinct().Order(StringComparer.Ordinal)];
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.People;
using JobBoard.Web.Pages.PeopleAndPlaces;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Welcome;

/// <summary>Finds what is still missing for a shop to work.</summary>
public static class WelcomeMapping
{
    private const string Change = "/people-and-places/change/";

    /// <summary>The steps in the order in which they are best done.</summary>
    /// <param name="shop">The shop now.</param>
    /// <param name="withPin">People who have a PIN.</param>
    public static ImmutableArray<WelcomeStep> Steps(ShopState shop, IReadOnlyCollection<string> withPin) =>
        [Hours(shop), Places(shop), People(shop, withPin), Gear(shop), Instruments(shop), KeptApart(shop), FirstCar(shop)];

    private static WelcomeStep Hours(ShopState shop)
    {
        var hours = ShopWords.Hours(shop.Hours);
        var state = hours.IsEmpty ? "No hours are set: the shop counts as always open." : string.Join("; ", hours) + $" ({shop.Zone}).";
        return new("hours", "Hours of the shop", state, !hours.IsEmpty, [new(Change + "shop", hours.IsEmpty ? "Set the hours" : "Change the hours")]);
    }

    private static WelcomeStep Places(ShopState shop)
    {
        var bays = shop.Places.Values.Count(p => p.Kind == "bay");
        var state = bays == 0 ? "A car needs a place of the kind bay to stand in." : shop.Places.Count == bays ? $"{Count(bays, "bay")}." : $"{Count(bays, "bay")}, {Count(shop.Places.Count - bays, "other place")}.";
        return new("places", "Places", state, bays > 0, [new(Change + "place", bays == 0 ? "Set the first place" : "Set another place")]);
    }

    private static WelcomeStep People(ShopState shop, IReadOnlyCollection<string> withPin)
    {
        var people = shop.People.Values.Where(p => !p.Left).ToArray();
        var without = people.Where(p => !p.Outside && !withPin.Contains(p.Id)).Select(p => p.Name).ToArray();
        var links = new[] { new WelcomeLink(Change + "person", people.Length == 1 ? "Set the first person" : "Set another person"), new WelcomeLink("/access", "Give PINs") };
        return new("people", "People with PINs", Words(people, without), people.Length > 1 && without.Length == 0, [.. links]);
    }

    private static string Words(Person[] people, string[] without) => (people.Length, without.Length) switch
    {
        ( <= 1, _) => "Only you are known so far.",
        (var all, 0) => $"{all} people; all but outside specialists have a PIN.",
        _ => $"Without a PIN {ShopTime.Names(without)} cannot sign in.",
    };

    private static WelcomeStep Gear(ShopState shop) => new(
        "gear", "Gear", shop.Gear.IsEmpty ? "Tasks that lift ask for gear with a rated load and an inspection in date." : $"{Count(shop.Gear.Count, "piece")} of gear.",
        !shop.Gear.IsEmpty, [new(Change + "gear", shop.Gear.IsEmpty ? "Set the first gear" : "Set more gear")]);

    private static WelcomeStep Instruments(ShopState shop) => new(
        "instruments", "Instruments", shop.Instruments.IsEmpty ? "A reading counts by its instrument's uncertainty." : $"{Count(shop.Instruments.Count, "instrument")}.",
        !shop.Instruments.IsEmpty, [new(Change + "instrument", shop.Instruments.IsEmpty ? "Set the first instrument" : "Set another instrument")]);

    private static WelcomeStep KeptApart(ShopState shop)
    {
        var isDone = !shop.Hazards.IsEmpty && !shop.KeepApart.IsEmpty;
        var state = isDone
            ? $"{Count(shop.Hazards.Count, "hazard")}, {Count(shop.KeepApart.Count, "keep-apart rule")}. Read them through: they are the shop's own."
            : "Nothing is kept apart yet. Begin with the usual ones, then read them through and make them the shop's own.";
        return new("kept-apart", "Hazards and keep-apart rules", state, isDone, [new("/people-and-places#shop-rules", "Read them")]) { LoadsUsual = !isDone };
    }

    private static WelcomeStep FirstCar(ShopState shop) => new(
        "car", "The first car", shop.Cars.IsEmpty ? "Its plan is a template or one of its own; everything the shop lacks for it is named." : $"{Count(shop.Cars.Count, "car")} taken in.",
        !shop.Cars.IsEmpty, [new("/cars/new", shop.Cars.IsEmpty ? "Take the first car in" : "Take another car in")]);

    private static string Count(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";
}

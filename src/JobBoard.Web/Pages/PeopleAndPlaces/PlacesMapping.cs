using System.Collections.Immutable;
using System.Globalization;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;
using JobBoard.Web.Live;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>Makes hours, places and things of the shop, as one person sees them, from the state of the shop.</summary>
public static class PlacesMapping
{
    /// <summary>The places as of a picture; empty for a reader who is not there.</summary>
    public static PlacesView Of(Picture picture, string personId)
    {
        var shop = picture.Shop;
        if (!shop.People.TryGetValue(personId, out var me)) return new();
        var today = DateOnly.FromDateTime(picture.Now.Date);
        return new()
        {
            Shop = shop.Name,
            Zone = shop.Zone,
            Hours = ShopWords.Hours(shop.Hours),
            Closed = [.. shop.Closed.Where(d => d >= today).Order().Select(ShopWords.Day)],
            Map = ShopMap.Of(shop),
            Places = [.. shop.Places.Values.OrderBy(p => p.Name, StringComparer.InvariantCulture).Select(p => Place(shop, p))],
            Items = [.. shop.Items.Values.Select(i => Item(shop, i))],
            MayChange = MayPost.May<SetPlace>(me.Position),
        };
    }

    private static PlaceLine Place(ShopState shop, Place place)
    {
        var size = string.Create(CultureInfo.InvariantCulture, $"{place.Area.Width:0.##} × {place.Area.Depth:0.##} m");
        var thing = place.Kind == "bay" ? "car" : "task";
        var cars = shop.Cars.Values.Where(c => c.Place == place.Id).Select(c => new PlaceCar(c.Id, c.Name));
        return new(place.Id, place.Name, place.Kind, size, place.Capacity == 1 ? $"one {thing}" : $"up to {place.Capacity} {thing}s", [.. cars], [.. InHand(shop, place.Id)]);
    }

    private static IEnumerable<string> InHand(ShopState shop, string place) =>
        from car in shop.Cars.Values
        from state in car.Tasks.Values
        where state.Status == WorkStatus.InHand && (state.Place ?? car.Place) == place
        select car.Place == place ? PlanIndex.Of(car.Plan).NameOf(state.Id) : $"{PlanIndex.Of(car.Plan).NameOf(state.Id)} for {car.Name}";

    private static ShopItemLine Item(ShopState shop, ShopItem item) => new(
        item.Id, item.Name, item.Condition, item.Conditions.Remove(item.Condition),
        [.. item.Dangers.Select(d => $"while {d.Condition}: {shop.Hazards.GetValueOrDefault(d.Hazard)?.Name ?? d.Hazard}")]);
}

using JobBoard.Domain.Hazards;
using JobBoard.Domain.People;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Cars;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Paper;

/// <summary>The sheet of the shop: who is in, what stands where, stops and dangers.</summary>
public static class ShopPaper
{
    /// <summary>The sheet as of a picture.</summary>
    public static PaperView Of(Picture picture, string by)
    {
        var shop = picture.Shop;
        var staff = shop.People.Values.Where(p => !p.Left).ToArray();
        return new()
        {
            Shop = shop.Name,
            Title = "The shop",
            Under = $"{staff.Count(p => p.IsIn)} in, {shop.Cars.Count} cars",
            Facts = [new("Ask", PaperWords.WhoToAsk(picture))],
            Columns = PaperFit.Columns(
            [
                new("Stops", [.. shop.Stops.Values.Select(s => CarPaper.StopWords(picture, s))]),
                new("Dangers that stand", [.. Dangers.Standing(shop).Where(d => d.Hazard is not null).DistinctBy(d => d.Key).Select(d => Danger(picture, d))]),
                new("Who is in", [.. staff.Where(p => p.IsIn).Select(p => $"{p.Name}: {Doing(picture, p)}")]),
                new("Who is not in", [.. staff.Where(p => !p.IsIn && !p.Outside).Select(p => p.Name)]),
                new("Places", [.. shop.Places.Values.Select(p => $"{p.Name}: {Cars(picture, p.Id)}")]),
                new("Cars", [.. shop.Cars.Values.Select(c => Car(CarSummary.Of(picture, c)))]),
            ]),
            Stamp = PaperWords.Stamp(picture, by),
        };
    }

    private static string Danger(Picture picture, Danger danger)
    {
        var name = picture.Shop.Hazards.GetValueOrDefault(danger.Hazard!)?.Name ?? danger.Hazard;
        var car = danger.Car is { } id ? picture.Shop.Cars.GetValueOrDefault(id)?.Name : null;
        var place = danger.Place is { } at ? picture.Shop.Places.GetValueOrDefault(at)?.Name ?? at : null;
        return string.Join(", ", new[] { name, car ?? "the shop's", place }.OfType<string>());
    }

    private static string Doing(Picture picture, Person person)
    {
        var work = Domain.Work.Crewing.InHand(picture.Shop, person.Id).Select(w => $"{w.Task.Name} on {w.Car.Name}").ToArray();
        return work.Length == 0 ? "nothing in hand" : string.Join(", ", work);
    }

    private static string Cars(Picture picture, string place) =>
        ShopTime.Names([.. picture.Shop.Cars.Values.Where(c => c.Place == place).Select(c => c.Name)]) is { Length: > 0 } names ? names : "no car";

    private static string Car(CarSummary car) => $"{car.Name}: {car.Stage}; earliest ready {car.Ready}";
}

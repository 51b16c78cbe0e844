using JobBoard.Domain.Boards;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>What work still to do asks for and one person alone, or nobody, is qualified for.</summary>
public static class LoneQualifications
{
    /// <summary>All of them, those of nobody first.</summary>
    public static IEnumerable<LoneQualification> Of(Picture picture)
    {
        var asked = picture.Shop.Cars.Values.SelectMany(car => AskedBy(car).Distinct().Select(what => (What: what, Car: car.Name))).ToLookup(a => a.What, a => a.Car);
        var found = from what in asked
                    let able = Able(picture.Shop, what.Key, picture.Now)
                    where able.Length <= 1
                    orderby able.Length, what.Key
                    select Words(picture, what.Key, [.. what], able.FirstOrDefault());
        return found;
    }

    private static IEnumerable<string> AskedBy(CarBoard car)
    {
        foreach (var task in car.Plan.Tasks.Where(t => car.Tasks.GetValueOrDefault(t.Id)?.Status != WorkStatus.SignedOff))
        {
            foreach (var need in task.Crew)
            {
                if (need.Qualification is { } what) yield return what;
            }

            if (task is { SecondCheck: true, SecondCheckQualification: { } check }) yield return check;
        }

        foreach (var hold in car.Plan.Holds.Where(h => car.Holds.GetValueOrDefault(h.Id)?.Released is null))
        {
            if (hold.Qualification is { } what) yield return what;
        }
    }

    // An apprentice works beside somebody and signs nothing off: it does not rest on them.
    private static Person[] Able(ShopState shop, string what, DateTimeOffset now) =>
        [.. shop.People.Values.Where(p => !p.Left && p.Position != Position.Apprentice && p.IsQualified(what, now))];

    private static LoneQualification Words(Picture picture, string what, string[] cars, Person? alone)
    {
        var ask = $"{ShopTime.Names(cars)} {(cars.Length == 1 ? "asks" : "ask")} for it.";
        if (alone is null) return new($"Nobody is qualified for {what}", $"{ask} That work cannot start.");
        var until = alone.Qualifications.Where(q => q.For == what).All(q => q.Until is not null)
            ? alone.Qualifications.Where(q => q.For == what).Max(q => q.Until)
            : null;
        var ends = until is { } at ? $" It runs out on {ShopWords.Day(picture.Local(at))}." : "";
        return new($"{alone.Name} alone is qualified for {what}", $"{ask} While {alone.Name} is away that work waits.{ends}");
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>Makes who is in, as one person sees it, from the state of the shop.</summary>
public static class PeopleMapping
{
    /// <summary>The people as of a picture; empty for a reader who is not there.</summary>
    public static PeopleView Of(Picture picture, string personId)
    {
        if (!picture.Shop.People.TryGetValue(personId, out var me)) return new() { At = picture.Minute };
        var others = picture.Shop.People.Values.Where(p => !p.Left && p.Id != personId)
            .OrderBy(p => p.Name, StringComparer.InvariantCulture).ToLookup(p => p.IsIn, p => Line(picture, p, me));
        return new()
        {
            At = picture.Minute,
            Me = Line(picture, me, me),
            In = [.. others[true]],
            Out = [.. others[false]],
            Lone = [.. LoneQualifications.Of(picture)],
            MayChange = MayPost.May<SetPerson>(me.Position),
        };
    }

    private static PersonLine Line(Picture picture, Person person, Person me) => new()
    {
        Id = person.Id,
        Name = person.Name,
        Position = ShopWords.Of(person, picture.Shop),
        InSince = person.InSince is { } since ? picture.Local(since) : null,
        Qualifications = [.. person.Qualifications.Select(q => Words(picture, q))],
        InHand = [.. InHand(picture, person.Id)],
        Away = [.. person.Absences.Where(a => a.To > picture.Now).OrderBy(a => a.From).Select(a => Words(picture, a))],
        Hours = ShopWords.Hours(person.Hours),
        MaySay = person.Id == me.Id || me.Position >= Position.Foreman,
    };

    private static QualificationWords Words(Picture picture, QualifiedFor q)
    {
        if (q.Until is not { } until) return new(q.For, null, false);
        var over = until <= picture.Now;
        return new(q.For, $"{(over ? "ran out on" : "until")} {ShopWords.Day(picture.Local(until))}", over);
    }

    private static IEnumerable<InHandWords> InHand(Picture picture, string person) =>
        from car in picture.Shop.Cars.Values
        from state in car.Tasks.Values
        where state.Status == WorkStatus.InHand && state.Crew.Any(m => m.Person == person)
        select new InHandWords(car.Id, state.Id, car.Name, PlanIndex.Of(car.Plan).NameOf(state.Id), state.InHandSince is { } since ? picture.Local(since) : null);

    private static string Words(Picture picture, Absence away)
    {
        var when = $"{ShopTime.DayClock(picture.Local(away.From))} to {ShopTime.DayClock(picture.Local(away.To))}";
        return away.Why.Length == 0 ? $"Away {when}" : $"Away {when}: {away.Why}";
    }
}

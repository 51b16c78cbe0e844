using JobBoard.Domain.Boards;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Dates;
using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.Cars.WhenReady;

/// <summary>Parts that are not here yet.</summary>
public static class ReadyParts
{
    /// <summary>The parts a task waits for, with when each is expected: as ordered, or its usual time after now.</summary>
    public static IEnumerable<(Part Part, DateTimeOffset? Expected)> Awaited(CarBoard car, PlanTask task, DateTimeOffset now) =>
        from part in car.Plan.Parts
        where task.Parts.Contains(part.Id) && car.Parts[part.Id].Status is PartStatus.NotOrdered or PartStatus.Ordered
        let state = car.Parts[part.Id]
        select (part, state.Status == PartStatus.NotOrdered ? now.AddDays(part.LeadDays) : state.Expected);

    /// <summary>The dates of a car; where some are not known, as they would be if the parts they rest on came now.</summary>
    public static CarDates AsIfHere(Picture picture, CarBoard car)
    {
        var (dates, here) = (picture.Dates.Of(picture.Shop, car, picture.Now), new WhatIf());
        while (dates.Earliest is null && !dates.RestsOn.All(here.PartsHere.Contains))
        {
            here = here with { PartsHere = here.PartsHere.Union(dates.RestsOn) };
            dates = picture.Dates.If(picture.Shop, car, picture.Now, here);
        }

        return dates;
    }
}

using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Dates;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.Parts;

/// <summary>Makes what the parts show from the state of the shop.</summary>
public static class PartsMapping
{
    /// <summary>The parts of all cars for one person; none for somebody who is not there.</summary>
    public static PartsView OfShop(Picture picture, string personId) => picture.Shop.People.TryGetValue(personId, out var me)
        ? View(picture, picture.Shop.Cars.Values, me.Position) with { NamesCars = true }
        : new() { At = picture.Minute };

    /// <summary>The parts of one car for one position.</summary>
    public static PartsView OfCar(Picture picture, string car, Position position) =>
        View(picture, picture.Shop.Cars.Values.Where(c => c.Id == car), position);

    private static PartsView View(Picture picture, IEnumerable<CarBoard> cars, Position position)
    {
        var parts = cars.SelectMany(c => c.Plan.Parts.Where(p => c.Parts.ContainsKey(p.Id)).Select(p => Line(picture, c, p))).ToLookup(p => p.Status == PartStatus.CheckedRight);
        return new()
        {
            At = picture.Minute,
            Open = [.. parts[false].OrderBy(p => p.DatesRestOnIt ? 0 : 1).ThenBy(p => p.NeededBy ?? DateTimeOffset.MaxValue).ThenBy(p => p.Status)],
            Right = [.. parts[true]],
            MayOrder = MayPost.May<OrderPart>(position),
            MayCheck = MayPost.May<CheckPart>(position),
        };
    }

    private static PartLine Line(Picture picture, CarBoard car, Part part)
    {
        var state = car.Parts[part.Id];
        var dates = picture.Dates.Of(picture.Shop, car, picture.Now);
        var tasks = PlanIndex.Of(car.Plan).InOrder.Select(PlanIndex.Of(car.Plan).Task).OfType<PlanTask>().Where(t => t.Parts.Contains(part.Id) && !car.Tasks[t.Id].Counts).ToArray();
        var neededBy = NeededBy(picture, dates, tasks);
        return new()
        {
            Id = part.Id,
            Name = part.Name,
            CarId = car.Id,
            Car = car.Name,
            Status = state.Status,
            Stands = Stands(picture, part, state),
            Expected = state.Expected is { } expected ? picture.Local(expected) : null,
            Said = state is { By: { } by, At: { } at } ? $"{picture.Shop.NameOf(by)}, {ShopTime.Since(picture.Local(at), picture.Now)}" : null,
            HoldsUp = [.. tasks.Select(t => t.Name)],
            NeededBy = neededBy,
            InHand = InHand(picture, part, state, neededBy),
            DatesRestOnIt = dates.RestsOn.Contains(part.Id),
        };
    }

    private static DateTimeOffset? NeededBy(Picture picture, CarDates dates, PlanTask[] tasks) =>
        tasks.Select(t => dates.Nodes.GetValueOrDefault(t.Id)?.LateStart).Min() is { } at ? picture.Local(at) : null;

    private static string Stands(Picture picture, Part part, PartState state) => state.Status switch
    {
        PartStatus.NotOrdered => part.LeadDays == 0 ? "not ordered, usually in stock" : $"not ordered, usually {part.LeadDays} {(part.LeadDays == 1 ? "day" : "days")}",
        PartStatus.Ordered when state.Expected is null => "ordered, nobody has said when it comes",
        PartStatus.Ordered when state.Expected <= picture.Now => $"overdue, was expected {ShopTime.Since(picture.Local(state.Expected.Value), picture.Now)}",
        PartStatus.Ordered => $"ordered, expected {ShopTime.Since(picture.Local(state.Expected!.Value), picture.Now)}",
        PartStatus.Arrived => $"arrived{(state.Shelf is null ? "" : $", {state.Shelf}")}, to be checked",
        PartStatus.Wrong => $"wrong: {state.Why}",
        _ => $"checked right{(state.Shelf is null ? "" : $", {state.Shelf}")}",
    };

    // Days in hand stand against the time it is expected; for one not ordered yet, against its usual time. One that is here has none.
    private static string? InHand(Picture picture, Part part, PartState state, DateTimeOffset? neededBy) => (state.Status, neededBy, state.Expected) switch
    {
        (PartStatus.Ordered, { } needed, { } expected) => Spare((needed - expected).TotalDays),
        (PartStatus.NotOrdered or PartStatus.Wrong, { } needed, _) when needed.AddDays(-part.LeadDays) is var latest =>
            latest <= picture.Now ? "order now" : $"order by {ShopTime.Day(latest)}",
        _ => null,
    };

    private static string Spare(double days) => days switch
    {
        < 0 => $"moves the date by up to {Days(-days)}",
        < 1 => "less than a day in hand",
        _ => $"{Days(Math.Floor(days))} in hand",
    };

    private static string Days(double days) => Math.Ceiling(days) is var whole && whole == 1 ? "1 day" : $"{whole:0} days";
}

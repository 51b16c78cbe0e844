using JobBoard.Domain.Boards;
using JobBoard.Shop.Dates;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars;

/// <summary>The dates of a car in words.</summary>
public static class CarDateWords
{
    /// <summary>Under every date that is not a forecast.</summary>
    public const string Aside = "earliest possible, people and places aside";

    /// <summary>The earliest date, "done", or what it rests on.</summary>
    public static string Ready(Picture picture, CarBoard car, CarDates dates)
    {
        if (dates.IsDone) return "done: everything is signed off and released";
        if (dates.Earliest is { } at) return PlannedTime.Of(picture.Local(at), picture.Now);
        var parts = dates.RestsOn.Select(p => car.Plan.Parts.FirstOrDefault(x => x.Id == p)?.Name ?? p).ToArray();
        return $"not known, rests on {ShopTime.Names(parts)}";
    }

    /// <summary>Slack of the date given: what is to spare, or by how many shop hours it is missed; nothing without a date given.</summary>
    public static string? Margin(CarBoard car, CarDates dates)
    {
        if (car.DateGiven is not { } given || dates.IsDone) return null;
        var worst = dates.Nodes.Values.Where(n => n.MissesDateGiven).Min(n => n.Slack);
        if (worst is { } slack) return $"cannot be kept as things stand, short by {ShopTime.Span(-slack)} of shop hours";
        return dates.Earliest is { } earliest ? ToSpare(given - earliest) : "not known whether it can be kept";
    }

    private static string ToSpare(TimeSpan spare) => spare switch
    {
        { Ticks: < 0 } => "cannot be kept as things stand",
        { TotalHours: < 1 } => "nothing to spare",
        { TotalDays: < 1 } => $"{(int)spare.TotalHours} h to spare",
        { TotalDays: < 2 } => "1 day to spare",
        _ => $"{(int)spare.TotalDays} days to spare",
    };
}

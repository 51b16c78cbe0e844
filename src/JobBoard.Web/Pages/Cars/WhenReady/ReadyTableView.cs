using System.Collections.Immutable;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars.WhenReady;

/// <summary>The same as the picture, as a table.</summary>
public sealed record ReadyTableView
{
    /// <summary>When this was evaluated, to the minute.</summary>
    public DateTimeOffset At { get; init; }

    /// <summary>One row for each bolt, in order of time.</summary>
    public ImmutableArray<ReadyRow> Rows { get; init; } = [];

    /// <summary>For a car; an empty one when it is gone.</summary>
    public static ReadyTableView Of(Picture picture, string carId, bool unfolded)
    {
        if (!picture.Shop.Cars.TryGetValue(carId, out var car)) return new() { At = picture.Minute };
        var units = ReadyUnits.Of(picture, car, unfolded);
        return new() { At = picture.Minute, Rows = [.. units.All.OrderBy(u => u.Finish).ThenBy(u => u.Start).Select(u => Row(picture, u))] };
    }

    private static ReadyRow Row(Picture picture, ReadyUnit unit) => new(unit, Time(picture, unit, unit.Start), Time(picture, unit, unit.Finish), Slack(unit));

    private static string Time(Picture picture, ReadyUnit unit, DateTimeOffset at)
    {
        if (unit.NotKnown) return "not known";
        return unit.IsDone || at <= picture.Now ? ShopTime.Since(picture.Local(at), picture.Now) : PlannedTime.Of(picture.Local(at), picture.Now);
    }

    private static string Slack(ReadyUnit unit) => unit switch
    {
        { IsDone: true } => "",
        { NotKnown: true } => "not known",
        { OnLine: true } => "sets the date",
        { Slack: { } slack } => PlannedTime.Slack(slack),
        _ => "",
    };
}

/// <summary>A row of the table.</summary>
/// <param name="Unit">What it is of.</param>
/// <param name="From">When it starts or started.</param>
/// <param name="Until">When it ends or ended.</param>
/// <param name="Slack">Its slack in words.</param>
public sealed record ReadyRow(ReadyUnit Unit, string From, string Until, string Slack);

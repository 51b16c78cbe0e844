using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Floor;

/// <summary>What the wall says, in one place.</summary>
public static class FloorTexts
{
    /// <summary>Below the list of cars.</summary>
    public const string EarliestMeans = "people and places aside";

    /// <summary>In the strip of stops.</summary>
    public const string NoEmergencyStop = "A stop here is no emergency stop.";

    /// <summary>In place of the list when there is no car.</summary>
    public const string NoCars = "no car in the shop";

    /// <summary>When the line is down.</summary>
    public const string FeedIsOld = "the feed is old";

    /// <summary>The word beside an octagon.</summary>
    public const string Stop = "stop";

    /// <summary>In a bay without a car.</summary>
    public const string Empty = "empty";

    /// <summary>Below a task past its high estimate.</summary>
    public const string Over = "over its estimate";

    /// <summary>What found no room: +2 more.</summary>
    public static string More(int count) => $"+{count} more";

    /// <summary>Tag with what holds.</summary>
    public static string Held(string words) => $"held: {words}";

    /// <summary>page 1 of 2.</summary>
    public static string Page(int page, int pages) => $"page {page} of {pages}";

    /// <summary>1 h 10 of 3 h.</summary>
    public static string Worked(FloorTask task) => $"{ShopTime.Span(task.SoFar)} of {ShopTime.Span(task.Estimate)}";

    /// <summary>earliest Mon 7 Dec.</summary>
    public static string Date(FloorDate date) => date.Kind switch
    {
        FloorDateKind.Earliest when date.When is { } when => $"earliest {ShopTime.Day(when)}",
        FloorDateKind.CountOn when date.When is { } when => $"count on {ShopTime.Day(when)}",
        FloorDateKind.Given when date.When is { } when => $"given {ShopTime.Day(when)}",
        FloorDateKind.Done => "all signed off",
        _ => "date not known",
    };

    /// <summary>likely Thu 3 Dec; or what an unknown date rests on; or nothing.</summary>
    public static string? DateNote(FloorDate date) => date switch
    {
        { Kind: FloorDateKind.CountOn, Likely: { } likely } => $"likely {ShopTime.Day(likely)}",
        { Kind: FloorDateKind.NotKnown, RestsOn: { } rests } => $"rests on {rests}",
        _ => null,
    };

    /// <summary>can start: Mounts bolted, +2 more (kept on one line); or what it waits on.</summary>
    public static string? Next(FloorCar car) => car switch
    {
        { CanStart: [var only] } => $"can start: {only}",
        { CanStart: [var first, .. var rest] } => $"can start: {first}, {More(rest.Length).Replace(' ', '\u00a0')}",
        { WaitsOn: { } wait } => $"waits on {wait}",
        _ => null,
    };

    /// <summary>Dunlin estate: stop, fuel weep at the filter, 13:27.</summary>
    public static string StopTitle(FloorStop stop) => $"{stop.Scope}: stop, {stop.Why}, {ShopTime.Clock(stop.RaisedAt)}";

    /// <summary>NOT HEARD YET: Mirek and Tove; or that all have heard.</summary>
    public static string Heard(FloorStop stop) => stop switch
    {
        { NotHeard.Length: > 0 } => $"not heard yet: {ShopTime.Names(stop.NotHeard)}",
        { Touches: 0 } => "touches nobody at work",
        { Touches: 1 } => "heard by the one it touches",
        _ => $"heard by all {stop.Touches}",
    };

    /// <summary>told to stop, Noor; made safe.</summary>
    public static string StopState(FloorStop stop) =>
        $"{(stop.State == Shared.StopState.MadeSafe ? "made safe" : "told to stop")}, {RaisedBy(stop)}";

    /// <summary>raised by Noor.</summary>
    public static string RaisedBy(FloorStop stop) => $"raised by {stop.RaisedBy}";
}

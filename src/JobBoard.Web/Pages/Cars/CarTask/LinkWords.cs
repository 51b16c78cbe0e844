using System.Collections.Immutable;
using JobBoard.Domain.Plans;
using JobBoard.Web.Pages.Bay;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars.CarTask;

/// <summary>Links spelled out.</summary>
public static class LinkWords
{
    /// <summary>The kinds, as they are chosen.</summary>
    public static ImmutableArray<BayChoice> Kinds { get; } =
    [
        new("finish-start", "starts after that one is finished"),
        new("start-start", "starts after that one is started"),
        new("finish-finish", "is finished after that one is finished"),
        new("start-finish", "is finished after that one is started"),
    ];

    /// <summary>The clocks a lag can run on, as they are chosen.</summary>
    public static ImmutableArray<BayChoice> Clocks { get; } = [new("working", "shop hours"), new("elapsed", "clock hours (cure, cool-down, fire watch)")];

    /// <summary>"starts after it is finished, 2 h by the clock later".</summary>
    public static string Of(Link link) => Kind(link.Kind) + Lag(link);

    private static string Kind(LinkKind kind) => kind switch
    {
        LinkKind.FinishStart => "starts after it is finished",
        LinkKind.StartStart => "starts after it is started",
        LinkKind.FinishFinish => "is finished after it is finished",
        _ => "is finished after it is started",
    };

    private static string Lag(Link link) => link.Lag switch
    {
        0 => "",
        < 0 => $", as early as {Time(-link.Lag)} before its end",
        _ => $", {Time(link.Lag)}{(link.Clock == LagClock.Elapsed ? " by the clock" : " of shop hours")} later",
    };

    private static string Time(int minutes) => ShopTime.Span(TimeSpan.FromMinutes(minutes));
}

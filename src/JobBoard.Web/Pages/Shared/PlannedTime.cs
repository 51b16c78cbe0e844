namespace JobBoard.Web.Pages.Shared;

/// <summary>Worked-out instants in words. They are rounded up to the next quarter of an hour: more would be pretence, and would change every minute.</summary>
public static class PlannedTime
{
    /// <summary>14:15 today, else Mon 7 Dec 14:15.</summary>
    public static string Of(DateTimeOffset at, DateTimeOffset now) => ShopTime.Since(Rounded(at), now);

    /// <summary>The instant, up to the next quarter of an hour.</summary>
    public static DateTimeOffset Rounded(DateTimeOffset at)
    {
        var over = at.Ticks % TimeSpan.FromMinutes(15).Ticks;
        return over == 0 ? at : at.AddTicks(TimeSpan.FromMinutes(15).Ticks - over);
    }

    /// <summary>3 h 10 of shop hours; "no slack" for none; a negative one is "short by ...".</summary>
    public static string Slack(TimeSpan slack) => slack switch
    {
        { TotalMinutes: < 0.5 and > -0.5 } => "no slack",
        { Ticks: < 0 } => $"short by {ShopTime.Span(-slack)}",
        _ => $"{ShopTime.Span(slack)} of slack",
    };
}

using System.Collections.Immutable;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Bay;

/// <summary>What the bay screen says, in one place.</summary>
public static class BayTexts
{
    /// <summary>Below every caution.</summary>
    public const string LocalCodes = "Local codes and licensed practice come first. The board says what was recorded; it never says that something is safe.";

    /// <summary>On the stop sheet and every stop.</summary>
    public const string NoEmergencyStop = "A stop here is no emergency stop.";

    /// <summary>Reasons that raise a stop with one tap.</summary>
    public static ImmutableArray<string> StopReasons { get; } = ["leak", "load not right", "fire or smoke", "somebody hurt", "not as planned"];

    /// <summary>Heading of the list of what can start.</summary>
    public const string CanStart = "Can start next";

    /// <summary>Where nothing can start.</summary>
    public const string NothingCanStart = "Nothing can start for you now.";

    /// <summary>Heading of what is waited on.</summary>
    public const string Waiting = "You wait on";

    /// <summary>Where nothing is in hand.</summary>
    public const string NothingInHand = "Nothing in hand.";

    /// <summary>For a person who is not in.</summary>
    public const string NotIn = "You are not in. Nothing can start for you until you are.";

    /// <summary>For an apprentice.</summary>
    public static string WorksUnder(string name) => $"You work under {name}: beside {name} on the same task, and you sign nothing off.";

    /// <summary>in hand, 1 h 10 of 3 h.</summary>
    public static string Worked(BayTask task) =>
        $"{ShopTime.Span(task.SoFar)} of {ShopTime.Span(task.Estimate)}{(task.OverItsEstimate ? ", over its estimate" : "")}";

    /// <summary>Heron coupe · Bay 1 · 2 h.</summary>
    public static string About(BayNext next) => string.Join(" · ", new[] { next.Car, next.Place, ShopTime.Span(next.Estimate) }.OfType<string>());

    /// <summary>The verdict in words.</summary>
    public static string Verdict(BayVerdict verdict) => verdict switch
    {
        BayVerdict.InLimits => "in limits",
        BayVerdict.Out => "out",
        BayVerdict.TooCloseToCall => "too close to call",
        BayVerdict.Lapsed => "lapsed",
        _ => "not taken yet",
    };

    /// <summary>not heard yet: Mirek and Tove.</summary>
    public static string Heard(BayStop stop) =>
        stop.NotHeard.Length == 0 ? "Heard by all it touches." : $"Not heard yet: {ShopTime.Names(stop.NotHeard)}.";
}

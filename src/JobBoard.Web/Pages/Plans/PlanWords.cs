using JobBoard.Domain.Plans;
using JobBoard.Shop.Plans;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Plans;

/// <summary>What the plan screen says of a plan; what its fields are called stands in <c>wwwroot/js/plan/words.js</c>.</summary>
public static class PlanWords
{
    /// <summary>A repair that is no longer there.</summary>
    public const string MendGone = "That fault is not there any more. Nothing was changed.";

    /// <summary>How a plan stands, in one line.</summary>
    public static string Sum(PlanReportView view) => view switch
    {
        { IsStale: true } => "The plan was changed by others",
        { Faults.Length: 1 } => "1 fault",
        { Faults.Length: > 1 } => $"{view.Faults.Length} faults",
        { Against.Length: > 0 } => "Not like this",
        { IsRunning: true, IsChanged: false } => "Nothing is changed",
        _ => "No faults",
    };

    /// <summary>When it can be ready then.</summary>
    public static string Ready(PlanOutlook outlook, Func<DateTimeOffset, string> time) => outlook switch
    {
        { HasDates: false } => "Dates can be worked out again when the faults are put right.",
        { After: null } => "Earliest ready: not known, it rests on a part nobody can date.",
        { Before: null } => $"Earliest ready: {time(outlook.After.Value)}; not known as things stand.",
        { Moves: { } by } when by.Duration() < TimeSpan.FromMinutes(1) => $"Earliest ready: {time(outlook.After.Value)}, as before.",
        _ => $"Earliest ready: {time(outlook.After.Value)}, {Signed(outlook.Moves!.Value)}. It was {time(outlook.Before.Value)}.",
    };

    /// <summary>"2 h later", in shop hours.</summary>
    public static string Signed(TimeSpan by) => by < TimeSpan.Zero ? $"{ShopTime.Span(-by)} sooner" : $"{ShopTime.Span(by)} later";

    /// <summary>Whose work is touched and how; people as <c>{id}</c>.</summary>
    public static string Touched(string task, TouchedWork work)
    {
        var who = work.People.IsEmpty ? "Nobody" : ShopTime.Names([.. work.People.Select(p => $"{{{p}}}")]);
        var how = work.InHand ? $"{who} {(work.People.Length > 1 ? "have" : "has")} “{task}” in hand" : $"“{task}” is left part-done by {who}";
        return work.Stop is null ? how + ": its links or items change." : $"{how}: it gets a stop. {work.Stop}";
    }

    /// <summary>A task that could no longer be done.</summary>
    public static string Lost(Plan plan, Reached lost) =>
        $"“{PlanIndex.Of(plan).NameOf(lost.Task)}” needs {Item(plan, lost)} {string.Join(" or ", lost.Conditions)}, which it will not be any more.";

    /// <summary>A task that is reached only before another, or not at all.</summary>
    public static string Reached(Plan plan, Reached reached) =>
        $"“{PlanIndex.Of(plan).NameOf(reached.Task)}” needs {Item(plan, reached)} {string.Join(" or ", reached.Conditions)}{(reached.IsBefore ? ": it comes before." : ": there is no way to it.")}";

    /// <summary>A value of the wrong kind, said as for a field of a form.</summary>
    public static string Shape(string words) => words.EndsWith("it has to be a whole number.", StringComparison.Ordinal) || words.EndsWith("it has to be a number.", StringComparison.Ordinal)
        ? words.Replace("This is the text ", "", StringComparison.Ordinal).Replace("; it has to be a", " is not a", StringComparison.Ordinal).Replace("number.", "number. Type digits only.", StringComparison.Ordinal)
        : words;

    private static string Item(Plan plan, Reached reached) => PlanIndex.Of(plan).Item(reached.Item)?.Name ?? reached.Item;
}

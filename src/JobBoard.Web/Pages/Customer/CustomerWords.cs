using System.Globalization;

namespace JobBoard.Web.Pages.Customer;

/// <summary>The texts of the customer's page.</summary>
public static class CustomerWords
{
    /// <summary>Said by a link that is unknown, has run out or was withdrawn: the same for all three.</summary>
    public const string Gone = "This link no longer works. Ask the shop.";

    /// <summary>Said to what wants to be written by a link.</summary>
    public const string ReadOnly = "Nothing can be sent by this link: call or write to the shop.";

    /// <summary>A stage that is begun and that nobody is on.</summary>
    public const string Begun = "begun";

    /// <summary>The stage that comes next.</summary>
    public const string Next = "next";

    /// <summary>Monday 7 December; with its year when that is not the year of <paramref name="now"/>.</summary>
    public static string Day(DateTimeOffset at, DateTimeOffset now) =>
        at.ToString(at.Year == now.Year ? "dddd d MMMM" : "dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>"by 16:00", or nothing at midnight: then the whole day was meant.</summary>
    public static string? Clock(DateTimeOffset at) =>
        at.TimeOfDay == TimeSpan.Zero ? null : string.Create(CultureInfo.InvariantCulture, $"by {at:HH:mm}");

    /// <summary>How the date is led up to.</summary>
    public static string Lead(DateTimeOffset? date, DateTimeOffset now, bool done) => date switch
    {
        _ when done => "All the work is done. Ask the shop when to come.",
        null => "No date yet. The shop will give you one.",
        { } at when at.Date < now.Date => "The date we gave you is over. Ask the shop for a new one.",
        _ => "The date we gave you",
    };

    /// <summary>That the date moved, or was taken back.</summary>
    public static string Moved(DateTimeOffset? from, DateTimeOffset? to, DateTimeOffset on, DateTimeOffset now) => (from, to) switch
    {
        ({ } was, { } date) when was.Date == date.Date => $"On {Day(on, now)} we moved it from {was:HH\\:mm} to {date:HH\\:mm} on the same day.",
        ({ } was, { } date) => $"On {Day(on, now)} we moved it from {Day(was, now)} to {Day(date, now)}.",
        ({ } was, null) => $"On {Day(on, now)} we took back {Day(was, now)}.",
        _ => $"On {Day(on, now)} we gave you a date again.",
    };

    /// <summary>Now and next in a sentence.</summary>
    public static string Now(IReadOnlyList<string> now, string? next, bool done) => (now.Count, next) switch
    {
        _ when done => "Every stage is done.",
        (0, null) => "The work has not begun.",
        (0, _) => $"The work has not begun. First: {next}.",
        (_, null) => $"Now: {Joined(now)}.",
        _ => $"Now: {Joined(now)}. Next: {next}.",
    };

    /// <summary>How a stage stands.</summary>
    public static string State(bool done, bool inHand, bool begun, bool next, DateTimeOffset? end, DateTimeOffset now) =>
        done ? end is { } day ? $"done {Day(day, now)}" : "done" : inHand ? "in hand now" : begun ? Begun : next ? Next : "";

    private static string Joined(IReadOnlyList<string> names) => names.Count == 1 ? names[0] : $"{string.Join(", ", names.Take(names.Count - 1))} and {names[^1]}";
}

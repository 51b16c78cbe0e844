using System.Globalization;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Paper;

/// <summary>Words that stand on every sheet.</summary>
internal static class PaperWords
{
    public const string Caution =
        "This sheet says what was recorded, by whom, and what was still open then; things have gone on since. Look at the car. Local codes and licensed practice come first. A stop on the board is no emergency stop.";

    public const string ByItself = "printed by itself in the evening";

    public const string ByHand = "written by hand with 'jobboard paper'";

    /// <summary>State of Wed 4 Mar 2026 17:00, entry 1432; printed by Inga.</summary>
    public static string Stamp(Picture picture, string by) => string.Create(
        CultureInfo.InvariantCulture, $"State of {picture.Now:ddd d MMM yyyy HH:mm}, entry {picture.Head.Seq}; {by}.");

    /// <summary>Oskar, foreman; Marit, owner: those who are in first.</summary>
    public static string WhoToAsk(Picture picture)
    {
        var all = picture.Shop.People.Values.Where(p => !p.Left && p.Position >= Position.Foreman).OrderByDescending(p => p.IsIn).ThenBy(p => p.Position);
        return string.Join("; ", all.Select(Who)) is { Length: > 0 } words ? words : "nobody is named foreman or owner";
    }

    private static string Who(Person person) => $"{person.Name}, {person.Position.ToString().ToLowerInvariant()}{(person.IsIn ? "" : ", not in")}";

    /// <summary>The day and time of an instant of the shop.</summary>
    public static string At(Picture picture, DateTimeOffset at) => ShopTime.Since(picture.Local(at), picture.Now);
}

using System.Collections.Immutable;
using System.Globalization;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>The shop's own data in words.</summary>
public static class ShopWords
{
    /// <summary>The days of a week, Monday first.</summary>
    public static ImmutableArray<DayOfWeek> Week { get; } =
        [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday, DayOfWeek.Saturday, DayOfWeek.Sunday];

    /// <summary>Mon 7 Dec 2026.</summary>
    public static string Day(DateTimeOffset at) => at.ToString("ddd d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>Mon 7 Dec 2026.</summary>
    public static string Day(DateOnly day) => day.ToString("ddd d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A number without needless zeros.</summary>
    public static string Number(decimal number) => number.ToString("0.#####", CultureInfo.InvariantCulture);

    /// <summary>"Monday to Friday: 08:00 to 12:00, 12:30 to 17:00", a line per stretch of days with the same hours.</summary>
    public static ImmutableArray<string> Hours(ImmutableArray<OpenHours> hours)
    {
        if (hours.IsEmpty) return [];
        var lines = ImmutableArray.CreateBuilder<string>();
        for (var first = 0; first < Week.Length;)
        {
            var (last, words) = (first, OfDay(hours, Week[first]));
            while (last + 1 < Week.Length && OfDay(hours, Week[last + 1]) == words) last++;
            var days = last == first ? $"{Week[first]}" : last == first + 1 ? $"{Week[first]} and {Week[last]}" : $"{Week[first]} to {Week[last]}";
            lines.Add($"{days}: {words}");
            first = last + 1;
        }

        return lines.ToImmutable();
    }

    /// <summary>What a person is: "technician", "apprentice, works beside Tove", "outside specialist".</summary>
    public static string Of(Person person, ShopState shop)
    {
        var position = person.Position.ToString().ToLowerInvariant();
        if (person.WorksUnder is { } under) position += $", works beside {shop.NameOf(under)}";
        return person.Outside ? $"{position}, outside specialist" : position;
    }

    /// <summary>How a danger of a kind ends.</summary>
    public static string Of(HazardEnd end) => end switch
    {
        HazardEnd.WithTheWork => "ends when nobody is on the work",
        HazardEnd.WhenMadeSafe => "stands until somebody has made it safe and said how",
        HazardEnd.WithTheCondition => "stands as long as the item is in that condition",
        _ => "stands until a reading in limits ends it",
    };

    /// <summary>"Suspended load and person under the car: not in the same sweep; a load can fall."</summary>
    public static string Of(KeepApart rule, ShopState shop) =>
        $"{First(Of(rule.A, shop))} and {Small(Of(rule.B, shop))}: {Of(rule.Scope, rule.Metres)}; {Small(rule.Reason.Trim())}";

    /// <summary>How far a rule reaches.</summary>
    public static string Of(Scope scope, decimal? metres) => scope switch
    {
        Scope.Car => "not on the same car",
        Scope.Bay => "not in the same place",
        Scope.Sweep => "not in the same sweep",
        Scope.Distance => $"not within {Number(metres ?? 0)} m of each other",
        _ => "not at once anywhere in the shop",
    };

    /// <summary>One side of a rule.</summary>
    public static string Of(Side side, ShopState shop)
    {
        if (side.Hazard is { } hazard) return shop.Hazards.GetValueOrDefault(hazard)?.Name ?? hazard;
        var item = side.Item ?? "";
        var name = item.StartsWith("shop/", StringComparison.Ordinal) ? shop.Items.GetValueOrDefault(item[5..])?.Name : NameOnCars(item, shop);
        return $"{name ?? item} {side.Condition}";
    }

    private static string? NameOnCars(string item, ShopState shop) =>
        shop.Cars.Values.Select(c => PlanIndex.Of(c.Plan).Item(item)?.Name).FirstOrDefault(n => n is not null);

    private static string OfDay(ImmutableArray<OpenHours> hours, DayOfWeek day)
    {
        var open = hours.Where(h => h.Day == day).OrderBy(h => h.From).Select(h => string.Create(CultureInfo.InvariantCulture, $"{h.From:HH\\:mm} to {h.To:HH\\:mm}")).ToArray();
        return open.Length == 0 ? "closed" : string.Join(", ", open);
    }

    private static string First(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    // "CO meter" keeps its capitals; "Person under the car" does not.
    private static string Small(string words) => words.Length > 1 && char.IsUpper(words[1]) ? words : words.Length == 0 ? words : char.ToLowerInvariant(words[0]) + words[1..];
}

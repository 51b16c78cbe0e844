using System.Globalization;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Engineering.Measures;

namespace JobBoard.EndToEnd.Crew;

/// <summary>Numbers as a person types them.</summary>
internal static class Numbers
{
    /// <summary>A number well in limits: the middle, or well inside the one limit.</summary>
    public static string InLimits(ReadingNeed need)
    {
        var number = (need.Min, need.Max) switch
        {
            ({ } min, { } max) => (min + max) / 2,
            ({ } min, null) => min * 1.15m,
            (null, { } max) => max / 2,
            _ => 1m,
        };
        return Math.Round(number, 4).ToString("0.####", CultureInfo.InvariantCulture);
    }

    /// <summary>The instrument for the reading's quantity that the plan's words for the tool name, or nothing.</summary>
    public static Instrument? Tool(ReadingNeed need, IEnumerable<Instrument> instruments) =>
        instruments.Where(i => Units.Find(i.Unit)?.Quantity == Units.Find(need.Unit)?.Quantity && need.Tool.Contains(i.Name, StringComparison.OrdinalIgnoreCase)).OrderByDescending(i => i.Name.Length).ThenBy(i => i.Id, StringComparer.Ordinal).FirstOrDefault();
}

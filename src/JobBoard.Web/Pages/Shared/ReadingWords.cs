using System.Collections.Immutable;
using System.Globalization;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Engineering.Measures;
using JobBoard.Web.Pages.Bay;

namespace JobBoard.Web.Pages.Shared;

/// <summary>Readings and their limits in words.</summary>
public static class ReadingWords
{
    /// <summary>45 to 50 N·m, at least 9 V, at most 35 kPa.</summary>
    public static string Limit(ReadingNeed need) => (need.Min, need.Max) switch
    {
        ({ } min, { } max) => $"{Number(min)} to {Number(max)} {need.Unit}",
        ({ } min, null) => $"at least {Number(min)} {need.Unit}",
        (null, { } max) => $"at most {Number(max)} {need.Unit}",
        _ => $"to be noted, {need.Unit}",
    };

    /// <summary>in limits, out, too close to call.</summary>
    public static string Verdict(Verdict verdict) => verdict switch
    {
        Domain.Readings.Verdict.InLimits => "in limits",
        Domain.Readings.Verdict.Out => "out",
        _ => "too close to call",
    };

    /// <summary>The limit's unit first, then the others of its quantity.</summary>
    public static ImmutableArray<string> Units(string unit) => Engineering.Measures.Units.Find(unit) is { } found
        ? [found.Symbol, .. Engineering.Measures.Units.All.Where(u => u.Quantity == found.Quantity && u.Symbol != found.Symbol).Select(u => u.Symbol)]
        : [unit];

    /// <summary>What a reading can be taken with: what its tool names first, what has run out of calibration last.</summary>
    public static ImmutableArray<BayChoice> Instruments(ShopState shop, ReadingNeed need, DateTimeOffset now)
    {
        var quantity = Engineering.Measures.Units.Find(need.Unit)?.Quantity;
        return
        [
            .. shop.Instruments.Values.Where(i => Engineering.Measures.Units.Find(i.Unit)?.Quantity == quantity)
                .OrderBy(i => need.Tool.Contains(i.Name, StringComparison.OrdinalIgnoreCase) ? 0 : 1).ThenBy(i => i.CalibratedUntil <= now)
                .Select(i => new BayChoice(i.Id, i.Name + (i.CalibratedUntil <= now ? " (calibration run out)" : ""))),
        ];
    }

    private static string Number(decimal value) => value.ToString("0.############", CultureInfo.InvariantCulture);
}

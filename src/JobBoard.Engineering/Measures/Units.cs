using System.Collections.Frozen;
using System.Collections.Immutable;

namespace JobBoard.Engineering.Measures;

/// <summary>
/// The units of numbers of record, each with an exact factor. Definitions: 1 in = 25.4 mm and 1 lb = 0.45359237 kg
/// (international yard and pound agreement of 1959), standard gravity 9.80665 m/s² (3rd CGPM, 1901), hence
/// 1 lbf = 0.45359237 × 9.80665 N, 1 lb·ft = 1 lbf × 0.3048 m, 1 psi = 1 lbf / (25.4 mm)²; 1 US gallon = 231 in³,
/// 1 imperial gallon = 4.54609 l (Units of Measurement Regulations 1995); 0 °C = 273.15 K; °F = 9/5 °C + 32.
/// </summary>
public static class Units
{
    private const decimal Pound = 0.45359237m;
    private const decimal Gravity = 9.80665m;
    private const decimal Inch = 0.0254m;
    private const decimal Foot = 0.3048m;
    private const decimal PoundForce = Pound * Gravity;
    private const decimal UsGallon = 3.785411784m;
    private const decimal ImperialGallon = 4.54609m;

    /// <summary>1 psi in kPa; no finite decimal, so a fraction.</summary>
    private static readonly Ratio Psi = (Ratio)PoundForce / (Inch * Inch * 1000m);

    private static readonly FrozenDictionary<string, Unit> BySpelling = Make();

    /// <summary>All units, in the order of their quantities.</summary>
    public static ImmutableArray<Unit> All { get; } =
        [.. BySpelling.Values.Distinct().OrderBy(u => u.Quantity).ThenBy(u => u.Symbol, StringComparer.Ordinal)];

    /// <summary>The unit of a symbol or one of its other spellings (<c>Nm</c>, <c>ohm</c>, <c>degC</c>), or nothing. Spaces at the ends are overlooked.</summary>
    public static Unit? Find(string? spelling) =>
        spelling is null ? null : BySpelling.GetValueOrDefault(spelling.Trim());

    /// <summary>The value in another unit of the same quantity, rounded once in the 28th digit where no decimal holds it.</summary>
    /// <param name="value">In <paramref name="from"/>.</param>
    /// <param name="from">A symbol or other spelling.</param>
    /// <param name="to">A symbol or other spelling.</param>
    /// <param name="field">What the words name when it cannot be done.</param>
    public static Converted Convert(decimal value, string from, string to, string field = "unit")
    {
        if (Pair(from, to, field, Same) is { Problem: { } problem })
            return new Converted(null, problem);

        var (source, target) = (Find(from)!, Find(to)!);
        var scaled = ((Ratio)value + source.Offset) * source.Factor / target.Factor;
        return Done(scaled - target.Offset, field, target);
    }

    /// <summary>
    /// A difference or uncertainty in another unit: temperatures without their zero points, and pressures whether
    /// gauge or absolute (a difference of either is the same thing).
    /// </summary>
    public static Converted ConvertDifference(decimal value, string from, string to, string field = "unit")
    {
        if (Pair(from, to, field, SameDifference) is { Problem: { } problem })
            return new Converted(null, problem);

        var (source, target) = (Find(from)!, Find(to)!);
        return Done(value * source.Factor / target.Factor, field, target);
    }

    /// <summary>Words for a spelling that is no unit known here.</summary>
    public static string UnknownWords(string? spelling, string field) =>
        $"{field}: \"{spelling}\" is not a unit known here; write one of {string.Join(", ", All.Select(u => u.Symbol))}.";

    private static Converted Pair(string from, string to, string field, Func<Unit, Unit, bool> fits)
    {
        if (Find(from) is not { } source)
            return new Converted(null, UnknownWords(from, field));
        if (Find(to) is not { } target)
            return new Converted(null, UnknownWords(to, field));
        return fits(source, target)
            ? new Converted(null, null)
            : new Converted(null, $"{field}: {source.Symbol} ({source.Name}) cannot be read as {target.Symbol} ({target.Name}); write it in one of {Fitting(target, fits)}.");
    }

    private static string Fitting(Unit target, Func<Unit, Unit, bool> fits) =>
        string.Join(", ", All.Where(u => fits(u, target)).Select(u => u.Symbol));

    private static bool Same(Unit a, Unit b) => a.Quantity == b.Quantity;

    private static bool SameDifference(Unit a, Unit b) => Difference(a) == Difference(b);

    private static Quantity Difference(Unit unit) =>
        unit.Quantity == Quantity.AbsolutePressure ? Quantity.GaugePressure : unit.Quantity;

    private static Converted Done(Ratio value, string field, Unit target) =>
        value.ToDecimal() is { } result
            ? new Converted(result, null)
            : new Converted(null, $"{field}: too great to be written in {target.Symbol}; choose a larger unit.");

    private static FrozenDictionary<string, Unit> Make()
    {
        var spellings = new Dictionary<string, Unit>(StringComparer.Ordinal);
        foreach (var (unit, others) in Mechanical().Concat(Pressures()).Concat(Electrical()).Concat(Others()))
            foreach (var spelling in others.Prepend(unit.Symbol))
                spellings.Add(spelling, unit);
        return spellings.ToFrozenDictionary(StringComparer.Ordinal);
    }

    private static (Unit Unit, string[] Spellings) Of(
        string symbol, Quantity quantity, Ratio factor, string name, params string[] spellings) =>
        (new Unit(symbol, quantity, factor, 0m, name), spellings);

    private static IEnumerable<(Unit Unit, string[] Spellings)> Mechanical() =>
    [
        Of("kg", Quantity.Mass, 1m, "kilogram"),
        Of("g", Quantity.Mass, 0.001m, "gram"),
        Of("t", Quantity.Mass, 1000m, "tonne"),
        Of("lb", Quantity.Mass, Pound, "pound", "lbs", "lbm"),
        Of("N", Quantity.Force, 1m, "newton"),
        Of("kN", Quantity.Force, 1000m, "kilonewton"),
        Of("lbf", Quantity.Force, PoundForce, "pound-force"),
        Of("kgf", Quantity.Force, Gravity, "kilogram-force", "kp"),
        Of("N·m", Quantity.Torque, 1m, "newton metre", "Nm", "N.m", "N m", "N-m", "N*m", "N\u22C5m"),
        Of("lb·ft", Quantity.Torque, PoundForce * Foot, "pound-foot", "lb-ft", "lb.ft", "lb ft", "lbft", "ft-lb", "ft.lb", "ft lb", "ftlb", "ft·lb", "lbf·ft", "lbf.ft", "lbf ft", "ft-lbf", "ft lbf", "lb\u22C5ft"),
        Of("lb·in", Quantity.Torque, PoundForce * Inch, "pound-inch", "lb-in", "lb.in", "lb in", "in-lb", "in lb", "in.lb", "lbf·in", "lbf in", "in-lbf"),
        Of("kgf·m", Quantity.Torque, Gravity, "kilogram-force metre", "kgf.m", "kgf m", "kgfm", "kpm"),
        Of("m", Quantity.Length, 1m, "metre"),
        Of("mm", Quantity.Length, 0.001m, "millimetre"),
        Of("cm", Quantity.Length, 0.01m, "centimetre"),
        Of("µm", Quantity.Length, 0.000001m, "micrometre", "um", "\u03BCm"),
        Of("in", Quantity.Length, Inch, "inch", "inch", "\""),
        Of("ft", Quantity.Length, Foot, "foot"),
        Of("°", Quantity.Angle, 1m, "degree of angle", "deg"),
        Of("1/min", Quantity.Speed, 1m, "turns a minute", "rpm", "r/min", "min-1", "min⁻¹"),
    ];

    private static IEnumerable<(Unit Unit, string[] Spellings)> Pressures() =>
    [
        Of("kPa", Quantity.GaugePressure, 1m, "kilopascal, gauge", "kPa gauge", "kPa(g)", "kPag"),
        Of("Pa", Quantity.GaugePressure, 0.001m, "pascal, gauge", "Pa gauge"),
        Of("MPa", Quantity.GaugePressure, 1000m, "megapascal, gauge", "MPa gauge"),
        Of("bar", Quantity.GaugePressure, 100m, "bar, gauge", "bar gauge", "bar(g)", "barg"),
        Of("mbar", Quantity.GaugePressure, 0.1m, "millibar, gauge", "mbar gauge"),
        Of("psi", Quantity.GaugePressure, Psi, "pound-force a square inch, gauge", "psi gauge", "psig", "lbf/in²", "lbf/in2"),
        Of("kPa abs", Quantity.AbsolutePressure, 1m, "kilopascal, absolute", "kPa(a)", "kPaa", "kPa absolute"),
        Of("bar abs", Quantity.AbsolutePressure, 100m, "bar, absolute", "bar(a)", "bara", "bar absolute"),
        Of("mbar abs", Quantity.AbsolutePressure, 0.1m, "millibar, absolute", "hPa abs", "hPa", "mbar(a)"),
        Of("psi abs", Quantity.AbsolutePressure, Psi, "pound-force a square inch, absolute", "psia", "psi(a)"),
    ];

    private static IEnumerable<(Unit Unit, string[] Spellings)> Electrical() =>
    [
        Of("V", Quantity.Voltage, 1m, "volt"),
        Of("mV", Quantity.Voltage, 0.001m, "millivolt"),
        Of("A", Quantity.Current, 1m, "ampere"),
        Of("mA", Quantity.Current, 0.001m, "milliampere"),
        Of("Ω", Quantity.Resistance, 1m, "ohm", "ohm", "ohms", "Ohm", "\u2126"),
        Of("mΩ", Quantity.Resistance, 0.001m, "milliohm", "mohm", "milliohm", "mOhm", "m\u2126"),
        Of("kΩ", Quantity.Resistance, 1000m, "kilohm", "kohm", "kOhm", "k\u2126"),
        Of("MΩ", Quantity.Resistance, 1000000m, "megohm", "Mohm", "MOhm", "M\u2126"),
        Of("A·h", Quantity.Charge, 1m, "ampere-hour", "Ah", "A.h", "A h"),
        Of("W", Quantity.Power, 1m, "watt"),
        Of("kW", Quantity.Power, 1000m, "kilowatt"),
    ];

    private static IEnumerable<(Unit Unit, string[] Spellings)> Others() =>
    [
        (new Unit("K", Quantity.Temperature, 1m, 0m, "kelvin"), ["kelvin"]),
        (new Unit("°C", Quantity.Temperature, 1m, 273.15m, "degree Celsius"), ["degC", "deg C", "C", "℃"]),
        (new Unit("°F", Quantity.Temperature, (Ratio)5m / 9m, 459.67m, "degree Fahrenheit"), ["degF", "deg F", "F", "℉"]),
        Of("s", Quantity.Time, 1m, "second", "sec"),
        Of("ms", Quantity.Time, 0.001m, "millisecond"),
        Of("min", Quantity.Time, 60m, "minute"),
        Of("h", Quantity.Time, 3600m, "hour", "hr"),
        Of("l", Quantity.Volume, 1m, "litre", "L"),
        Of("ml", Quantity.Volume, 0.001m, "millilitre", "mL", "cm³", "cm3", "cc"),
        Of("gal", Quantity.Volume, UsGallon, "US gallon", "US gal", "gal (US)"),
        Of("imp gal", Quantity.Volume, ImperialGallon, "imperial gallon", "gal (imp)"),
        Of("l/h", Quantity.Flow, 1m, "litre an hour", "L/h", "lph"),
        Of("l/min", Quantity.Flow, 60m, "litre a minute", "L/min", "lpm"),
        Of("gal/h", Quantity.Flow, UsGallon, "US gallon an hour", "US gal/h", "gph"),
        Of("imp gal/h", Quantity.Flow, ImperialGallon, "imperial gallon an hour"),
        Of("g/s", Quantity.MassFlow, 1m, "gram a second"),
        Of("kg/h", Quantity.MassFlow, (Ratio)1m / 3.6m, "kilogram an hour"),
        Of("%", Quantity.Share, 1m, "per cent", "percent"),
        Of("ppm", Quantity.Share, 0.0001m, "part in a million"),
        Of("pcs", Quantity.Count, 1m, "pieces", "pieces"),
    ];
}

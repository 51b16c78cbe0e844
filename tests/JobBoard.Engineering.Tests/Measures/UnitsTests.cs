using CsCheck;
using JobBoard.Engineering.Measures;

namespace JobBoard.Engineering.Tests.Measures;

public class UnitsTests
{
    [Theory]
    [InlineData("1", "in", "mm", "25.4")] // international yard and pound agreement, 1959
    [InlineData("1", "lb", "kg", "0.45359237")] // the same
    [InlineData("1", "lbf", "N", "4.4482216152605")] // 0.45359237 × 9.80665 (NIST SP 811, appendix B.8)
    [InlineData("1", "lb·ft", "N·m", "1.3558179483314004")] // NIST SP 811: 1.355 818 (rounded there)
    [InlineData("1", "lb·in", "N·m", "0.1129848290276167")]
    [InlineData("1", "psi", "kPa", "6.8947572931683613367226734453")] // NIST SP 811: 6.894 757 (rounded there)
    [InlineData("1", "bar", "kPa", "100")]
    [InlineData("0.4", "MPa", "bar", "4")]
    [InlineData("1", "gal/h", "l/h", "3.785411784")] // 231 in³
    [InlineData("1", "imp gal", "l", "4.54609")] // Units of Measurement Regulations 1995
    [InlineData("212", "°F", "°C", "100")]
    [InlineData("-40", "°F", "°C", "-40")]
    [InlineData("0", "K", "°F", "-459.67")]
    [InlineData("25", "°C", "K", "298.15")]
    [InlineData("90", "min", "h", "1.5")]
    [InlineData("0.02", "%", "ppm", "200")]
    [InlineData("1200", "mΩ", "Ω", "1.2")]
    [InlineData("101.3", "kPa abs", "bar abs", "1.013")]
    [InlineData("6", "in", "mm", "152.4")]
    [InlineData("36", "kg/h", "g/s", "10")]
    public void Converts_exactly_by_definition(string value, string from, string to, string expected)
    {
        var converted = Units.Convert(Number(value), from, to);

        Assert.Null(converted.Problem);
        Assert.Equal(expected, converted.Value!.Value.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("Nm", "N·m")]
    [InlineData("N.m", "N·m")]
    [InlineData("ohm", "Ω")]
    [InlineData("\u2126", "Ω")] // the ohm sign of old character sets
    [InlineData("mohm", "mΩ")]
    [InlineData("degC", "°C")]
    [InlineData("degF", "°F")]
    [InlineData("deg", "°")]
    [InlineData("ft-lb", "lb·ft")]
    [InlineData("psig", "psi")]
    [InlineData("psia", "psi abs")]
    [InlineData("rpm", "1/min")]
    [InlineData("um", "µm")]
    [InlineData(" kPa ", "kPa")]
    public void Symbol_found_when_spelt_otherwise(string spelling, string symbol) =>
        Assert.Equal(symbol, Units.Find(spelling)?.Symbol);

    [Theory]
    [InlineData("kPa", "kPa abs")]
    [InlineData("psi", "psi abs")]
    [InlineData("kg", "N")]
    [InlineData("N·m", "N")]
    [InlineData("°", "°C")]
    public void Refused_with_field_when_quantities_differ(string from, string to)
    {
        var converted = Units.Convert(1m, from, to, "oil pressure");

        Assert.False(converted.Ok);
        Assert.Null(converted.Value);
        Assert.StartsWith("oil pressure: ", converted.Problem);
        Assert.Contains("write it in one of", converted.Problem);
    }

    [Theory]
    [InlineData("furlong", "m")]
    [InlineData("m", "furlong")]
    [InlineData("", "m")]
    [InlineData("NM", "N·m")]
    public void Refused_with_list_when_unit_is_unknown(string from, string to)
    {
        var converted = Units.Convert(1m, from, to, "length");

        Assert.StartsWith("length: ", converted.Problem);
        Assert.Contains("is not a unit known here", converted.Problem);
        Assert.Contains("N·m", converted.Problem);
    }

    [Fact]
    public void Zero_point_left_out_when_converting_a_difference()
    {
        Assert.Equal(1m, Units.ConvertDifference(1.8m, "°F", "°C").Value);
        Assert.Equal(2m, Units.ConvertDifference(2m, "K", "°C").Value);
        Assert.Equal(5m, Units.ConvertDifference(5m, "kPa", "kPa abs").Value);
        Assert.False(Units.ConvertDifference(5m, "kPa", "°C").Ok);
    }

    [Fact]
    public void Refused_when_too_great_for_a_decimal() =>
        Assert.Contains("choose a larger unit", Units.Convert(decimal.MaxValue, "t", "g", "mass").Problem);

    [Fact]
    public void Every_quantity_has_a_unit() =>
        Assert.Equal(Enum.GetValues<Quantity>(), Units.All.Select(u => u.Quantity).Distinct());

    [Fact]
    public void Comes_back_the_same_when_converted_there_and_back() =>
        Gen.Select(Gen.Int[0, Units.All.Length - 1], Gen.Int[0, 100], Gen.Long[-999_999_999_999, 999_999_999_999], Gen.Int[0, 6])
            .Sample((index, pick, digits, scale) =>
            {
                var from = Units.All[index];
                var fitting = Units.All.Where(u => u.Quantity == from.Quantity).ToArray();
                var to = fitting[pick % fitting.Length];
                var value = digits / (decimal)Math.Pow(10, scale);
                var there = Units.Convert(value, from.Symbol, to.Symbol).Value!.Value;
                var back = Units.Convert(there, to.Symbol, from.Symbol).Value!.Value;
                Assert.InRange(back - value, -1e-12m, 1e-12m);
            });

    private static decimal Number(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}

using System.Globalization;
using CsCheck;
using JobBoard.Engineering.Measures;

namespace JobBoard.Engineering.Tests.Measures;

public class NumberOfRecordTests
{
    [Theory]
    [InlineData("45", "45")]
    [InlineData(" 45 ", "45")]
    [InlineData("45.50", "45.50")]
    [InlineData("45,5", "45.5")]
    [InlineData("1.234", "1.234")]
    [InlineData("0,123", "0.123")]
    [InlineData("1234,567", "1234.567")]
    [InlineData("1,2345", "1.2345")]
    [InlineData(",5", "0.5")]
    [InlineData("-12.5", "-12.5")]
    [InlineData("\u221212.5", "-12.5")]
    [InlineData("+12.5", "12.5")]
    [InlineData("123456789.012345", "123456789.012345")]
    [InlineData("0.000000000000001", "0.000000000000001")]
    public void Reads_point_and_comma_as_decimal_sign(string text, string value)
    {
        var read = NumberOfRecord.Read(text, "V", "battery");

        Assert.Null(read.Words);
        Assert.Equal(value, read.Number!.Value.ToString(CultureInfo.InvariantCulture));
        Assert.Equal(text.Trim(), read.Number.Text);
    }

    [Theory]
    [InlineData("", "empty")]
    [InlineData("  ", "empty")]
    [InlineData(null, "empty")]
    [InlineData("abc", "not-a-number")]
    [InlineData("12 V", "not-a-number")]
    [InlineData("1 234", "not-a-number")]
    [InlineData("12.", "not-a-number")]
    [InlineData("-", "not-a-number")]
    [InlineData("--1", "not-a-number")]
    [InlineData("٣", "not-a-number")]
    [InlineData("NaN", "not-a-number")]
    [InlineData("1e3", "exponent")]
    [InlineData("1.5E-3", "exponent")]
    [InlineData("1,234.5", "separators")]
    [InlineData("1.234,5", "separators")]
    [InlineData("1,234,567", "separators")]
    [InlineData("1234567890123456", "too-many-digits")]
    [InlineData("1.0000000000000001", "too-many-digits")]
    [InlineData("0.0000000000000001", "too-many-digits")]
    [InlineData("1000000001", "out-of-range")]
    public void Refused_with_field_and_fix_when_it_is_no_number(string? text, string code)
    {
        var read = NumberOfRecord.Read(text, "V", "battery");

        Assert.Equal(code, read.Code);
        Assert.StartsWith("battery: ", read.Words);
        Assert.Null(read.Number);
        Assert.Empty(read.Choices);
    }

    [Theory]
    [InlineData("1,234", "1.234", "1234")]
    [InlineData("123,456", "123.456", "123456")]
    [InlineData("-1,234", "-1.234", "-1234")]
    public void Asks_when_comma_could_be_either(string text, string decimals, string thousands)
    {
        var read = NumberOfRecord.Read(text, "V", "battery");

        Assert.True(read.IsAmbiguous);
        Assert.Equal([decimals, thousands], read.Choices.Select(c => c.Value.ToString(CultureInfo.InvariantCulture)));
        Assert.Contains(decimals, read.Words);
    }

    [Theory]
    [InlineData("-274", "°C")]
    [InlineData("-0.1", "kPa abs")]
    [InlineData("-1", "kg")]
    [InlineData("-460", "°F")]
    public void Refused_when_below_nothing(string text, string unit) =>
        Assert.Equal("out-of-range", NumberOfRecord.Read(text, unit, "reading").Code);

    [Theory]
    [InlineData("-273.15", "°C")]
    [InlineData("-20", "kPa")]
    [InlineData("0", "kg")]
    public void Read_when_just_above_nothing(string text, string unit) =>
        Assert.True(NumberOfRecord.Read(text, unit, "reading").Ok);

    [Theory]
    [InlineData("9.99", false)]
    [InlineData("10", true)]
    [InlineData("20", true)]
    [InlineData("20.01", false)]
    public void Refused_when_outside_the_range_asked_for(string text, bool ok) =>
        Assert.Equal(ok, NumberOfRecord.Read(text, "V", "battery", 10m, 20m).Ok);

    [Fact]
    public void Refused_when_unit_is_unknown() =>
        Assert.Equal("unit-unknown", NumberOfRecord.Read("1", "furlong", "length").Code);

    [Fact]
    public void Keeps_the_symbol_when_unit_is_spelt_otherwise()
    {
        var number = NumberOfRecord.Read("45", "Nm", "torque").Number!;

        Assert.Equal("N·m", number.Unit);
        Assert.Equal(45000m / 1355.8179483314004m, number.In("ft-lb").Value!.Value, 20);
    }

    [Fact]
    public void Never_throws_whatever_is_typed() =>
        Gen.String[Gen.Char["0123456789.,+-−eE NmV٣∞"], 0, 24].Sample(text =>
        {
            var read = NumberOfRecord.Read(text, "V", "battery");
            Assert.True(read.Ok ? read.Words is null : read.Words!.StartsWith("battery: "));
        });

    [Fact]
    public void Reads_back_what_a_decimal_writes() =>
        Gen.Select(Gen.Long[-999_999_999_999_999, 999_999_999_999_999], Gen.Int[7, 12]).Sample((digits, scale) =>
        {
            var value = digits / (decimal)Math.Pow(10, scale);
            var read = NumberOfRecord.Read(value.ToString(CultureInfo.InvariantCulture), "V", "battery");
            Assert.Equal(value, read.Number?.Value);
        });
}

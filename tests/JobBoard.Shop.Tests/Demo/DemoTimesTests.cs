using JobBoard.Shop.Demo;

namespace JobBoard.Shop.Tests.Demo;

/// <summary>Times in seed files.</summary>
public class DemoTimesTests
{
    private static readonly DemoTimes Times = new(
        new DateTimeOffset(2026, 11, 24, 13, 7, 0, TimeSpan.Zero), TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin"));

    [Theory]
    [InlineData("-3d 08:10", "2026-11-21T07:10Z")]
    [InlineData("0d 08:10", "2026-11-24T07:10Z")]
    [InlineData("-31d 08:10", "2026-10-24T06:10Z")]
    [InlineData("-45m", "2026-11-24T12:22Z")]
    [InlineData("-2h", "2026-11-24T11:07Z")]
    [InlineData("2026-11-20T17:30", "2026-11-20T16:30Z")]
    public void Reads_the_shops_time(string text, string expected) =>
        Assert.Equal(DateTimeOffset.Parse(expected, System.Globalization.CultureInfo.InvariantCulture), Times.Read(text));

    [Theory]
    [InlineData("+3wd", "2026-11-27")]
    [InlineData("-2wd", "2026-11-20")]
    [InlineData("0d", "2026-11-24")]
    public void Reads_the_shops_day(string text, string expected) => Assert.Equal(DateOnly.ParseExact(expected, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), Times.ReadDay(text));

    [Fact]
    public void Anything_else_is_named() => Assert.Contains("yesterday", Assert.Throws<FormatException>(() => Times.Read("yesterday")).Message, StringComparison.Ordinal);
}

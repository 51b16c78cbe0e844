using System.Collections.Immutable;

namespace JobBoard.Engineering.Measures;

/// <summary>A number as somebody typed it, with what it was read as. Never a double.</summary>
/// <param name="Text">As typed, spaces at the ends left off.</param>
/// <param name="Value">At most 15 significant digits, within ± 1,000,000,000.</param>
/// <param name="Unit">The unit's symbol, whatever spelling was typed.</param>
public sealed record NumberOfRecord(string Text, decimal Value, string Unit)
{
    /// <summary>The value in another unit of the same quantity.</summary>
    public Converted In(string unit, string field = "unit") => Units.Convert(Value, Unit, unit, field);

    /// <summary>
    /// Reads a typed number. Point and comma are both decimal signs; signs + - − are read; there are no exponents and no
    /// separators between thousands. <c>1,234</c> could be either, so it is asked about.
    /// </summary>
    /// <param name="text">What was typed.</param>
    /// <param name="unit">A unit's symbol or other spelling.</param>
    /// <param name="field">What the words name when it cannot be read.</param>
    /// <param name="least">Least value that makes sense there, in <paramref name="unit"/>, or none.</param>
    /// <param name="greatest">Greatest value that makes sense there, in <paramref name="unit"/>, or none.</param>
    public static NumberRead Read(string? text, string? unit, string field, decimal? least = null, decimal? greatest = null)
    {
        if (Units.Find(unit) is not { } known)
            return NumberRead.Not("unit-unknown", Units.UnknownWords(unit, field));

        var typed = TypedNumber.Read(text, field);
        if (typed.Problem is { } problem)
            return problem;

        var readings = typed.Values.Select(value => new NumberOfRecord(text!.Trim(), value, known.Symbol)).ToImmutableArray();
        var beyond = readings.Select(n => OutOfRange(n, known, field, least, greatest)).ToImmutableArray();
        if (beyond.All(b => b is not null))
            return beyond[0]!;
        return readings.Length == 1 ? new NumberRead(readings[0], null, null, []) : NumberRead.Which(readings, field);
    }

    private static NumberRead? OutOfRange(NumberOfRecord number, Unit unit, string field, decimal? least, decimal? greatest)
    {
        if (unit.HasFloor && number.Value + unit.Offset < 0)
            return NumberRead.Not("out-of-range", $"{field}: {number.Text} {unit.Symbol} is below nothing at all; the least there is is {-unit.Offset:0.##} {unit.Symbol}.");
        if (least is { } low && number.Value < low)
            return NumberRead.Not("out-of-range", $"{field}: {number.Text} {unit.Symbol} is too small to be right; expected at least {low} {unit.Symbol}.");
        if (greatest is { } high && number.Value > high)
            return NumberRead.Not("out-of-range", $"{field}: {number.Text} {unit.Symbol} is too great to be right; expected at most {high} {unit.Symbol}.");
        return Math.Abs(number.Value) > 1_000_000_000m
            ? NumberRead.Not("out-of-range", $"{field}: {number.Text} {unit.Symbol} is too great to be right; choose a larger unit.")
            : null;
    }
}

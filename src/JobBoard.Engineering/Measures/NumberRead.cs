using System.Collections.Immutable;

namespace JobBoard.Engineering.Measures;

/// <summary>A number of record, or why there is none.</summary>
/// <param name="Number">What was read, or nothing.</param>
/// <param name="Code">empty, not-a-number, exponent, separators, too-many-digits, unit-unknown, out-of-range or ambiguous; nothing when read.</param>
/// <param name="Words">Field and fix; nothing when read.</param>
/// <param name="Choices">The two readings to choose from when ambiguous, the decimal one first; otherwise empty.</param>
public sealed record NumberRead(NumberOfRecord? Number, string? Code, string? Words, ImmutableArray<NumberOfRecord> Choices)
{
    /// <summary>Whether a number was read.</summary>
    public bool Ok => Number is not null;

    /// <summary>Whether somebody has to say which of two readings was meant.</summary>
    public bool IsAmbiguous => Code == "ambiguous";

    internal static NumberRead Not(string code, string words) => new(null, code, words, []);

    internal static NumberRead Which(ImmutableArray<NumberOfRecord> readings, string field) =>
        new(null, "ambiguous", $"{field}: \"{readings[0].Text}\" could be {Plain(readings[0])} or {Plain(readings[1])} {readings[0].Unit}; write it with a point, or without a separator.", readings);

    private static string Plain(NumberOfRecord number) =>
        number.Value.ToString(System.Globalization.CultureInfo.InvariantCulture);
}

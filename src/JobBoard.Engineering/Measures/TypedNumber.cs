using System.Collections.Immutable;
using System.Globalization;

namespace JobBoard.Engineering.Measures;

/// <summary>The digits of a typed number: one value, two where the separator can be read both ways, or words.</summary>
internal readonly record struct TypedNumber(ImmutableArray<decimal> Values, NumberRead? Problem)
{
    private const int MostDigits = 15;

    public static TypedNumber Read(string? text, string field)
    {
        var typed = text?.Trim() ?? "";
        var unsigned = typed.Length > 0 && typed[0] is '+' or '-' or '\u2212' ? typed[1..] : typed;
        if (Fault(typed, unsigned, field) is { } problem)
            return new TypedNumber([], problem);

        var decimals = unsigned.Replace(',', '.');
        var value = Parse(decimals);
        var negative = unsigned.Length < typed.Length && typed[0] != '+';
        ImmutableArray<decimal> values = IsEitherWay(unsigned) ? [value, Parse(unsigned.Replace(",", ""))] : [value];
        return new TypedNumber(negative ? [.. values.Select(v => -v)] : values, null);
    }

    private static decimal Parse(string text) =>
        decimal.Parse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    /// <summary>Whether a comma may stand between thousands: one to three digits, not beginning with 0, a comma, three digits.</summary>
    private static bool IsEitherWay(string unsigned)
    {
        var comma = unsigned.IndexOf(',');
        return comma is >= 1 and <= 3 && unsigned.Length == comma + 4 && unsigned[0] != '0';
    }

    private static NumberRead? Fault(string typed, string unsigned, string field)
    {
        if (typed.Length == 0)
            return NumberRead.Not("empty", $"{field}: nothing is written; write a number.");
        if (IsExponent(unsigned))
            return NumberRead.Not("exponent", $"{field}: \"{Short(typed)}\" has an exponent; write the number out in full.");
        if (unsigned.Any(c => !char.IsAsciiDigit(c) && c is not ('.' or ',')))
            return NumberRead.Not("not-a-number", $"{field}: \"{Short(typed)}\" is not a number; write digits with at most one point or comma, the unit stands beside it.");
        return Separators(typed, unsigned, field) ?? Digits(typed, unsigned, field);
    }

    private static bool IsExponent(string unsigned)
    {
        var e = unsigned.IndexOfAny(['e', 'E']);
        return e > 0 && char.IsAsciiDigit(unsigned[0]) && unsigned[(e + 1)..].TrimStart('+', '-') is { Length: > 0 } rest
            && rest.All(char.IsAsciiDigit);
    }

    private static NumberRead? Separators(string typed, string unsigned, string field)
    {
        if (unsigned.Count(c => c is '.' or ',') > 1)
            return NumberRead.Not("separators", $"{field}: \"{Short(typed)}\" has more than one point or comma; leave out those between thousands.");
        return unsigned.Length > 0 && char.IsAsciiDigit(unsigned[^1])
            ? null
            : NumberRead.Not("not-a-number", $"{field}: \"{Short(typed)}\" has no digit at its end; write the number in full.");
    }

    private static NumberRead? Digits(string typed, string unsigned, string field)
    {
        var separator = unsigned.IndexOfAny(['.', ',']);
        var decimals = separator < 0 ? 0 : unsigned.Length - separator - 1;
        var significant = unsigned.Replace(".", "").Replace(",", "").TrimStart('0').Length;
        return significant <= MostDigits && decimals <= MostDigits
            ? null
            : NumberRead.Not("too-many-digits", $"{field}: \"{Short(typed)}\" has more than {MostDigits} digits; round it to what was read off.");
    }

    private static string Short(string typed) => typed.Length <= 40 ? typed : typed[..40] + "…";
}

using System.Numerics;

namespace JobBoard.Engineering.Measures;

/// <summary>
/// An exact fraction, so that a chain of unit factors rounds once at its end or not at all
/// (1 psi is a whole number of N over a whole number of mm², which no decimal holds).
/// </summary>
/// <param name="Numerator">Any sign.</param>
/// <param name="Denominator">Above 0.</param>
internal readonly record struct Ratio(BigInteger Numerator, BigInteger Denominator)
{
    private static readonly BigInteger MaxMantissa = (BigInteger.One << 96) - 1;

    /// <summary>The decimal, exactly.</summary>
    public static implicit operator Ratio(decimal value)
    {
        Span<int> bits = stackalloc int[4];
        decimal.GetBits(value, bits);
        var mantissa = ((BigInteger)(uint)bits[2] << 64) | ((BigInteger)(uint)bits[1] << 32) | (uint)bits[0];
        var scale = (bits[3] >> 16) & 0xFF;
        return new Ratio(bits[3] < 0 ? -mantissa : mantissa, BigInteger.Pow(10, scale));
    }

    public static Ratio operator *(Ratio a, Ratio b) => new(a.Numerator * b.Numerator, a.Denominator * b.Denominator);

    public static Ratio operator /(Ratio a, Ratio b) =>
        b.Numerator.Sign < 0
            ? new(-a.Numerator * b.Denominator, a.Denominator * -b.Numerator)
            : new(a.Numerator * b.Denominator, a.Denominator * b.Numerator);

    public static Ratio operator +(Ratio a, Ratio b) =>
        new((a.Numerator * b.Denominator) + (b.Numerator * a.Denominator), a.Denominator * b.Denominator);

    public static Ratio operator -(Ratio a, Ratio b) => a + new Ratio(-b.Numerator, b.Denominator);

    /// <summary>
    /// The nearest decimal (ties to even), exact where a decimal can hold it, without needless zeros at its end;
    /// nothing where it is beyond ± 7.9 × 10²⁸.
    /// </summary>
    public decimal? ToDecimal()
    {
        var size = BigInteger.Abs(Numerator);
        for (var scale = 28; scale >= 0; scale--)
        {
            var mantissa = Round(size * BigInteger.Pow(10, scale), Denominator);
            if (mantissa <= MaxMantissa)
                return Compose(mantissa, scale, Numerator.Sign < 0);
        }

        return null;
    }

    private static BigInteger Round(BigInteger numerator, BigInteger denominator)
    {
        var whole = BigInteger.DivRem(numerator, denominator, out var rest);
        var twice = (rest * 2).CompareTo(denominator);
        return twice > 0 || (twice == 0 && !whole.IsEven) ? whole + 1 : whole;
    }

    private static decimal Compose(BigInteger mantissa, int scale, bool negative)
    {
        while (scale > 0 && mantissa % 10 == 0)
        {
            mantissa /= 10;
            scale--;
        }

        var low = (int)(uint)(mantissa & uint.MaxValue);
        var mid = (int)(uint)((mantissa >> 32) & uint.MaxValue);
        var high = (int)(uint)(mantissa >> 64);
        return new decimal(low, mid, high, negative && !mantissa.IsZero, (byte)scale);
    }
}

using System.Numerics;

namespace Plenum.Core.Foundation;

/// <summary>Divisions of whole numbers with their rounding named.</summary>
public static class Ratio
{
    /// <summary>numerator ÷ divisor; no value when the divisor is zero or negative.</summary>
    public static decimal? Of(long numerator, long divisor) =>
        divisor <= 0 ? null : (decimal)numerator / divisor;

    /// <summary>amount × factor ÷ divisor, rounded half away from zero. The divisor is positive.</summary>
    /// <exception cref="OverflowException">The result does not fit.</exception>
    public static long Scaled(long amount, long factor, long divisor)
    {
        var product = (Int128)amount * factor;
        var magnitude = Int128.Abs(product);
        var rounded = (magnitude + (divisor / 2)) / divisor;
        // with an odd divisor there is no tie; with an even one half of it was added, which rounds a tie up
        return (long)(product < 0 ? -rounded : rounded);
    }

    /// <summary>
    /// The product of the factors ÷ the product of the divisors, rounded half away from zero to a whole number; no
    /// value when it has more than 28 digits. The divisors are not zero.
    /// </summary>
    public static decimal? Scaled(ReadOnlySpan<long> factors, ReadOnlySpan<long> divisors)
    {
        BigInteger numerator = 1;
        BigInteger denominator = 1;
        foreach (var factor in factors)
        {
            numerator *= factor;
        }

        foreach (var divisor in divisors)
        {
            denominator *= divisor;
        }

        var rounded = new ExactFraction(numerator, denominator).Rounded();
        return BigInteger.Abs(rounded) < BigInteger.Pow(10, 28) ? (decimal)rounded : null;
    }

    /// <summary>A number cut to so many significant digits, a half going away from zero.</summary>
    public static decimal Significant(decimal value, int digits)
    {
        if (value == 0)
        {
            return 0;
        }

        var whole = (int)Math.Floor(Math.Log10((double)Math.Abs(value))) + 1;
        var decimals = digits - whole;
        if (decimals >= 0)
        {
            return Normal(Math.Round(value, Math.Min(decimals, 28), MidpointRounding.AwayFromZero));
        }

        var unit = 1m;
        for (var i = decimals; i < 0; i++)
        {
            unit *= 10;
        }

        return Math.Round(value / unit, MidpointRounding.AwayFromZero) * unit;
    }

    /// <summary>The same number without zeros at its end.</summary>
    public static decimal Normal(decimal value) => value / 1.0000000000000000000000000000m;
}

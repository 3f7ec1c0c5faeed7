using System.Globalization;
using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>An exact fraction in lowest terms with a positive denominator. No value is said by null.</summary>
public sealed record Ratio
{
    public Ratio(BigInteger numerator, BigInteger denominator)
    {
        if (denominator.IsZero)
        {
            throw new DivideByZeroException("A fraction needs a denominator.");
        }

        var divisor = BigInteger.GreatestCommonDivisor(numerator, denominator) * denominator.Sign;
        Numerator = numerator / divisor;
        Denominator = denominator / divisor;
    }

    public static Ratio Zero { get; } = new(0, 1);

    public static Ratio One { get; } = new(1, 1);

    public BigInteger Numerator { get; }

    public BigInteger Denominator { get; }

    public static Ratio Of(BigInteger whole) => new(whole, 1);

    /// <summary>Reads a decimal with a point, such as <c>-12.50</c>, exactly.</summary>
    public static Ratio Parse(string text)
    {
        var point = text.IndexOf('.', StringComparison.Ordinal);
        var decimals = point < 0 ? 0 : text.Length - point - 1;
        var digits = text.Replace(".", "", StringComparison.Ordinal);
        return new(
            BigInteger.Parse(digits, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture),
            BigInteger.Pow(10, decimals)
        );
    }

    /// <summary>numerator / divisor, or null when the divisor is missing, zero or negative (or the numerator is missing).</summary>
    public static Ratio? Quotient(Ratio? numerator, Ratio? divisor) =>
        numerator is null || divisor is null || divisor <= Zero ? null : numerator / divisor;

    /// <summary>The same for whole numbers.</summary>
    public static Ratio? Quotient(BigInteger numerator, BigInteger divisor) =>
        Quotient(Of(numerator), Of(divisor));

    public static Ratio Min(Ratio a, Ratio b) => a < b ? a : b;

    public static Ratio operator +(Ratio a, Ratio b) =>
        new(
            (a.Numerator * b.Denominator) + (b.Numerator * a.Denominator),
            a.Denominator * b.Denominator
        );

    public static Ratio operator -(Ratio a, Ratio b) =>
        new(
            (a.Numerator * b.Denominator) - (b.Numerator * a.Denominator),
            a.Denominator * b.Denominator
        );

    public static Ratio operator *(Ratio a, Ratio b) =>
        new(a.Numerator * b.Numerator, a.Denominator * b.Denominator);

    public static Ratio operator /(Ratio a, Ratio b) =>
        new(a.Numerator * b.Denominator, a.Denominator * b.Numerator);

    public static bool operator <(Ratio a, Ratio b) => a.CompareTo(b) < 0;

    public static bool operator >(Ratio a, Ratio b) => a.CompareTo(b) > 0;

    public static bool operator <=(Ratio a, Ratio b) => a.CompareTo(b) <= 0;

    public static bool operator >=(Ratio a, Ratio b) => a.CompareTo(b) >= 0;

    private int CompareTo(Ratio other) =>
        (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);

    /// <summary>The largest whole number that is not above the fraction.</summary>
    public BigInteger Floor()
    {
        var quotient = BigInteger.DivRem(Numerator, Denominator, out var rest);
        return rest.Sign < 0 ? quotient - 1 : quotient;
    }

    /// <summary>The smallest whole number that is not below the fraction.</summary>
    public BigInteger Ceiling() => -new Ratio(-Numerator, Denominator).Floor();

    /// <summary>The nearest whole number; halves go away from zero.</summary>
    public BigInteger RoundHalfAway()
    {
        var size = new Ratio(
            (2 * BigInteger.Abs(Numerator)) + Denominator,
            2 * Denominator
        ).Floor();
        return Numerator.Sign < 0 ? -size : size;
    }

    /// <summary>Rounded to a number of decimals, halves away from zero.</summary>
    public Ratio Rounded(int decimals)
    {
        var scale = BigInteger.Pow(10, decimals);
        return new((this * Of(scale)).RoundHalfAway(), scale);
    }

    public override string ToString() =>
        Denominator.IsOne ? $"{Numerator}" : $"{Numerator}/{Denominator}";
}

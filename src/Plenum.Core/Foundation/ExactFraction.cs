using System.Numerics;

namespace Plenum.Core.Foundation;

/// <summary>
/// A ratio of two integers of any size, for the few places where a chain of divisions must stay exact: currency
/// rates, quantities with decimals, forecasts read as a date. Slow beside <see cref="Share"/>. The denominator is
/// positive; the default value is not a number and must not be used.
/// </summary>
public readonly struct ExactFraction : IEquatable<ExactFraction>, IComparable<ExactFraction>
{
    public ExactFraction(BigInteger numerator, BigInteger denominator)
    {
        if (denominator.IsZero)
        {
            throw new DivideByZeroException();
        }

        var divisor = BigInteger.GreatestCommonDivisor(numerator, denominator);
        if (denominator.Sign < 0)
        {
            divisor = -divisor;
        }

        Numerator = numerator / divisor;
        Denominator = denominator / divisor;
    }

    public static ExactFraction Zero { get; } = new(0, 1);

    public static ExactFraction One { get; } = new(1, 1);

    public BigInteger Numerator { get; }

    public BigInteger Denominator { get; }

    public static ExactFraction Of(decimal value)
    {
        Span<int> bits = stackalloc int[4];
        decimal.GetBits(value, bits);
        var magnitude =
            ((BigInteger)(uint)bits[2] << 64)
            | ((BigInteger)(uint)bits[1] << 32)
            | (BigInteger)(uint)bits[0];
        var scale = (bits[3] >> 16) & 0x7F;
        return new ExactFraction(bits[3] < 0 ? -magnitude : magnitude, BigInteger.Pow(10, scale));
    }

    public static ExactFraction operator +(ExactFraction left, ExactFraction right) =>
        new(
            (left.Numerator * right.Denominator) + (right.Numerator * left.Denominator),
            left.Denominator * right.Denominator
        );

    public static ExactFraction operator *(ExactFraction left, ExactFraction right) =>
        new(left.Numerator * right.Numerator, left.Denominator * right.Denominator);

    public static ExactFraction operator /(ExactFraction left, ExactFraction right) =>
        new(left.Numerator * right.Denominator, left.Denominator * right.Numerator);

    public static bool operator ==(ExactFraction left, ExactFraction right) => left.Equals(right);

    public static bool operator !=(ExactFraction left, ExactFraction right) => !left.Equals(right);

    public static bool operator <(ExactFraction left, ExactFraction right) =>
        left.CompareTo(right) < 0;

    public static bool operator >(ExactFraction left, ExactFraction right) =>
        left.CompareTo(right) > 0;

    public static bool operator <=(ExactFraction left, ExactFraction right) =>
        left.CompareTo(right) <= 0;

    public static bool operator >=(ExactFraction left, ExactFraction right) =>
        left.CompareTo(right) >= 0;

    /// <summary>The nearest whole number, a half going away from zero.</summary>
    /// <exception cref="OverflowException">It does not fit into 64 bits.</exception>
    public long RoundHalfAwayFromZero() => (long)Rounded();

    /// <summary>The nearest whole number of any size, a half going away from zero.</summary>
    public BigInteger Rounded()
    {
        var twice = BigInteger.Abs(Numerator) * 2;
        var rounded = (twice + Denominator) / (Denominator * 2);
        return Numerator.Sign < 0 ? -rounded : rounded;
    }

    /// <summary>The largest whole number that is not greater.</summary>
    public long Floor() => (long)BigInteger.Divide(Numerator - Remainder(), Denominator);

    /// <summary>The nearest double.</summary>
    public double ToDouble()
    {
        var shift = Math.Max(
            0,
            (int)Math.Max(BigInteger.Abs(Numerator).GetBitLength(), Denominator.GetBitLength())
                - 900
        );
        if (shift > 0)
        {
            return (double)(Numerator >> shift) / (double)(Denominator >> shift);
        }

        return (double)Numerator / (double)Denominator;
    }

    public int CompareTo(ExactFraction other) =>
        (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);

    public bool Equals(ExactFraction other) =>
        Numerator == other.Numerator && Denominator == other.Denominator;

    public override bool Equals(object? obj) => obj is ExactFraction other && Equals(other);

    public override int GetHashCode() => HashCode.Combine(Numerator, Denominator);

    public override string ToString() => $"{Numerator}/{Denominator}";

    private BigInteger Remainder()
    {
        var remainder = BigInteger.Remainder(Numerator, Denominator);
        return remainder.Sign < 0 ? remainder + Denominator : remainder;
    }
}

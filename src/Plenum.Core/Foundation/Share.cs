using System.Numerics;

namespace Plenum.Core.Foundation;

/// <summary>
/// An exact part of a whole, from 0 to 1: the planned or earned share of a package. Kept as a ratio of integers so
/// that the one rounding of a budget happens in <see cref="Of"/> and nowhere else. The default value is nothing (0).
/// </summary>
public readonly struct Share
{
    private readonly long numerator;
    private readonly long denominator;
    private readonly ExactFraction? exact;

    /// <param name="numerator">0 to <paramref name="denominator"/>.</param>
    /// <param name="denominator">Positive.</param>
    public Share(long numerator, long denominator)
    {
        this.numerator = numerator;
        this.denominator = denominator;
        exact = null;
    }

    private Share(ExactFraction exact)
    {
        this.exact = exact;
        numerator = 0;
        denominator = 1;
    }

    public static Share None => default;

    public static Share Whole => new(1, 1);

    public bool IsNone => exact is { } fraction ? fraction.Numerator.IsZero : numerator == 0;

    /// <summary>The same ratio, cut to the range 0 to 1.</summary>
    public static Share From(ExactFraction fraction)
    {
        if (fraction.Numerator.Sign <= 0)
        {
            return None;
        }

        if (fraction.Numerator >= fraction.Denominator)
        {
            return Whole;
        }

        return fraction.Denominator <= long.MaxValue
            ? new Share((long)fraction.Numerator, (long)fraction.Denominator)
            : new Share(fraction);
    }

    /// <summary>
    /// This share of an amount in minor units, rounded half away from zero to whole minor units. Used on running
    /// totals: the amount of a period is the difference of two of them, so that all periods add up to the whole.
    /// </summary>
    public long Of(long amount)
    {
        if (exact is { } fraction)
        {
            return (fraction * new ExactFraction(amount, 1)).RoundHalfAwayFromZero();
        }

        if (numerator == 0 || amount == 0)
        {
            return 0;
        }

        if (numerator == denominator)
        {
            return amount;
        }

        var magnitude = Math.Abs(amount);
        var high = Math.BigMul((ulong)magnitude, (ulong)numerator, out var low);
        long rounded;
        if (high == 0 && low <= long.MaxValue / 2)
        {
            // half added before the division; no overflow: low is at most a quarter of the range
            rounded = (long)((low + ((ulong)denominator / 2)) / (ulong)denominator);
        }
        else
        {
            var product = new UInt128(high, low);
            rounded = (long)((product + ((ulong)denominator / 2)) / (ulong)denominator);
        }

        return amount < 0 ? -rounded : rounded;
    }

    public ExactFraction ToExactFraction() =>
        exact
        ?? (denominator == 0 ? ExactFraction.Zero : new ExactFraction(numerator, denominator));

    /// <summary>The ratio of two numbers of any size, cut to the range 0 to 1; nothing when the whole is zero.</summary>
    public static Share Ratio(BigInteger part, BigInteger whole) =>
        whole.IsZero ? None : From(new ExactFraction(part, whole));
}

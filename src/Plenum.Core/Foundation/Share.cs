using System.Numerics;
using System.Runtime.CompilerServices;

namespace Plenum.Core.Foundation;

/// <summary>
/// An exact part of a whole, from 0 to 1: the planned or earned share of a package. Kept as a ratio of integers so
/// that the one rounding of a budget happens in <see cref="Of"/> and nowhere else. The default value is nothing (0).
/// </summary>
public readonly struct Share
{
    private readonly long numerator;
    private readonly long denominator;

    // rare, and larger than the rest together: only a reference to it lies in the value
    private readonly Exact? exact;

    /// <param name="numerator">0 to <paramref name="denominator"/>.</param>
    /// <param name="denominator">Positive.</param>
    public Share(long numerator, long denominator)
    {
        this.numerator = numerator;
        this.denominator = denominator;
        exact = null;
    }

    private Share(ExactFraction fraction)
    {
        exact = new Exact(fraction);
        numerator = 0;
        denominator = 1;
    }

    public static Share None => default;

    public static Share Whole => new(1, 1);

    public bool IsNone => exact is null ? numerator == 0 : exact.Fraction.Numerator.IsZero;

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
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public long Of(long amount)
    {
        if (exact is null && amount >= 0 && denominator > 0)
        {
            var high = Math.BigMul((ulong)amount, (ulong)numerator, out var low);
            if (high == 0 && low <= long.MaxValue / 2)
            {
                // half added before the division; no overflow: low is at most a quarter of the range
                return (long)((low + ((ulong)denominator / 2)) / (ulong)denominator);
            }
        }

        return OfAny(amount);
    }

    private long OfAny(long amount)
    {
        if (exact is not null)
        {
            return (exact.Fraction * new ExactFraction(amount, 1)).RoundHalfAwayFromZero();
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
        var product = (UInt128)(ulong)magnitude * (ulong)numerator;
        var rounded = (long)((product + ((ulong)denominator / 2)) / (ulong)denominator);
        return amount < 0 ? -rounded : rounded;
    }

    /// <summary>
    /// Running totals of an amount: for each part of one whole that part's share of it, rounded like
    /// <see cref="Of"/>.
    /// </summary>
    /// <param name="amount">Minor units.</param>
    /// <param name="parts">Each 0 to <paramref name="whole"/>.</param>
    /// <param name="whole">Positive.</param>
    /// <param name="totals">Receives a total for each part.</param>
    public static void Totals(long amount, ReadOnlySpan<long> parts, long whole, Span<long> totals)
    {
        totals = totals[..parts.Length];
        if (amount >= 0 && amount <= long.MaxValue / 2 / whole)
        {
            var half = (ulong)whole / 2;
            for (var i = 0; i < totals.Length; i++)
            {
                // no part is above the whole, so that no product is above half the range
                totals[i] = unchecked(
                    (long)((((ulong)amount * (ulong)parts[i]) + half) / (ulong)whole)
                );
            }

            return;
        }

        for (var i = 0; i < totals.Length; i++)
        {
            totals[i] = new Share(parts[i], whole).Of(amount);
        }
    }

    public ExactFraction ToExactFraction() =>
        exact is not null ? exact.Fraction
        : denominator == 0 ? ExactFraction.Zero
        : new ExactFraction(numerator, denominator);

    /// <summary>The ratio of two numbers of any size, cut to the range 0 to 1; nothing when the whole is zero.</summary>
    public static Share Ratio(BigInteger part, BigInteger whole) =>
        whole.IsZero ? None : From(new ExactFraction(part, whole));

    private sealed record Exact(ExactFraction Fraction);
}

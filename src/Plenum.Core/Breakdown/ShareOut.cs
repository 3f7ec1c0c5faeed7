using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>
/// Divides what a part is allotted by the shares of its work set, by the cumulative method: each activity gets the
/// rounded running total less the rounded running total before, so that the amounts add up exactly to what is allotted
/// times the sum of the shares, rounded once.
/// </summary>
public static class ShareOut
{
    /// <summary>An amount for each share.</summary>
    /// <param name="allotted">Minor units of money or hundredths of hours; <see cref="Cell.NoLong"/> for nothing.</param>
    /// <param name="percents">Shares in per cent, not negative; <see cref="Cell.NoDecimal"/> for none.</param>
    /// <returns><see cref="Cell.NoLong"/> where nothing is allotted or no share is given.</returns>
    /// <exception cref="OverflowException">An amount does not fit.</exception>
    /// <remarks>
    /// Example: 100.00 at 33.33 %, 33.33 % and 33.34 % is 33.33, 33.33 and 33.34. Source of the method: definition of
    /// our own, the same as for planned value by period.
    /// </remarks>
    public static long[] Of(long allotted, ReadOnlySpan<decimal> percents)
    {
        var amounts = new long[percents.Length];
        var running = ExactFraction.Zero;
        var before = 0L;
        for (var i = 0; i < percents.Length; i++)
        {
            if (!Cell.IsGiven(allotted) || !Cell.IsGiven(percents[i]))
            {
                amounts[i] = Cell.NoLong;
                continue;
            }

            running += ExactFraction.Of(percents[i]);
            var total = (running * new ExactFraction(allotted, 100)).RoundHalfAwayFromZero();
            amounts[i] = total - before;
            before = total;
        }

        return amounts;
    }
}

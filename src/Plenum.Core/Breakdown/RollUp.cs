using System.Runtime.Intrinsics;

namespace Plenum.Core.Breakdown;

/// <summary>
/// Totals over the breakdown. Elements stand in depth-first order, so one walk backwards with an accumulator for each
/// level gives the total of every subtree without looking up a parent.
/// </summary>
public static class RollUp
{
    /// <summary>Total of an additive measure at every element.</summary>
    /// <param name="level">Level of each element, 1 for the root, in depth-first order.</param>
    /// <param name="depth">The greatest level.</param>
    /// <param name="own">What each element has by itself.</param>
    /// <param name="totals">Receives own + totals of the children; may be the same span as <paramref name="own"/>.</param>
    /// <exception cref="OverflowException">A total does not fit.</exception>
    public static void Totals(
        ReadOnlySpan<int> level,
        int depth,
        ReadOnlySpan<long> own,
        Span<long> totals
    )
    {
        var below = new long[depth + 2];
        for (var row = level.Length - 1; row >= 0; row--)
        {
            var at = level[row];
            var total = own[row] + below[at + 1];
            below[at + 1] = 0;
            below[at] += total;
            totals[row] = total;
        }
    }

    /// <summary>
    /// Totals of several additive measures at every element, four in one walk: a walk waits for memory and for the
    /// accumulator, and four measures share the wait.
    /// </summary>
    /// <param name="level">Level of each element, 1 for the root, in depth-first order.</param>
    /// <param name="depth">The greatest level.</param>
    /// <param name="own">For each measure what each element has by itself.</param>
    /// <param name="totals">For each measure receives the totals; may be the same arrays as <paramref name="own"/>.</param>
    /// <exception cref="OverflowException">A total does not fit; what was received by then means nothing.</exception>
    public static void Totals(
        ReadOnlySpan<int> level,
        int depth,
        ReadOnlySpan<long[]> own,
        ReadOnlySpan<long[]> totals
    )
    {
        var measure = 0;
        for (; measure + 4 <= own.Length; measure += 4)
        {
            FourTotals(level, depth, own.Slice(measure, 4), totals.Slice(measure, 4));
        }

        for (; measure < own.Length; measure++)
        {
            Totals(level, depth, own[measure], totals[measure]);
        }
    }

    /// <summary>The same, of counts.</summary>
    public static void Totals(
        ReadOnlySpan<int> level,
        int depth,
        ReadOnlySpan<int> own,
        Span<int> totals
    )
    {
        var below = new int[depth + 2];
        for (var row = level.Length - 1; row >= 0; row--)
        {
            var at = level[row];
            var total = own[row] + below[at + 1];
            below[at + 1] = 0;
            below[at] += total;
            totals[row] = total;
        }
    }

    /// <summary>A lane for each measure. Lanes do not stop at an overflow: it is noted and refused at the end.</summary>
    private static void FourTotals(
        ReadOnlySpan<int> level,
        int depth,
        ReadOnlySpan<long[]> own,
        ReadOnlySpan<long[]> totals
    )
    {
        var count = level.Length;
        var own0 = own[0].AsSpan(0, count);
        var own1 = own[1].AsSpan(0, count);
        var own2 = own[2].AsSpan(0, count);
        var own3 = own[3].AsSpan(0, count);
        var totals0 = totals[0].AsSpan(0, count);
        var totals1 = totals[1].AsSpan(0, count);
        var totals2 = totals[2].AsSpan(0, count);
        var totals3 = totals[3].AsSpan(0, count);
        var below = new Vector256<long>[depth + 2];
        var overflow = Vector256<long>.Zero;
        for (var row = count - 1; row >= 0; row--)
        {
            ref var children = ref below[level[row] + 1];
            ref var sisters = ref below[level[row]];
            var self = Vector256.Create(own0[row], own1[row], own2[row], own3[row]);
            var total = self + children;
            var withSisters = sisters + total;
            overflow |= SignOfOverflow(self, children, total);
            overflow |= SignOfOverflow(sisters, total, withSisters);
            children = default;
            sisters = withSisters;
            totals0[row] = total[0];
            totals1[row] = total[1];
            totals2[row] = total[2];
            totals3[row] = total[3];
        }

        if (Vector256.LessThanAny(overflow, Vector256<long>.Zero))
        {
            throw new OverflowException();
        }
    }

    /// <summary>Negative in the lanes where two numbers of one sign have a sum of the other.</summary>
    private static Vector256<long> SignOfOverflow(
        Vector256<long> left,
        Vector256<long> right,
        Vector256<long> sum
    ) => (left ^ sum) & (right ^ sum);
}

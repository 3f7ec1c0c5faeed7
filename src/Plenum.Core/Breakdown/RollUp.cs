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
}

using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Accounts;

/// <summary>Sees planned and earned value of one row of a cut over all periods.</summary>
/// <param name="row">The row; −1 for the total of the cut.</param>
/// <param name="plannedChanges">What planned value changes by in each period, minor units.</param>
/// <param name="earnedChanges">What earned value changes by in each period, minor units.</param>
public delegate void RowSeries(
    int row,
    ReadOnlySpan<long> plannedChanges,
    ReadOnlySpan<long> earnedChanges
);

/// <summary>
/// Walks the rows of a cut from the last to the first with planned and earned value over all periods. One array for
/// each level of the cut is all that is held, however many rows there are.
/// </summary>
public static class CutSeries
{
    public static void Walk(TimePhased source, Cut cut, RowSeries see)
    {
        if (cut.ByCostElement)
        {
            WalkCostElements(source, cut, see);
            return;
        }

        var (first, end) = cut.CostElementRange;
        var packagesOf = RowGroups.By(cut.RowOfPackage, cut.Rows.Count);
        var deepest = 0;
        foreach (var row in cut.Rows)
        {
            deepest = Math.Max(deepest, row.Level);
        }

        var planned = Levels(deepest + 2, source.Periods.Count);
        var earned = Levels(deepest + 2, source.Periods.Count);
        for (var row = cut.Rows.Count - 1; row >= 0; row--)
        {
            var level = cut.Rows[row].Level;
            foreach (var package in packagesOf[row])
            {
                for (var costElement = first; costElement < end; costElement++)
                {
                    var atom = (package * CostElements.Count) + costElement;
                    source.Planned.AddChangesTo(atom, planned[level + 1]);
                    source.Earned.AddChangesTo(atom, earned[level + 1]);
                }
            }

            see(row, planned[level + 1], earned[level + 1]);
            CarryUp(planned, level);
            CarryUp(earned, level);
        }

        see(-1, planned[0], earned[0]);
    }

    private static void WalkCostElements(TimePhased source, Cut cut, RowSeries see)
    {
        var planned = Levels(CostElements.Count + 1, source.Periods.Count);
        var earned = Levels(CostElements.Count + 1, source.Periods.Count);
        for (var package = 0; package < cut.RowOfPackage.Length; package++)
        {
            if (cut.RowOfPackage[package] < 0)
            {
                continue;
            }

            for (var costElement = 0; costElement < CostElements.Count; costElement++)
            {
                var atom = (package * CostElements.Count) + costElement;
                source.Planned.AddChangesTo(atom, planned[costElement + 1]);
                source.Earned.AddChangesTo(atom, earned[costElement + 1]);
            }
        }

        for (var row = cut.Rows.Count - 1; row >= 0; row--)
        {
            if (row >= CostElements.Count)
            {
                see(row, new long[source.Periods.Count], new long[source.Periods.Count]);
                continue;
            }

            see(row, planned[row + 1], earned[row + 1]);
            Add(planned[row + 1], planned[0]);
            Add(earned[row + 1], earned[0]);
        }

        see(-1, planned[0], earned[0]);
    }

    private static long[][] Levels(int count, int periods)
    {
        var levels = new long[count][];
        for (var level = 0; level < count; level++)
        {
            levels[level] = new long[periods];
        }

        return levels;
    }

    private static void CarryUp(long[][] levels, int level)
    {
        Add(levels[level + 1], levels[level]);
        levels[level + 1].AsSpan().Clear();
    }

    private static void Add(long[] from, long[] to)
    {
        for (var period = 0; period < from.Length; period++)
        {
            to[period] += from[period];
        }
    }
}

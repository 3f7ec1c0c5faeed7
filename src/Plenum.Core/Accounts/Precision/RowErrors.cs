using Plenum.Core.Foundation.Tables;
using Plenum.Core.Status;

namespace Plenum.Core.Accounts.Precision;

/// <summary>
/// Errors of earned value for the rows of a cut at a period's end. What follows another package (apportioned effort) is
/// off by the same share as its base, so that within a row the two are one part.
/// </summary>
public static class RowErrors
{
    /// <returns>One for each row of the cut, parents with all below them; and the total of all.</returns>
    public static (RowError[] Rows, RowError Total) At(
        TimePhased source,
        OpenShares shares,
        Cut cut,
        int period
    )
    {
        var rows = new Dictionary<int, double>[cut.Rows.Count];
        Dictionary<int, double> all = [];
        Dictionary<int, OpenShare> open = [];
        var parents = Parents(cut);
        for (var package = 0; period >= 0 && package < cut.RowOfPackage.Length; package++)
        {
            var budget = source.Baseline.TotalBudget[package];
            if (cut.RowOfPackage[package] < 0 || budget == 0)
            {
                continue;
            }

            var root = shares.RootOf(package);
            if (root < 0)
            {
                continue;
            }

            if (!open.TryGetValue(root, out var share))
            {
                share = shares.At(root, period);
                if (share.Worst == 0)
                {
                    continue;
                }

                open[root] = share;
            }

            Add(all, root, budget);
            if (cut.ByCostElement)
            {
                for (var costElement = 0; costElement < CostElements.Count; costElement++)
                {
                    var atom = (package * CostElements.Count) + costElement;
                    Add(rows[costElement] ??= [], root, source.Baseline.Budget[atom]);
                }
            }
            else
            {
                for (var row = cut.RowOfPackage[package]; row >= 0; row = parents[row])
                {
                    Add(rows[row] ??= [], root, budget);
                }
            }
        }

        return (
            Array.ConvertAll(rows, budgets => Of(budgets, open)),
            Of(all.Count == 0 ? null : all, open)
        );
    }

    private static RowError Of(Dictionary<int, double>? budgets, Dictionary<int, OpenShare> open) =>
        budgets is null
            ? RowError.Nothing
            : RowError.Of(
                budgets
                    .Where(pair => pair.Value != 0)
                    .Select(pair =>
                        (
                            pair.Key,
                            new StatusError(
                                open[pair.Key].Bias * pair.Value,
                                open[pair.Key].Spread * pair.Value,
                                open[pair.Key].Worst * pair.Value
                            )
                        )
                    )
            );

    private static void Add(Dictionary<int, double> budgets, int root, long budget) =>
        budgets[root] = budgets.GetValueOrDefault(root) + budget;

    private static int[] Parents(Cut cut)
    {
        var parents = new int[cut.Rows.Count];
        List<int> above = [];
        for (var row = 0; row < parents.Length; row++)
        {
            var level = cut.Rows[row].Level;
            if (above.Count > level)
            {
                above.RemoveRange(level, above.Count - level);
            }

            parents[row] = level == 0 || above.Count == 0 ? -1 : above[^1];
            while (above.Count <= level)
            {
                above.Add(row);
            }
        }

        return parents;
    }
}

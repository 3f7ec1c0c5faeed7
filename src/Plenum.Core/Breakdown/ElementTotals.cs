using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>
/// Totals and gaps at every element. The gap of an element with children is what it was allotted less what its
/// children were allotted, or have as budget where they were allotted nothing. Positive: part of it belongs to no
/// child; negative: its children are more than the whole. A childless branch that is no package is a gap of its full
/// size.
/// </summary>
public sealed class ElementTotals
{
    /// <param name="tree">The breakdown.</param>
    /// <param name="allotted">Money or hours given from above, <see cref="Cell.NoLong"/> where none were.</param>
    /// <param name="packageBudget">Budget of each package, in the same units.</param>
    /// <exception cref="OverflowException">A total does not fit.</exception>
    public ElementTotals(
        ElementTree tree,
        ReadOnlySpan<long> allotted,
        ReadOnlySpan<long> packageBudget
    )
    {
        var own = new long[tree.Count];
        for (var package = 0; package < packageBudget.Length; package++)
        {
            own[tree.PackageRows[package]] = packageBudget[package];
        }

        RollUp.Totals(tree.Level, tree.Depth, own, own);
        Budget = own;
        Allotted = allotted.ToArray();
        Gap = Gaps(tree);
    }

    /// <summary>Sum of the packages' budgets at every element.</summary>
    public long[] Budget { get; }

    /// <summary>What each element was given from above; <see cref="Cell.NoLong"/> where nothing was said.</summary>
    public long[] Allotted { get; }

    /// <summary>Gap of each element; <see cref="Cell.NoLong"/> where there is nothing to compare.</summary>
    public long[] Gap { get; }

    /// <summary>At every element its budget; where it has none, what it was allotted, or 0.</summary>
    public long[] BudgetOrAllotted()
    {
        var amounts = new long[Budget.Length];
        for (var row = 0; row < amounts.Length; row++)
        {
            amounts[row] =
                Budget[row] != 0 ? Budget[row]
                : Cell.IsGiven(Allotted[row]) ? Allotted[row]
                : 0;
        }

        return amounts;
    }

    private long[] Gaps(ElementTree tree)
    {
        var children = new long[tree.Count];
        var gaps = new long[tree.Count];
        for (var row = tree.Count - 1; row >= 0; row--)
        {
            var isPackage = tree.PackageOfRow[row] >= 0;
            gaps[row] =
                isPackage || Allotted[row] == Cell.NoLong
                    ? Cell.NoLong
                    : Allotted[row] - children[row];
            if (tree.Parent[row] is var parent and >= 0)
            {
                children[parent] += Allotted[row] == Cell.NoLong ? Budget[row] : Allotted[row];
            }
        }

        return gaps;
    }
}

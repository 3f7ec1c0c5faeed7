using Plenum.Core.Foundation;
using Plenum.Core.Status;

namespace Plenum.Core.Accounts.Precision;

/// <summary>Whether the breakdown is detailed enough to know the status of an account at a period's end.</summary>
/// <param name="row">Row of the cut by account.</param>
/// <param name="period">Index of the period.</param>
/// <param name="budget">The account's budget, minor units.</param>
/// <param name="error">What is not known of its earned value, with its parts.</param>
/// <param name="limit">The variance threshold, minor units.</param>
public sealed class PrecisionVerdict(int row, int period, long budget, RowError error, double limit)
{
    private IReadOnlyList<ErrorPart>? split;

    public int Row => row;

    public int Period => period;

    public long Budget => budget;

    public RowError Error => error;

    /// <summary>Size of the error as a share of the account's budget; without value for an account without budget.</summary>
    public double? Precision => budget > 0 ? error.Error.Size / budget : null;

    public bool IsTooCoarse => error.Count > 0 && error.Error.Size >= limit;

    /// <summary>
    /// If it is too coarse, the packages to split or to measure otherwise, in order of what they buy, until the rest is
    /// detailed enough.
    /// </summary>
    public IReadOnlyList<ErrorPart> Split => split ??= error.ToKnowUntil(limit);
}

/// <summary>
/// The verdict for every account and period: detailed enough while the size of the error stays under the variance
/// threshold. Source: own definition.
/// </summary>
public sealed class AccountPrecision
{
    private readonly RowParts parts;
    private readonly long[] budgetOf;
    private readonly Fraction threshold;

    /// <param name="source">The project over time.</param>
    /// <param name="shares">What techniques leave open.</param>
    /// <param name="accounts">The cut by account.</param>
    /// <param name="threshold">The variance threshold as a share of an account's budget.</param>
    public AccountPrecision(TimePhased source, OpenShares shares, Cut accounts, Fraction threshold)
    {
        parts = new RowParts(source, shares, accounts);
        budgetOf = Budgets(source, accounts);
        this.threshold = threshold;
    }

    /// <summary>The verdict on an account, by its row of the cut, at a period's end.</summary>
    public PrecisionVerdict At(int row, int period) =>
        new(row, period, budgetOf[row], parts.At(row, period), LimitOf(budgetOf[row], threshold));

    /// <summary>The verdicts on all rows of the cut at a period's end.</summary>
    public PrecisionVerdict[] At(int period)
    {
        var verdicts = new PrecisionVerdict[budgetOf.Length];
        for (var row = 0; row < verdicts.Length; row++)
        {
            verdicts[row] = At(row, period);
        }

        return verdicts;
    }

    /// <summary>Budget of each row of a flat cut, minor units.</summary>
    public static long[] Budgets(TimePhased source, Cut accounts)
    {
        var budgets = new long[accounts.Rows.Count];
        for (var package = 0; package < accounts.RowOfPackage.Length; package++)
        {
            if (accounts.RowOfPackage[package] is var row and >= 0)
            {
                budgets[row] += source.Baseline.TotalBudget[package];
            }
        }

        return budgets;
    }

    /// <summary>Level of effort's share of the budget of each row of a flat cut; it earns what was planned and is left out.</summary>
    public static double[] LevelOfEffortShares(TimePhased source, Cut accounts)
    {
        var budgets = Budgets(source, accounts);
        var effort = new double[budgets.Length];
        for (var package = 0; package < accounts.RowOfPackage.Length; package++)
        {
            if (
                accounts.RowOfPackage[package] is var row and >= 0
                && source.Baseline.Technique[package] == Breakdown.TechniqueCodec.LevelOfEffort
                && budgets[row] > 0
            )
            {
                effort[row] += (double)source.Baseline.TotalBudget[package] / budgets[row];
            }
        }

        return effort;
    }

    private static double LimitOf(long budget, Fraction threshold) =>
        (double)budget * threshold.BasisPoints / Fraction.Whole;
}

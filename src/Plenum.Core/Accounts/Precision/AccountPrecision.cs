using Plenum.Core.Foundation;
using Plenum.Core.Status;

namespace Plenum.Core.Accounts.Precision;

/// <summary>Whether the breakdown is detailed enough to know the status of an account at a period's end.</summary>
/// <param name="Row">Row of the cut by account.</param>
/// <param name="Period">Index of the period.</param>
/// <param name="Budget">The account's budget, minor units.</param>
/// <param name="Error">What is not known of its earned value, with its parts.</param>
/// <param name="Split">
/// If it is too coarse, the packages to split or to measure otherwise, in order of what they buy, until the rest is
/// detailed enough.
/// </param>
public sealed record PrecisionVerdict(
    int Row,
    int Period,
    long Budget,
    RowError Error,
    IReadOnlyList<ErrorPart> Split
)
{
    /// <summary>Size of the error as a share of the account's budget; without value for an account without budget.</summary>
    public double? Precision => Budget > 0 ? Error.Error.Size / Budget : null;

    public bool IsTooCoarse => Split.Count > 0;
}

/// <summary>
/// The verdict for every account and period: detailed enough while the size of the error stays under the variance
/// threshold. Source: own definition.
/// </summary>
public static class AccountPrecision
{
    /// <param name="source">The project over time.</param>
    /// <param name="shares">What techniques leave open.</param>
    /// <param name="accounts">The cut by account.</param>
    /// <param name="threshold">The variance threshold as a share of an account's budget.</param>
    /// <param name="firstPeriod">From this period.</param>
    /// <param name="lastPeriod">To this period, inclusive.</param>
    /// <returns>By period and row of the cut.</returns>
    public static IEnumerable<PrecisionVerdict[]> Of(
        TimePhased source,
        OpenShares shares,
        Cut accounts,
        Fraction threshold,
        int firstPeriod,
        int lastPeriod
    )
    {
        var budgets = Budgets(source, accounts);
        for (var period = firstPeriod; period <= lastPeriod; period++)
        {
            var (rows, _) = RowErrors.At(source, shares, accounts, period);
            yield return
            [
                .. rows.Select(
                    (error, row) =>
                        new PrecisionVerdict(
                            row,
                            period,
                            budgets[row],
                            error,
                            ToSplit(error, LimitOf(budgets[row], threshold))
                        )
                ),
            ];
        }
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

    private static List<ErrorPart> ToSplit(RowError error, double limit)
    {
        List<ErrorPart> split = [];
        var rest = error;
        while (rest.Parts.Count > 0 && rest.Error.Size >= limit)
        {
            // what a part buys depends on what is left, so the next is asked for anew
            split.Add(rest.Parts[0]);
            rest = RowError.Of(rest.Parts.Skip(1).Select(part => (part.Package, part.Error)));
        }

        return split;
    }
}

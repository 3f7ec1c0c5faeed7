using Plenum.Core;
using Plenum.Core.Accounts;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Questions;

/// <summary>How have the cost and schedule indices of each control account moved over the last periods?</summary>
/// <param name="At">Up to the last period end on or before it; null for the status date.</param>
/// <param name="Periods">Number of periods, at least 1.</param>
public sealed record TrendQuestion(DateOnly? At, int Periods)
{
    public TrendAnswer Ask(Project project)
    {
        var source = project.TimePhased;
        var last = At is { } date ? project.Periods.LastEndedBy(date) : project.CurrentPeriod();
        var first = Math.Max(0, last - Periods + 1);
        Dictionary<string, IReadOnlyList<TrendPoint>> rows = new(StringComparer.Ordinal);
        if (last < 0)
        {
            return new TrendAnswer(rows);
        }

        var cut = project.CutsUnder(-1).ByAccount();
        var actual = ActualOfAccounts(project);
        CutSeries.Walk(
            source,
            cut,
            (row, planned, earned) =>
            {
                if (
                    row >= 0
                    && project.Placement.Accounts.RowOfCode(cut.Rows[row].Code)
                        is var account
                            and >= 0
                )
                {
                    rows[cut.Rows[row].Code] = Points(
                        planned,
                        earned,
                        actual[account],
                        first,
                        last
                    );
                }
            }
        );
        return new TrendAnswer(rows);
    }

    /// <summary>What actual cost changes by in each period, for each account, minor units.</summary>
    private static long[][] ActualOfAccounts(Project project)
    {
        var source = project.TimePhased;
        var placement = project.Placement;
        var actual = new long[placement.Accounts.Count][];
        for (var account = 0; account < actual.Length; account++)
        {
            actual[account] = new long[project.Periods.Count];
            for (var costElement = 0; costElement < CostElements.Count; costElement++)
            {
                source.Actual.Accounts.AddChangesTo(
                    (account * CostElements.Count) + costElement,
                    actual[account]
                );
            }
        }

        for (var package = 0; package < placement.AccountOfPackage.Length; package++)
        {
            if (placement.AccountOfPackage[package] is var account and >= 0)
            {
                for (var costElement = 0; costElement < CostElements.Count; costElement++)
                {
                    source.Actual.Packages.AddChangesTo(
                        (package * CostElements.Count) + costElement,
                        actual[account]
                    );
                }
            }
        }

        return actual;
    }

    private static TrendPoint[] Points(
        ReadOnlySpan<long> planned,
        ReadOnlySpan<long> earned,
        long[] actual,
        int first,
        int last
    )
    {
        var points = new TrendPoint[last - first + 1];
        var (plan, earn, spent) = (0L, 0L, 0L);
        for (var period = 0; period <= last; period++)
        {
            plan += planned[period];
            earn += earned[period];
            spent += actual[period];
            if (period >= first)
            {
                points[period - first] = new TrendPoint(
                    Ratio.Of(earn, spent),
                    Ratio.Of(earn, plan)
                );
            }
        }

        return points;
    }
}

/// <param name="Rows">By account, oldest first.</param>
public sealed record TrendAnswer(IReadOnlyDictionary<string, IReadOnlyList<TrendPoint>> Rows);

/// <param name="Cost">CPI to date at the period's end; null where it has no value.</param>
/// <param name="Schedule">SPI to date at the period's end; null where it has no value.</param>
public readonly record struct TrendPoint(decimal? Cost, decimal? Schedule);

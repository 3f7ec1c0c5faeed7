using System.Globalization;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.People;

namespace Plenum.Core.Baseline;

/// <summary>What must hold for packages, their milestones and their planned amounts.</summary>
public sealed class BaselineRules(
    PackageBaseline baseline,
    PeriodTimeline periods,
    Currency currency,
    IRowFaults faults
)
{
    private readonly MoneyText money = new(currency);

    /// <summary>Dates in order; apportioned effort has a base with a budget and does not follow itself.</summary>
    public void CheckPackages()
    {
        for (var package = 0; package < baseline.Count; package++)
        {
            if (baseline.RowOf(package) is not (var row and >= 0))
            {
                continue;
            }

            if (baseline.IsScheduled(package) && baseline.Finish[package] < baseline.Start[package])
            {
                Refuse(
                    row,
                    PackageTable.Finish,
                    "a finish on or after the start",
                    $"package {baseline.Code(package)} finishes before it starts"
                );
            }

            CheckBase(package, row);
        }
    }

    /// <summary>The account that a package names stands on the package or on an ancestor of it.</summary>
    public void CheckNamedAccounts(AccountPlacement placement)
    {
        for (var package = 0; package < baseline.Count; package++)
        {
            if (baseline.NamedAccount[package] is not (var id and > 0))
            {
                continue;
            }

            var account = placement.Accounts.RowOf(id);
            if (
                account >= 0
                && !placement.Covers(baseline.Tree, account, baseline.Tree.PackageRows[package])
            )
            {
                Refuse(
                    baseline.RowOf(package),
                    PackageTable.Account,
                    "an account on the package or on an element above it",
                    $"account {placement.Accounts.Codes[account]} stands on "
                        + $"{baseline.Tree.Code(placement.ElementRow[account])}, which is not above {baseline.Code(package)}"
                );
            }
        }
    }

    /// <summary>Weights are not all zero; planned dates lie within the baseline dates.</summary>
    public void CheckMilestones()
    {
        var table = baseline.Milestones;
        var weights = table.Decimals(MilestoneTable.Weight);
        var planned = table.Ints(MilestoneTable.Planned);
        for (var package = 0; package < baseline.Count; package++)
        {
            var rows = baseline.MilestonesOf[package];
            decimal all = 0;
            foreach (var row in rows)
            {
                all += weights[row];
                if (
                    planned[row] != Cell.NoInt
                    && baseline.IsScheduled(package)
                    && (
                        planned[row] < baseline.Start[package]
                        || planned[row] > baseline.Finish[package]
                    )
                )
                {
                    faults.Add(
                        table,
                        row,
                        MilestoneTable.Planned,
                        $"a date from {Day(baseline.Start[package])} to {Day(baseline.Finish[package])}",
                        $"planned on {Day(planned[row])}, outside the baseline dates of package {baseline.Code(package)}"
                    );
                }
            }

            if (rows.Length > 0 && all == 0)
            {
                faults.Add(
                    table,
                    rows[0],
                    MilestoneTable.Weight,
                    "at least one weight above zero",
                    $"all milestones of package {baseline.Code(package)} weigh nothing"
                );
            }
        }
    }

    /// <summary>Amounts by period lie in periods that touch the package and add up to its budget.</summary>
    public void CheckPeriodAmounts()
    {
        for (var package = 0; package < baseline.Count; package++)
        {
            var rows = baseline.PeriodAmountsOf[package];
            var given = baseline.Spread[package] == PackageTable.Periods;
            if (rows.Length > 0 && !given)
            {
                faults.Add(
                    baseline.BudgetPeriods,
                    rows[0],
                    BudgetPeriodTable.Package,
                    "a package whose spread is periods",
                    $"the spread of package {baseline.Code(package)} is "
                        + PackageTable.Spreads.Format(baseline.Spread[package])
                        + ", so its amounts by period would not count"
                );
            }
            else if (given)
            {
                CheckPlaces(package, rows);
                CheckSums(package, rows);
            }
        }
    }

    /// <summary>A posting moves budget from one account of the ledger to another.</summary>
    public static void CheckPostings(Table postings, IRowFaults faults)
    {
        var from = postings.Ints(PostingTable.From);
        var to = postings.Ints(PostingTable.To);
        for (var row = 0; row < postings.Count; row++)
        {
            if (from[row] == to[row] && from[row] != Cell.NoInt)
            {
                faults.Add(
                    postings,
                    row,
                    PostingTable.To,
                    "another account than the one it comes from",
                    "the budget comes from where it goes"
                );
            }
        }
    }

    private static string Day(int dayNumber) =>
        DateOnly.FromDayNumber(dayNumber).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private void CheckBase(int package, int row)
    {
        var apportioned = baseline.Technique[package] == TechniqueCodec.Apportioned;
        var basePackage = baseline.Base[package];
        if (!apportioned)
        {
            if (basePackage >= 0)
            {
                Refuse(
                    row,
                    PackageTable.Base,
                    "a base only for apportioned effort",
                    $"package {baseline.Code(package)} names a base but its technique is not apportioned"
                );
            }

            return;
        }

        if (basePackage < 0)
        {
            Refuse(
                row,
                PackageTable.Base,
                "the package that the effort follows",
                $"apportioned package {baseline.Code(package)} names no base"
            );
        }
        else if (ApportionedEffort.Ring(baseline, package) is { } ring)
        {
            // once, at its first package
            if (ring.Min() == package)
            {
                Refuse(
                    row,
                    PackageTable.Base,
                    "a base that does not follow the package itself",
                    "the bases form a ring: "
                        + string.Join(" follows ", ring.Append(package).Select(baseline.Code))
                );
            }
        }
        else if (baseline.TotalBudget[basePackage] == 0)
        {
            Refuse(
                row,
                PackageTable.Base,
                "a base with a budget",
                $"package {baseline.Code(package)} follows {baseline.Code(basePackage)}, which has no budget"
            );
        }
    }

    private void CheckPlaces(int package, ReadOnlySpan<int> rows)
    {
        if (!baseline.IsScheduled(package))
        {
            return;
        }

        var periodIds = baseline.BudgetPeriods.Ints(BudgetPeriodTable.Period);
        foreach (var row in rows)
        {
            var period = periods.IndexOf(periodIds[row]);
            var begin = periods.Begin(period)?.DayNumber ?? int.MinValue;
            if (
                periods.End(period).DayNumber < baseline.Start[package]
                || begin > baseline.Finish[package]
            )
            {
                faults.Add(
                    baseline.BudgetPeriods,
                    row,
                    BudgetPeriodTable.Period,
                    $"a period that touches {Day(baseline.Start[package])} to {Day(baseline.Finish[package])}",
                    $"period {periods.Codes[period]} does not touch the baseline dates of package {baseline.Code(package)}"
                );
            }
        }
    }

    private void CheckSums(int package, ReadOnlySpan<int> rows)
    {
        var amounts = baseline.BudgetPeriods.Longs(BudgetPeriodTable.Amount);
        var costElements = baseline.BudgetPeriods.Ints(BudgetPeriodTable.CostElement);
        Span<long> sums = stackalloc long[CostElements.Count];
        var whole = 0L;
        var byCostElement = 0;
        foreach (var row in rows)
        {
            whole += amounts[row];
            if (costElements[row] != Cell.NoInt)
            {
                byCostElement++;
                sums[costElements[row]] += amounts[row];
            }
        }

        if (byCostElement > 0 && byCostElement < rows.Length)
        {
            RefuseAmounts(
                rows,
                "a cost element in every row of the package, or in none",
                "some rows name a cost element and some do not"
            );
        }
        else if (whole != baseline.TotalBudget[package])
        {
            RefuseAmounts(
                rows,
                "amounts that add up to the package's budget",
                rows.Length == 0
                    ? $"there are none, and the budget is {money.Of(baseline.TotalBudget[package])}"
                    : $"they add up to {money.Of(whole)} and the budget is {money.Of(baseline.TotalBudget[package])}"
            );
        }
        else if (byCostElement > 0)
        {
            for (var costElement = 0; costElement < CostElements.Count; costElement++)
            {
                var budget = baseline.Budget[(package * CostElements.Count) + costElement];
                if (sums[costElement] != budget)
                {
                    RefuseAmounts(
                        rows,
                        "amounts that add up to the budget of each cost element",
                        $"{CostElements.Words.Format(costElement)} adds up to {money.Of(sums[costElement])} and its budget is {money.Of(budget)}"
                    );
                }
            }
        }

        void RefuseAmounts(ReadOnlySpan<int> at, string expected, string why)
        {
            var message = $"amounts by period of package {baseline.Code(package)}: {why}";
            if (at.Length > 0)
            {
                faults.Add(
                    baseline.BudgetPeriods,
                    at[^1],
                    BudgetPeriodTable.Amount,
                    expected,
                    message
                );
            }
            else
            {
                Refuse(baseline.RowOf(package), PackageTable.Spread, expected, message);
            }
        }
    }

    private void Refuse(int row, ColumnDefinition column, string expected, string message) =>
        faults.Add(baseline.Packages, row, column, expected, message);
}

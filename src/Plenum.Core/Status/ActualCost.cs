using Plenum.Core.Baseline;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Status;

/// <summary>
/// Actual cost over the periods, of packages and of what is charged to control accounts as such, by cost element, in
/// minor units of the project's currency. An accrual counts in its period and is reversed in the next, unless
/// accruals stay as they are booked. Source: SAE EIA-748 guidelines 16 to 18.
/// </summary>
public sealed class ActualCost
{
    private ActualCost(PeriodSeries packages, PeriodSeries accounts)
    {
        Packages = packages;
        Accounts = accounts;
    }

    /// <summary>By atom: package × 5 + cost element.</summary>
    public PeriodSeries Packages { get; }

    /// <summary>By account row × 5 + cost element.</summary>
    public PeriodSeries Accounts { get; }

    public static ActualCost Of(
        PackageBaseline baseline,
        Table accounts,
        PeriodTimeline periods,
        Table actuals,
        bool accrualsReversed
    )
    {
        var ledger = new Ledger(
            baseline.Count,
            accounts,
            periods.Count,
            actuals.Count + actuals.Ints(ActualTable.Kind).Count(ActualTable.Accrual),
            accrualsReversed
        );
        var charges = actuals.Ints(ActualTable.Charge);
        var periodIds = actuals.Ints(ActualTable.Period);
        var costElements = actuals.Ints(ActualTable.CostElement);
        var amounts = actuals.Longs(ActualTable.Converted);
        var kinds = actuals.Ints(ActualTable.Kind);
        for (var row = 0; row < charges.Length; row++)
        {
            var (target, id) = ActualTable.Charge.DecodeReference(charges[row]);
            var owner =
                target == ActualTable.ChargedPackage
                    ? baseline.Tree.PackageOfId(id)
                    : accounts.RowOf(id);
            if (owner >= 0)
            {
                ledger.Book(
                    target == ActualTable.ChargedPackage,
                    (owner * CostElements.Count) + costElements[row],
                    periods.IndexOf(periodIds[row]),
                    amounts[row],
                    kinds[row] == ActualTable.Accrual
                );
            }
        }

        return new ActualCost(ledger.Packages.Build(), ledger.Accounts.Build());
    }

    private sealed class Ledger(
        int packages,
        Table accounts,
        int periodCount,
        int mostBookings,
        bool accrualsReversed
    )
    {
        public SeriesSums Packages { get; } =
            new(packages * CostElements.Count, periodCount, mostBookings);

        public SeriesSums Accounts { get; } =
            new(accounts.Count * CostElements.Count, periodCount, 0);

        public void Book(bool toPackage, int series, int period, long amount, bool accrual)
        {
            var sums = toPackage ? Packages : Accounts;
            sums.Add(series, period, amount);
            if (accrual && accrualsReversed && period + 1 < periodCount)
            {
                sums.Add(series, period + 1, -amount);
            }
        }
    }
}

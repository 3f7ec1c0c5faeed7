using Plenum.Core.Baseline;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Status;

/// <summary>
/// Remaining cost of a package at a period's end, in minor units: if cost still to come was reported, the last report
/// less what was booked since, but not below 0; otherwise 0 when finished, else budget − earned value. Source: SAE
/// EIA-748 guideline 27 (estimate from performance, commitments and outlook); the rule is defined in docs/formulas.md.
/// </summary>
public static class CostToCome
{
    /// <param name="baseline">The baseline.</param>
    /// <param name="reports">What was reported.</param>
    /// <param name="actual">Actual cost by atom.</param>
    /// <param name="package">Package number.</param>
    /// <param name="period">Index of the period; −1 before the first.</param>
    /// <param name="earned">Earned value of the package by cost element, to date.</param>
    /// <param name="remaining">Receives the remaining cost by cost element.</param>
    public static void Fill(
        PackageBaseline baseline,
        PackageStatus reports,
        PeriodSeries actual,
        int package,
        int period,
        ReadOnlySpan<long> earned,
        Span<long> remaining
    )
    {
        var budget = baseline.Budget.AsSpan(package * CostElements.Count, CostElements.Count);
        var (reportedIn, reported) = reports.CostToComeAt(package, period);
        if (reportedIn < 0)
        {
            var finished = Cell.IsGiven(reports.FinishedAt(package, period));
            for (var costElement = 0; costElement < CostElements.Count; costElement++)
            {
                remaining[costElement] = finished ? 0 : budget[costElement] - earned[costElement];
            }

            return;
        }

        var bookedSince = 0L;
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            var atom = (package * CostElements.Count) + costElement;
            bookedSince += actual.At(atom, period) - actual.At(atom, reportedIn);
        }

        Divide(Math.Max(0, reported - bookedSince), budget, earned, remaining);
    }

    /// <summary>
    /// Divides an amount like budget − earned value, like the budget where nothing is left to earn, and to "other"
    /// where there is no budget; the parts add up to the amount.
    /// </summary>
    private static void Divide(
        long amount,
        ReadOnlySpan<long> budget,
        ReadOnlySpan<long> earned,
        Span<long> remaining
    )
    {
        var left = 0L;
        var whole = 0L;
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            left += budget[costElement] - earned[costElement];
            whole += budget[costElement];
        }

        remaining.Clear();
        if (whole == 0)
        {
            remaining[CostElements.Other] = amount;
            return;
        }

        var running = 0L;
        var given = 0L;
        for (var costElement = 0; costElement < CostElements.Count; costElement++)
        {
            running += left == 0 ? budget[costElement] : budget[costElement] - earned[costElement];
            var total = Ratio.Scaled(amount, running, left == 0 ? whole : left);
            remaining[costElement] = total - given;
            given = total;
        }
    }
}

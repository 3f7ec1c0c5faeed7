using Plenum.Core.Accounts;
using Plenum.Core.Foundation;

namespace Plenum.Core.Forecast;

/// <summary>
/// Estimates at completion by index, each taken at the row's own level and never summed, in minor units, rounded half
/// away from zero; kept as whole decimals, since a small index makes them larger than any budget. No value where an
/// index that it uses has none or is zero, or beyond 28 digits. Source: GAO-20-195G ch. 18.
/// </summary>
public static class IndexForecasts
{
    /// <summary>Remaining work at its budget: AC + BAC − EV.</summary>
    public static long AtBudget(in MeasureSums sums) =>
        sums.ActualCost + sums.BudgetAtCompletion - sums.EarnedValue;

    /// <summary>Remaining work at the cost efficiency so far: AC + (BAC − EV) ÷ CPI. Usually the low end.</summary>
    public static decimal? AtCostIndex(in MeasureSums sums) =>
        sums.ActualCost <= 0 || sums.EarnedValue <= 0
            ? null
            : sums.ActualCost
                + Ratio.Scaled(
                    [sums.BudgetAtCompletion - sums.EarnedValue, sums.ActualCost],
                    [sums.EarnedValue]
                );

    /// <summary>AC + (BAC − EV) ÷ (CPI × SPI). Usually the high end.</summary>
    public static decimal? AtCostAndScheduleIndex(in MeasureSums sums) =>
        sums.ActualCost <= 0 || sums.EarnedValue <= 0 || sums.PlannedValue <= 0
            ? null
            : sums.ActualCost
                + Ratio.Scaled(
                    [
                        sums.BudgetAtCompletion - sums.EarnedValue,
                        sums.ActualCost,
                        sums.PlannedValue,
                    ],
                    [sums.EarnedValue, sums.EarnedValue]
                );

    /// <summary>AC + (BAC − EV) ÷ CPI of the last three periods, or of all when there are fewer.</summary>
    public static decimal? AtRecentCostIndex(in MeasureSums sums)
    {
        var earned = sums.EarnedValue - sums.EarnedThreeBefore;
        var spent = sums.ActualCost - sums.ActualThreeBefore;
        return spent <= 0 || earned <= 0
            ? null
            : sums.ActualCost
                + Ratio.Scaled([sums.BudgetAtCompletion - sums.EarnedValue, spent], [earned]);
    }

    /// <summary>Cost efficiency that the rest needs to end at the budget: (BAC − EV) ÷ (BAC − AC).</summary>
    public static decimal? ToCompleteAtBudget(in MeasureSums sums) =>
        Ratio.Of(
            sums.BudgetAtCompletion - sums.EarnedValue,
            sums.BudgetAtCompletion - sums.ActualCost
        );

    /// <summary>Cost efficiency that the rest needs to end at the managers' estimate: (BAC − EV) ÷ (EAC − AC).</summary>
    public static decimal? ToCompleteAtEstimate(in MeasureSums sums) =>
        Ratio.Of(sums.BudgetAtCompletion - sums.EarnedValue, sums.Remaining);
}

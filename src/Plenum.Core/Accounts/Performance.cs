using Plenum.Core.Foundation;

namespace Plenum.Core.Accounts;

/// <summary>
/// Variances and ratios of a row, from its sums; never averaged. Ratios have no value when the divisor is zero or
/// negative. Source: ISO 21508:2018 and GAO-20-195G ch. 18 (table 23).
/// </summary>
public static class Performance
{
    /// <summary>Planned value, to date or of the period alone.</summary>
    public static long Planned(in MeasureSums sums) => sums.PlannedValue - sums.PlannedBefore;

    /// <inheritdoc cref="Planned"/>
    public static long Earned(in MeasureSums sums) => sums.EarnedValue - sums.EarnedBefore;

    /// <inheritdoc cref="Planned"/>
    public static long Actual(in MeasureSums sums) => sums.ActualCost - sums.ActualBefore;

    /// <inheritdoc cref="Planned"/>
    public static long Committed(in MeasureSums sums) => sums.Committed - sums.CommittedBefore;

    /// <summary>Schedule variance, EV − PV; negative is unfavourable.</summary>
    public static long ScheduleVariance(in MeasureSums sums) => Earned(sums) - Planned(sums);

    /// <summary>Cost variance, EV − AC; negative is unfavourable.</summary>
    public static long CostVariance(in MeasureSums sums) => Earned(sums) - Actual(sums);

    /// <summary>Variance at completion, BAC − EAC.</summary>
    public static long VarianceAtCompletion(in MeasureSums sums) =>
        sums.BudgetAtCompletion - sums.EstimateAtCompletion;

    /// <summary>Schedule performance index, EV ÷ PV.</summary>
    public static decimal? SchedulePerformance(in MeasureSums sums) =>
        Ratio.Of(Earned(sums), Planned(sums));

    /// <summary>Cost performance index, EV ÷ AC. Example: 450 earned, 500 spent: 0.9.</summary>
    public static decimal? CostPerformance(in MeasureSums sums) =>
        Ratio.Of(Earned(sums), Actual(sums));

    /// <summary>EV ÷ BAC, to date.</summary>
    public static decimal? PercentComplete(in MeasureSums sums) =>
        Ratio.Of(sums.EarnedValue, sums.BudgetAtCompletion);

    /// <summary>AC ÷ BAC, to date.</summary>
    public static decimal? PercentSpent(in MeasureSums sums) =>
        Ratio.Of(sums.ActualCost, sums.BudgetAtCompletion);

    /// <summary>
    /// How much of what was gained and lost cancels: 1 − |net| ÷ (gained + |lost|), 0 to 1. A definition of our own.
    /// </summary>
    public static decimal? CostMasking(in MeasureSums sums) =>
        Masking(sums.CostGained, sums.CostLost);

    /// <inheritdoc cref="CostMasking"/>
    public static decimal? ScheduleMasking(in MeasureSums sums) =>
        Masking(sums.ScheduleGained, sums.ScheduleLost);

    private static decimal? Masking(long gained, long lost) =>
        1 - Ratio.Of(Math.Abs(gained + lost), gained - lost);
}

using Plenum.Core.Accounts;
using Plenum.Core.Forecast;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Time;

namespace Plenum.Workbench.Questions;

/// <summary>
/// One row of the accounts answer. Money in major units of the project's currency, exact; ratios exact to 28 digits,
/// without value where they are undefined.
/// </summary>
public sealed record MeasureRow(
    string Code,
    string Name,
    int Level,
    MeasureSums Sums,
    EarnedSchedule Schedule,
    Currency Currency,
    PeriodTimeline Periods
)
{
    public decimal BudgetAtCompletion => Major(Sums.BudgetAtCompletion);

    public decimal PlannedValue => Major(Performance.Planned(Sums));

    public decimal EarnedValue => Major(Performance.Earned(Sums));

    public decimal ActualCost => Major(Performance.Actual(Sums));

    public decimal Committed => Major(Performance.Committed(Sums));

    public decimal ScheduleVariance => Major(Performance.ScheduleVariance(Sums));

    public decimal CostVariance => Major(Performance.CostVariance(Sums));

    public decimal? SchedulePerformance => Performance.SchedulePerformance(Sums);

    public decimal? CostPerformance => Performance.CostPerformance(Sums);

    public decimal? PercentComplete => Performance.PercentComplete(Sums);

    public decimal? PercentSpent => Performance.PercentSpent(Sums);

    public decimal EstimateToComplete => Major(Sums.Remaining);

    public decimal EstimateAtCompletion => Major(Sums.EstimateAtCompletion);

    public decimal VarianceAtCompletion => Major(Performance.VarianceAtCompletion(Sums));

    public decimal EstimateAtBudget => Major(IndexForecasts.AtBudget(Sums));

    public decimal? EstimateAtCostIndex => Whole(IndexForecasts.AtCostIndex(Sums));

    public decimal? EstimateAtCostAndScheduleIndex =>
        Whole(IndexForecasts.AtCostAndScheduleIndex(Sums));

    public decimal? EstimateAtRecentCostIndex => Whole(IndexForecasts.AtRecentCostIndex(Sums));

    public decimal? ToCompleteAtBudget => IndexForecasts.ToCompleteAtBudget(Sums);

    public decimal? ToCompleteAtEstimate => IndexForecasts.ToCompleteAtEstimate(Sums);

    public decimal? EarnedSchedulePeriods => Schedule.Periods;

    public int? ActualPeriods => Schedule.AtPeriods;

    public decimal? ScheduleTimePerformance => Schedule.SchedulePerformance;

    public DateOnly? ForecastFinish => Schedule.ForecastFinish(Periods);

    public decimal CostGained => Major(Sums.CostGained);

    public decimal CostLost => Major(Sums.CostLost);

    public decimal? CostMasking => Performance.CostMasking(Sums);

    public decimal ScheduleGained => Major(Sums.ScheduleGained);

    public decimal ScheduleLost => Major(Sums.ScheduleLost);

    public decimal? ScheduleMasking => Performance.ScheduleMasking(Sums);

    private decimal Major(long minorUnits) => Currency.ToMajorUnits(minorUnits);

    private decimal? Whole(decimal? minorUnits) => minorUnits * Currency.ToMajorUnits(1);
}

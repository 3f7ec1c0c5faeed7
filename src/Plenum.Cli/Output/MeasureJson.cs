using System.Text.Json;
using Plenum.Workbench.Questions;

namespace Plenum.Cli.Output;

/// <summary>Writes all measures of a row.</summary>
internal static class MeasureJson
{
    public static void Write(Utf8JsonWriter json, MeasureRow row)
    {
        json.WriteStartObject();
        json.WriteString("code", row.Code);
        json.WriteString("name", row.Name);
        Fill(json, row);
        json.WriteEndObject();
    }

    public static void Fill(Utf8JsonWriter json, MeasureRow row)
    {
        json.Money("bac", row.BudgetAtCompletion);
        json.Money("pv", row.PlannedValue);
        json.Money("ev", row.EarnedValue);
        json.Money("ac", row.ActualCost);
        json.Money("committed", row.Committed);
        json.Money("sv", row.ScheduleVariance);
        json.Money("cv", row.CostVariance);
        json.Ratio("spi", row.SchedulePerformance);
        json.Ratio("cpi", row.CostPerformance);
        json.Ratio("percent_complete", row.PercentComplete);
        json.Ratio("percent_spent", row.PercentSpent);
        json.Money("etc", row.EstimateToComplete);
        json.Money("eac", row.EstimateAtCompletion);
        json.Money("vac", row.VarianceAtCompletion);
        json.Money("eac_plan", row.EstimateAtBudget);
        json.Money("eac_cpi", row.EstimateAtCostIndex);
        json.Money("eac_cpi_spi", row.EstimateAtCostAndScheduleIndex);
        json.Money("eac_cpi3", row.EstimateAtRecentCostIndex);
        json.Ratio("tcpi_bac", row.ToCompleteAtBudget);
        json.Ratio("tcpi_eac", row.ToCompleteAtEstimate);
        json.Ratio("es", row.EarnedSchedulePeriods);
        json.Number("at_periods", row.ActualPeriods);
        json.Ratio("spi_t", row.ScheduleTimePerformance);
        json.Date("forecast_finish", row.ForecastFinish);
        json.Money("cv_favourable", row.CostGained);
        json.Money("cv_unfavourable", row.CostLost);
        json.Ratio("cv_masking", row.CostMasking);
        json.Money("sv_favourable", row.ScheduleGained);
        json.Money("sv_unfavourable", row.ScheduleLost);
        json.Ratio("sv_masking", row.ScheduleMasking);
    }
}

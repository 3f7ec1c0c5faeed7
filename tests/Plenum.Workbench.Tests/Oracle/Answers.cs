using System.Numerics;
using Plenum.Core;
using Plenum.Exchange.Import;
using Plenum.Oracle.Model;
using Plenum.Oracle.Tables;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Tests.Oracle;

/// <summary>Brings the engine's answers and those of the slow model together.</summary>
internal static class Answers
{
    /// <summary>Takes a text project in through the same CSV import as a user's data.</summary>
    public static Project Import(TextProject text)
    {
        using var folder = new TemporaryFolder();
        CsvFolder.Write(text, folder.Path);
        var result = Importer.Run(Project.Empty, [folder.Path], replace: false);
        Assert.True(!result.Errors.Any, string.Join('\n', result.Errors.Items.Take(20)));
        return result.Project;
    }

    public static void AssertSame(Answer expected, AccountsAnswer answer)
    {
        Assert.Equal(expected.At, answer.At);
        Assert.Equal(
            expected.Rows.Select(row => row.Code),
            answer.Rows.Select(row => row.Code).Prepend(answer.Total.Code)
        );
        var digits = answer.Currency.Digits;
        foreach (var (model, engine) in expected.Rows.Zip(answer.Rows.Prepend(answer.Total)))
        {
            foreach (var measure in Row.MoneyMeasures)
            {
                var exact = Shown(model.Money(measure));
                Assert.True(
                    exact == MinorUnits(engine, measure, digits),
                    $"{model.Code} {measure}: {exact} expected, {MinorUnits(engine, measure, digits)} found"
                );
            }

            foreach (var measure in Row.RatioMeasures)
            {
                AssertRatio(model.Code, measure, model.Ratio(measure), RatioOf(engine, measure));
            }

            Assert.True(
                model.ForecastFinish == engine.ForecastFinish,
                $"{model.Code} forecast_finish: {model.ForecastFinish} expected, {engine.ForecastFinish} found"
            );
        }
    }

    /// <summary>A forecast by an index near zero can have more digits than the engine tells: it says nothing then.</summary>
    private static BigInteger? Shown(BigInteger? amount) =>
        amount is { } given && BigInteger.Abs(given) < BigInteger.Pow(10, 28) ? given : null;

    public static BigInteger? MinorUnits(MeasureRow row, string measure, int digits) =>
        MoneyOf(row, measure) is { } amount
            ? new BigInteger(amount * (decimal)Math.Pow(10, digits))
            : null;

    public static decimal? RatioOf(MeasureRow row, string measure) =>
        measure switch
        {
            "spi" => row.SchedulePerformance,
            "cpi" => row.CostPerformance,
            "percent_complete" => row.PercentComplete,
            "percent_spent" => row.PercentSpent,
            "tcpi_bac" => row.ToCompleteAtBudget,
            "tcpi_eac" => row.ToCompleteAtEstimate,
            "es" => row.EarnedSchedulePeriods,
            "at_periods" => row.ActualPeriods,
            "spi_t" => row.ScheduleTimePerformance,
            "cv_masking" => row.CostMasking,
            "sv_masking" => row.ScheduleMasking,
            _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, null),
        };

    /// <summary>The engine divides with 28 digits; the exact fraction must lie within the last of them.</summary>
    private static void AssertRatio(string code, string measure, Ratio? exact, decimal? found)
    {
        var same =
            exact is null || found is null
                ? exact is null && found is null
                : Difference(exact, found.Value) <= new Ratio(1, BigInteger.Pow(10, 15));
        Assert.True(same, $"{code} {measure}: {exact} expected, {found} found");
    }

    private static Ratio Difference(Ratio exact, decimal found)
    {
        var difference =
            exact - Ratio.Parse(found.ToString(System.Globalization.CultureInfo.InvariantCulture));
        return difference < Ratio.Zero ? Ratio.Zero - difference : difference;
    }

    private static decimal? MoneyOf(MeasureRow row, string measure) =>
        measure switch
        {
            "bac" => row.BudgetAtCompletion,
            "pv" => row.PlannedValue,
            "ev" => row.EarnedValue,
            "ac" => row.ActualCost,
            "committed" => row.Committed,
            "sv" => row.ScheduleVariance,
            "cv" => row.CostVariance,
            "etc" => row.EstimateToComplete,
            "eac" => row.EstimateAtCompletion,
            "vac" => row.VarianceAtCompletion,
            "eac_plan" => row.EstimateAtBudget,
            "eac_cpi" => row.EstimateAtCostIndex,
            "eac_cpi_spi" => row.EstimateAtCostAndScheduleIndex,
            "eac_cpi3" => row.EstimateAtRecentCostIndex,
            "cv_favourable" => row.CostGained,
            "cv_unfavourable" => row.CostLost,
            "sv_favourable" => row.ScheduleGained,
            "sv_unfavourable" => row.ScheduleLost,
            _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, null),
        };
}

using Plenum.Workbench.Questions;

namespace Plenum.Web.Accounts;

/// <summary>All columns that the accounts table can show, in their order.</summary>
public static class MeasureColumns
{
    /// <summary>Periods of the trend.</summary>
    public const int TrendPeriods = 14;

    /// <summary>Least share earned before an index is shown: before it every booking makes it swing.</summary>
    public const decimal LeastComplete = 0.02m;

    public static readonly IReadOnlyList<MeasureColumn> All =
    [
        Text("manager", "Manager", "Manager", "Who answers for it.", row => row.Manager),
        Amount(
            "bac",
            "Budget at completion",
            "Budget",
            "BAC",
            "Sum of the budgets of its packages.",
            r => r.BudgetAtCompletion
        ),
        Amount(
            "pv",
            "Planned value",
            "Plan",
            "PV",
            "What was to be done by now, at its budget.",
            r => r.PlannedValue
        ),
        Amount(
            "ev",
            "Earned value",
            "Earned",
            "EV",
            "What has been done, at its budget.",
            r => r.EarnedValue
        ),
        Amount("ac", "Actual cost", "Actual", "AC", "What it has cost so far.", r => r.ActualCost),
        Amount(
            "committed",
            "Committed",
            "Commit-",
            "ted",
            "Ordered and subcontracted by now.",
            r => r.Committed
        ),
        Variance(
            "cv",
            "Cost variance",
            "Cost",
            "CV",
            "Earned less actual; below zero is over cost.",
            r => r.CostVariance,
            r => r.EarnedValue
        ),
        Variance(
            "sv",
            "Schedule variance",
            "Time",
            "SV",
            "Earned less planned; below zero is late.",
            r => r.ScheduleVariance,
            r => r.PlannedValue
        ),
        Index(
            "cpi",
            "Cost performance index",
            "CPI",
            "Earned for each unit of money spent.",
            r => r.CostPerformance
        ),
        Index(
            "spi",
            "Schedule performance index",
            "SPI",
            "Earned for each unit of money planned by now.",
            r => r.SchedulePerformance
        ),
        Percent(
            "percent_complete",
            "Percent complete",
            "Done",
            "Earned value as a share of the budget.",
            r => r.PercentComplete
        ),
        Percent(
            "percent_spent",
            "Percent spent",
            "Spent",
            "Actual cost as a share of the budget.",
            r => r.PercentSpent
        ),
        Amount(
            "etc",
            "Estimate to complete",
            "To come",
            "ETC",
            "What the managers still expect to spend.",
            r => r.EstimateToComplete
        ),
        Amount(
            "eac",
            "Estimate at completion",
            "Managers'",
            "EAC",
            "What the managers expect it to cost in the end.",
            r => r.EstimateAtCompletion
        ),
        Variance(
            "vac",
            "Variance at completion",
            "At end",
            "VAC",
            "Budget less the managers' estimate; below zero is over budget.",
            r => r.VarianceAtCompletion,
            r => r.BudgetAtCompletion
        ),
        Amount(
            "eac_plan",
            "Estimate at completion, rest as budgeted",
            "EAC, rest",
            "at budget",
            "Actual cost and the rest at its budget.",
            r => r.EstimateAtBudget
        ),
        Amount(
            "eac_cpi",
            "Estimate at completion by CPI",
            "EAC",
            "at CPI",
            "Actual cost and the rest at the cost efficiency so far.",
            r => r.EstimateAtCostIndex
        ),
        Amount(
            "eac_cpi_spi",
            "Estimate at completion by CPI × SPI",
            "EAC at",
            "CPI × SPI",
            "Actual cost and the rest at the efficiency of cost and schedule so far.",
            r => r.EstimateAtCostAndScheduleIndex
        ),
        Amount(
            "eac_cpi3",
            "Estimate at completion by the last three periods",
            "EAC at",
            "CPI of 3",
            "Actual cost and the rest at the cost efficiency of the last three periods.",
            r => r.EstimateAtRecentCostIndex
        ),
        Factor(
            "tcpi_bac",
            "To-complete index, to the budget",
            "TCPI",
            "to BAC",
            "Efficiency that the rest needs to end at the budget.",
            r => r.ToCompleteAtBudget
        ),
        Factor(
            "tcpi_eac",
            "To-complete index, to the estimate",
            "TCPI",
            "to EAC",
            "Efficiency that the rest needs to end at the managers' estimate.",
            r => r.ToCompleteAtEstimate
        ),
        new(
            "es",
            "Earned schedule",
            "Earned",
            "ES",
            "Periods by which the plan says that this much is earned.",
            ColumnKind.Periods,
            row => row.Row.EarnedSchedulePeriods
        ),
        new(
            "at_periods",
            "Periods passed",
            "Passed",
            "AT",
            "Periods since it began.",
            ColumnKind.Count,
            row => row.Row.ActualPeriods
        ),
        new(
            "spi_t",
            "Schedule performance index, time",
            "SPI(t)",
            "",
            "Earned schedule divided by the periods passed.",
            ColumnKind.Index,
            row => Shown(row, row.Row.ScheduleTimePerformance)
        ),
        new(
            "forecast_finish",
            "Forecast finish",
            "Forecast",
            "finish",
            "When it ends at the pace so far, by earned schedule.",
            ColumnKind.Date,
            row => row.Row.ForecastFinish
        ),
        new(
            "trend",
            "Trend of CPI",
            "CPI, last",
            "14 periods",
            "Cost performance index at the end of each period.",
            ColumnKind.Trend,
            row => row.Row.CostPerformance
        ),
        new(
            "offsets",
            "Offsets",
            "Offsets",
            "",
            "What the packages inside lost and gained, and what is left of it.",
            ColumnKind.Offsets,
            row => row.Row.CostGained - row.Row.CostLost
        ),
        Percent(
            "masking",
            "Masking",
            "Mask-",
            "How much of what was gained and lost cancels.",
            r => r.CostMasking
        ) with
        {
            Letters = "ing",
        },
    ];

    private static readonly string[] Usual =
    [
        "manager",
        "bac",
        "pv",
        "ev",
        "ac",
        "cv",
        "sv",
        "cpi",
        "spi",
        "eac",
        "vac",
        "trend",
        "offsets",
        "masking",
    ];

    /// <summary>The columns that an address names; the usual ones where it names none.</summary>
    /// <param name="chosen">Words separated by commas.</param>
    /// <param name="byAccount">Rows are control accounts: only these have a manager and a trend.</param>
    /// <param name="hasPerson">Rows are packages, which have a person in charge.</param>
    public static IReadOnlyList<MeasureColumn> Chosen(
        string? chosen,
        bool byAccount,
        bool hasPerson
    ) =>
        [
            .. All.Where(column =>
                (chosen?.Split(',') ?? Usual).Contains(column.Id)
                && Exists(column, byAccount, hasPerson)
            ),
        ];

    /// <summary>Whether a column has anything to show for such rows.</summary>
    public static bool Exists(MeasureColumn column, bool byAccount, bool hasPerson) =>
        column.Id switch
        {
            "manager" => byAccount || hasPerson,
            "trend" => byAccount,
            _ => true,
        };

    /// <summary>An index is shown once 2 % is earned.</summary>
    public static decimal? Shown(TableRow row, decimal? index) =>
        row.Row.PercentComplete >= LeastComplete ? index : null;

    private static MeasureColumn Text(
        string id,
        string name,
        string head,
        string says,
        Func<TableRow, object?> value
    ) => new(id, name, head, "", says, ColumnKind.Text, value);

    private static MeasureColumn Amount(
        string id,
        string name,
        string head,
        string letters,
        string says,
        Func<MeasureRow, object?> value
    ) => new(id, name, head, letters, says, ColumnKind.Amount, row => value(row.Row));

    private static MeasureColumn Variance(
        string id,
        string name,
        string head,
        string letters,
        string says,
        Func<MeasureRow, object?> value,
        Func<MeasureRow, decimal> judgedBy
    ) =>
        new(id, name, head, letters, says, ColumnKind.Variance, row => value(row.Row))
        {
            JudgedBy = judgedBy,
        };

    private static MeasureColumn Index(
        string id,
        string name,
        string head,
        string says,
        Func<MeasureRow, decimal?> value
    ) => new(id, name, head, "", says, ColumnKind.Index, row => Shown(row, value(row.Row)));

    private static MeasureColumn Factor(
        string id,
        string name,
        string head,
        string letters,
        string says,
        Func<MeasureRow, decimal?> value
    ) => new(id, name, head, letters, says, ColumnKind.Factor, row => Shown(row, value(row.Row)));

    private static MeasureColumn Percent(
        string id,
        string name,
        string head,
        string says,
        Func<MeasureRow, decimal?> value
    ) => new(id, name, head, "", says, ColumnKind.Percent, row => value(row.Row));
}

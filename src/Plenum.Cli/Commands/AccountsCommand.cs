using System.CommandLine;
using System.Globalization;
using Plenum.Cli.Output;
using Plenum.Core.Accounts;
using Plenum.Workbench.Questions;

namespace Plenum.Cli.Commands;

/// <summary>
/// <code>
/// plenum accounts PROJECT [--at DATE] [--by account|element|unit|cost_element|package|GROUPING] [--level N]
/// [--under CODE] [--period]
/// </code>
/// </summary>
internal static class AccountsCommand
{
    private const int WidestName = 34;
    private const decimal LeastComplete = 0.02m;

    private static readonly Option<bool> Period = new("--period")
    {
        Description = "Values and variances of the last period alone; all else stays to date.",
    };

    public static Command Build(CliContext context)
    {
        var command = new Command(
            "accounts",
            "How it is going: planned, earned, spent, and where it leads."
        )
        {
            CommonOptions.Project,
            CommonOptions.At,
            CommonOptions.By,
            CommonOptions.Level,
            CommonOptions.Under,
            Period,
            CommonOptions.Json,
        };
        return command.Answers<AccountsAnswer>(
            context,
            parsed => QuestionOf(parsed).Ask,
            WriteJson,
            WriteText
        );
    }

    private static AccountsQuestion QuestionOf(ParseResult parsed) =>
        new(
            CliContext.ParseDate(parsed.GetValue(CommonOptions.At)),
            parsed.GetRequiredValue(CommonOptions.By),
            parsed.GetValue(CommonOptions.Level),
            parsed.GetValue(CommonOptions.Under),
            parsed.GetValue(Period)
        );

    private static void WriteJson(CliContext context, AccountsAnswer answer) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.Date("at", answer.At);
                json.WriteString("by", answer.Question.By);
                json.Number("level", answer.Question.Level);
                json.WriteString("under", answer.Question.Under);
                json.WriteBoolean("period", answer.Question.PeriodOnly);
                json.WriteNumber("revision", answer.Revision);
                json.WriteString("currency", answer.Currency.Code);
                json.WriteStartArray("rows");
                MeasureJson.Write(json, answer.Total);
                foreach (var row in answer.Rows)
                {
                    MeasureJson.Write(json, row);
                }

                json.WriteEndArray();
            }
        );

    private static void WriteText(CliContext context, AccountsAnswer answer)
    {
        var amounts = new Amounts(answer.Total.BudgetAtCompletion, answer.Currency);
        context.Out.WriteLine(ReadingSentence.Of(answer.Total, amounts));
        context.Out.WriteLine(
            $"{Amounts.At(answer.At)} Money in {amounts.Unit}."
                + (
                    answer.Question.PeriodOnly
                        ? " Plan, earned, actual and variances of the last period alone."
                        : ""
                )
        );
        var table = new TextTable(
            "Code",
            "Name",
            ">BAC",
            ">PV",
            ">EV",
            ">AC",
            ">CV",
            ">SV",
            ">CPI",
            ">SPI",
            ">EAC",
            ">VAC",
            ">EAC at CPI",
            ">SPI(t)",
            ">Lost",
            ">Gained",
            ">Masking",
            ""
        );
        Row(table, answer.Total, amounts, answer);
        foreach (var row in answer.Rows)
        {
            Row(table, row, amounts, answer);
        }

        table.Write(context.Out);
        var hiding = answer.Rows.Count(row => Flag(row, answer).Length > 0);
        if (hiding > 0)
        {
            context.Out.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{hiding} {(hiding == 1 ? "row looks fine but hides" : "rows look fine but hide")} offsets: what the packages inside lose is beyond {answer.Threshold.BasisPoints / 100m:0.##} % of their budget."
                )
            );
        }

        context.Out.WriteLine("Decision support, not a contractual or certified statement.");
    }

    private static bool HidesCost(MeasureRow row, AccountsAnswer answer) =>
        !row.Code.StartsWith('*')
        && Thresholds.Hides(
            row.Sums.CostGained,
            row.Sums.CostLost,
            Thresholds.Of(row.Sums, answer.Threshold)
        );

    private static bool HidesSchedule(MeasureRow row, AccountsAnswer answer) =>
        !row.Code.StartsWith('*')
        && Thresholds.Hides(
            row.Sums.ScheduleGained,
            row.Sums.ScheduleLost,
            Thresholds.Of(row.Sums, answer.Threshold)
        );

    private static string Flag(MeasureRow row, AccountsAnswer answer) =>
        (HidesCost(row, answer), HidesSchedule(row, answer)) switch
        {
            (true, true) => "hides offsets in cost and schedule",
            (true, false) => "hides offsets in cost",
            (false, true) => "hides offsets in schedule",
            _ => "",
        };

    private static void Row(TextTable table, MeasureRow row, Amounts amounts, AccountsAnswer answer)
    {
        // no index before 2 % is earned: it would swing with every booking
        var measurable = row.PercentComplete >= LeastComplete;
        table.Row(
            new string(' ', 2 * row.Level) + row.Code,
            TextTable.Cut(row.Name, WidestName),
            amounts.Amount(row.BudgetAtCompletion),
            amounts.Amount(row.PlannedValue),
            amounts.Amount(row.EarnedValue),
            amounts.Amount(row.ActualCost),
            amounts.Variance(row.CostVariance),
            amounts.Variance(row.ScheduleVariance),
            Amounts.Index(measurable ? row.CostPerformance : null),
            Amounts.Index(measurable ? row.SchedulePerformance : null),
            amounts.Amount(row.EstimateAtCompletion),
            amounts.Variance(row.VarianceAtCompletion),
            amounts.Amount(measurable ? row.EstimateAtCostIndex : null),
            Amounts.Index(measurable ? row.ScheduleTimePerformance : null),
            amounts.Variance(row.CostLost),
            amounts.Variance(row.CostGained),
            Amounts.Percent(row.CostMasking),
            Flag(row, answer)
        );
    }
}

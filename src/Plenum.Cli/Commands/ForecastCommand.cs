using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Plenum.Cli.Output;
using Plenum.Workbench.Questions;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum forecast PROJECT [--at DATE] [--under CODE]</c></summary>
internal static class ForecastCommand
{
    private static readonly (
        string Method,
        string Words,
        Func<MeasureRow, decimal?> Estimate
    )[] Methods =
    [
        ("eac", "the managers' estimates", row => row.EstimateAtCompletion),
        ("eac_plan", "rest at its budget", row => row.EstimateAtBudget),
        ("eac_cpi", "rest at the cost efficiency so far (CPI)", row => row.EstimateAtCostIndex),
        (
            "eac_cpi3",
            "rest at the cost efficiency of the last three periods",
            row => row.EstimateAtRecentCostIndex
        ),
        (
            "eac_cpi_spi",
            "rest at cost and schedule efficiency (CPI × SPI)",
            row => row.EstimateAtCostAndScheduleIndex
        ),
    ];

    public static Command Build(CliContext context)
    {
        var command = new Command(
            "forecast",
            "Where it will end: every method, and how each has moved."
        )
        {
            CommonOptions.Project,
            CommonOptions.At,
            CommonOptions.Under,
            CommonOptions.Json,
        };
        return command.Answers<ForecastAnswer>(
            context,
            parsed => QuestionOf(parsed).Ask,
            WriteJson,
            WriteText
        );
    }

    private static ForecastQuestion QuestionOf(ParseResult parsed) =>
        new(
            CliContext.ParseDate(parsed.GetValue(CommonOptions.At)),
            parsed.GetValue(CommonOptions.Under)
        );

    private static void WriteJson(CliContext context, ForecastAnswer answer) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.Date("at", answer.At);
                json.WriteString("under", answer.Under);
                json.WriteNumber("revision", answer.Revision);
                json.WriteString("currency", answer.Currency.Code);
                WriteMethods(json, answer.Now);
                MeasureJson.Fill(json, answer.Now);
                json.Date("network_finish", answer.NetworkFinish);
                json.WriteStartArray("rows");
                foreach (var point in answer.History)
                {
                    json.WriteStartObject();
                    json.WriteString("period", point.Period);
                    json.Date("end", point.End);
                    MeasureJson.Fill(json, point.Row);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            }
        );

    private static void WriteMethods(Utf8JsonWriter json, MeasureRow row)
    {
        json.WriteStartArray("methods");
        foreach (var (method, words, estimate) in Methods)
        {
            json.WriteStartObject();
            json.WriteString("method", method);
            json.WriteString("name", words);
            json.Money("eac", estimate(row));
            json.Money("vac", row.BudgetAtCompletion - estimate(row));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteText(CliContext context, ForecastAnswer answer)
    {
        var now = answer.Now;
        var amounts = new Amounts(now.BudgetAtCompletion, answer.Currency);
        context.Out.WriteLine(ReadingSentence.Of(now, amounts));
        context.Out.WriteLine($"{Amounts.At(answer.At)} Money in {amounts.Unit}.");
        var methods = new TextTable("Estimate at completion", ">EAC", ">VAC");
        foreach (var (_, words, estimate) in Methods)
        {
            methods.Row(
                words,
                amounts.Amount(estimate(now)),
                amounts.Variance(now.BudgetAtCompletion - estimate(now))
            );
        }

        methods.Write(context.Out);
        context.Out.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Time: {Amounts.Index(now.EarnedSchedulePeriods)} periods earned of {now.ActualPeriods?.ToString(CultureInfo.InvariantCulture) ?? "–"} passed, SPI(t) {Amounts.Index(now.ScheduleTimePerformance)}; at this pace it ends on {Amounts.Day(now.ForecastFinish)}."
            )
        );
        if (answer.NetworkFinish is { } finish)
        {
            context.Out.WriteLine(
                $"By the network it ends on {Amounts.Day(finish)}; plenum network says what drives that."
            );
        }

        context.Out.WriteLine(
            $"To end at the budget the rest needs an efficiency of {Amounts.Index(now.ToCompleteAtBudget, 3)}, to end at the managers' estimate {Amounts.Index(now.ToCompleteAtEstimate, 3)}."
        );
        var history = new TextTable(
            "Period",
            "End",
            ">PV",
            ">EV",
            ">AC",
            ">CPI",
            ">SPI",
            ">EAC",
            ">at budget",
            ">at CPI",
            ">at CPI, 3",
            ">at CPI × SPI",
            ">SPI(t)",
            "Finish"
        );
        foreach (var point in answer.History)
        {
            var row = point.Row;
            history.Row(
                point.Period,
                Amounts.Day(point.End),
                amounts.Amount(row.PlannedValue),
                amounts.Amount(row.EarnedValue),
                amounts.Amount(row.ActualCost),
                Amounts.Index(row.CostPerformance),
                Amounts.Index(row.SchedulePerformance),
                amounts.Amount(row.EstimateAtCompletion),
                amounts.Amount(row.EstimateAtBudget),
                amounts.Amount(row.EstimateAtCostIndex),
                amounts.Amount(row.EstimateAtRecentCostIndex),
                amounts.Amount(row.EstimateAtCostAndScheduleIndex),
                Amounts.Index(row.ScheduleTimePerformance),
                Amounts.Day(row.ForecastFinish)
            );
        }

        history.Write(context.Out);
        context.Out.WriteLine("Decision support, not a contractual or certified statement.");
    }
}

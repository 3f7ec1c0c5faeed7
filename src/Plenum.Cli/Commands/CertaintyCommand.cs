using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Plenum.Cli.Output;
using Plenum.Workbench.Questions;

namespace Plenum.Cli.Commands;

/// <summary>
/// <code>
/// plenum certainty PROJECT [--at DATE] [--by account|element|unit|cost_element|package|GROUPING] [--level N]
/// [--under CODE]
/// </code>
/// </summary>
internal static class CertaintyCommand
{
    private const int WidestName = 34;

    public static Command Build(CliContext context)
    {
        var command = new Command(
            "certainty",
            "Which variances can be told from zero, and which package would tell more."
        )
        {
            CommonOptions.Project,
            CommonOptions.At,
            CommonOptions.By,
            CommonOptions.Level,
            CommonOptions.Under,
            CommonOptions.Json,
        };
        return command.Answers<CertaintyAnswer>(
            context,
            parsed => QuestionOf(parsed).Ask,
            WriteJson,
            WriteText
        );
    }

    private static CertaintyQuestion QuestionOf(ParseResult parsed) =>
        new(
            CliContext.ParseDate(parsed.GetValue(CommonOptions.At)),
            parsed.GetRequiredValue(CommonOptions.By),
            parsed.GetValue(CommonOptions.Level),
            parsed.GetValue(CommonOptions.Under)
        );

    private static void WriteJson(CliContext context, CertaintyAnswer answer) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.Date("at", answer.At);
                json.WriteString("by", answer.Question.By);
                json.Number("level", answer.Question.Level);
                json.WriteString("under", answer.Question.Under);
                json.WriteNumber("revision", answer.Revision);
                json.WriteString("currency", answer.Currency.Code);
                json.WriteStartArray("rows");
                foreach (var row in answer.Rows.Prepend(answer.Total))
                {
                    WriteRow(json, row);
                }

                json.WriteEndArray();
            }
        );

    private static void WriteRow(Utf8JsonWriter json, CertaintyRow row)
    {
        json.WriteStartObject();
        json.WriteString("code", row.Code);
        json.WriteString("name", row.Name);
        json.Money("bac", row.BudgetAtCompletion);
        json.Money("ev", row.EarnedValue);
        json.WriteNumber("open", row.Open);
        json.Money("bias", row.Bias);
        json.Money("spread", row.Spread);
        json.Money("worst", row.Worst);
        json.Ratio("precision", row.Precision);
        Variance("cv", row.CostVariance);
        Variance("sv", row.ScheduleVariance);
        json.WriteString("measure_finer", row.Finest);
        json.Ratio("buys", row.FinestBuys);
        json.WriteEndObject();

        void Variance(string name, VarianceRead variance)
        {
            json.Money(name, variance.Amount);
            json.Money(name + "_low", variance.Low);
            json.Money(name + "_high", variance.High);
            json.WriteBoolean(name + "_told", variance.IsToldFromZero);
            json.WriteBoolean(name + "_to_explain", variance.NeedsExplanation);
        }
    }

    private static void WriteText(CliContext context, CertaintyAnswer answer)
    {
        var amounts = new Amounts(answer.Total.BudgetAtCompletion, answer.Currency);
        var told = answer.Rows.Count(row => row.CostVariance.IsToldFromZero);
        context.Out.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"The cost variance of {told} of {answer.Rows.Count} rows can be told from zero; no explanation is asked for the others."
            )
        );
        context.Out.WriteLine($"{Amounts.At(answer.At)} Money in {amounts.Unit}.");
        var table = new TextTable(
            "Code",
            "Name",
            ">EV",
            ">Precision",
            ">CV",
            ">true CV from",
            ">to",
            "",
            ">SV",
            ">true SV from",
            ">to",
            "",
            "Measure finer",
            ">Buys"
        );
        foreach (var row in answer.Rows.Prepend(answer.Total))
        {
            table.Row(
                new string(' ', 2 * row.Level) + row.Code,
                TextTable.Cut(row.Name, WidestName),
                amounts.Amount(row.EarnedValue),
                Amounts.Percent(row.Precision),
                amounts.Variance(row.CostVariance.Amount),
                amounts.Variance(row.CostVariance.Low),
                amounts.Variance(row.CostVariance.High),
                Word(row.CostVariance),
                amounts.Variance(row.ScheduleVariance.Amount),
                amounts.Variance(row.ScheduleVariance.Low),
                amounts.Variance(row.ScheduleVariance.High),
                Word(row.ScheduleVariance),
                row.Finest ?? "",
                row.Finest is null ? "" : Amounts.Percent(row.FinestBuys)
            );
        }

        table.Write(context.Out);
        context.Out.WriteLine(
            "The true variance lies between the two with a chance of 95 %, given what the techniques leave open. Other sign: "
                + "it is told, and what is measured has its sign from the way of measuring alone."
        );
        context.Out.WriteLine("Decision support, not a contractual or certified statement.");
    }

    private static string Word(VarianceRead variance) =>
        variance.Low == variance.High && variance.Amount == 0 ? "none"
        : variance.NeedsExplanation ? "explain"
        : variance.HasOtherSign ? "other sign"
        : variance.IsToldFromZero ? "told"
        : "noise";
}

using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Plenum.Cli.Output;
using Plenum.Workbench.Questions;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum precision PROJECT [--at DATE] [--account CODE]</c></summary>
internal static class PrecisionCommand
{
    private const int WidestName = 34;
    private const int ShownToSplit = 3;

    private static readonly Option<string?> Account = new("--account")
    {
        Description = "Only this account; the text answer then has every period.",
        HelpName = "CODE",
    };

    public static Command Build(CliContext context)
    {
        var command = new Command(
            "precision",
            "Whether the breakdown is detailed enough to know the status: what to split, what to merge."
        )
        {
            CommonOptions.Project,
            CommonOptions.At,
            Account,
            CommonOptions.Json,
        };
        return command.Answers<PrecisionAnswer>(
            context,
            parsed => QuestionOf(parsed).Ask,
            WriteJson,
            WriteText
        );
    }

    private static PrecisionQuestion QuestionOf(ParseResult parsed) =>
        new(CliContext.ParseDate(parsed.GetValue(CommonOptions.At)), parsed.GetValue(Account));

    private static void WriteJson(CliContext context, PrecisionAnswer answer) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.Date("at", answer.At);
                json.WriteString("account", answer.Account);
                json.WriteNumber("revision", answer.Revision);
                json.WriteString("currency", answer.Currency.Code);
                json.WriteString("present", answer.Present);
                json.WriteStartArray("rows");
                foreach (var row in answer.Rows)
                {
                    WriteRow(json, row, answer);
                }

                json.WriteEndArray();
            }
        );

    private static void WriteRow(Utf8JsonWriter json, PrecisionRow row, PrecisionAnswer answer)
    {
        json.WriteStartObject();
        json.WriteString("account", row.Account);
        json.WriteString("name", row.Name);
        json.WriteString("period", row.Period);
        json.Date("end", row.End);
        json.Money("budget", row.Budget);
        json.Ratio("loe_share", row.LevelOfEffortShare);
        json.WriteNumber("open", row.Open);
        json.Money("bias", row.Bias);
        json.Money("spread", row.Spread);
        json.Money("worst", row.Worst);
        json.Ratio("precision", row.Precision);
        json.Ratio("threshold", Threshold(answer));
        json.WriteString("verdict", Verdict(row));
        json.WriteStartArray("packages_to_split");
        foreach (var part in row.Split)
        {
            json.WriteStartObject();
            json.WriteString("package", part.Package);
            json.WriteString("name", part.Name);
            json.Money("bias", part.Bias);
            json.Money("spread", part.Spread);
            json.Money("worst", part.Worst);
            json.Ratio("buys", part.Buys);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("packages_to_merge");
        foreach (var pair in row.Merge)
        {
            json.WriteStartObject();
            json.WriteStartArray("packages");
            json.WriteStringValue(pair.First);
            json.WriteStringValue(pair.Second);
            json.WriteEndArray();
            json.Ratio("costs", pair.Costs);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteText(CliContext context, PrecisionAnswer answer)
    {
        var byAccount = answer
            .Rows.GroupBy(row => row.Account, StringComparer.Ordinal)
            .Select(group => group.ToList())
            .ToList();
        var coarse = byAccount.Count(rows => rows.Exists(row => !row.IsDetailedEnough));
        context.Out.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{coarse} of {byAccount.Count} accounts {(coarse == 1 ? "is" : "are")} too coarse{(answer.At is null ? " in some period" : "")}: what is not known of their earned value is {Threshold(answer) * 100:0.##} % of their budget or more."
            )
        );
        context.Out.WriteLine(
            answer.At is not null
                ? Amounts.At(answer.Rows.Select(row => (DateOnly?)row.End).FirstOrDefault())
            : answer.Account is null ? "Each account in its worst period."
            : "Every period of the account."
        );
        var amounts = new Amounts(answer.Rows.Sum(row => row.Budget), answer.Currency);
        context.Out.WriteLine($"Money in {amounts.Unit}.");
        var table = new TextTable(
            "Account",
            "Name",
            "Period",
            ">BAC",
            ">LOE",
            ">Open",
            ">Bias",
            ">Spread",
            ">Worst",
            ">Precision",
            "Split or measure otherwise",
            ">Buys",
            ">To merge"
        );
        var shown = answer.Account is null
            ? byAccount.Select(Worst)
            : byAccount.SelectMany(rows => rows);
        foreach (var row in shown)
        {
            var merges = answer.Account is null
                ? byAccount
                    .First(rows => rows[0].Account == row.Account)
                    .Sum(one => one.Merge.Count)
                : row.Merge.Count;
            Row(table, row, merges, amounts);
        }

        table.Write(context.Out);
        context.Out.WriteLine(
            "Precision: root of bias and spread squared, over the budget. Buys: what precision gains if the first package "
                + "were known. To merge: pairs of neighbours that could be one package."
        );
        context.Out.WriteLine("Decision support, not a contractual or certified statement.");
    }

    private static void Row(TextTable table, PrecisionRow row, int merges, Amounts amounts)
    {
        var split = row.Split.Take(ShownToSplit).Select(part => part.Package).ToList();
        if (row.Split.Count > split.Count)
        {
            split.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"… {row.Split.Count - split.Count} more"
                )
            );
        }

        table.Row(
            row.Account,
            TextTable.Cut(row.Name, WidestName),
            row.Period,
            amounts.Amount(row.Budget),
            Amounts.Percent(row.LevelOfEffortShare),
            Amounts.Count(row.Open),
            amounts.Variance(row.Bias),
            amounts.Amount(row.Spread),
            amounts.Amount(row.Worst),
            Amounts.Percent(row.Precision),
            split.Count == 0 ? "" : string.Join(", ", split),
            split.Count == 0 ? "" : Amounts.Percent(row.Split[0].Buys),
            Amounts.Count(merges)
        );
    }

    private static PrecisionRow Worst(List<PrecisionRow> rows) =>
        rows.OrderByDescending(row => row.Precision ?? 0).First();

    private static decimal Threshold(PrecisionAnswer answer) =>
        answer.Threshold.BasisPoints / 10_000m;

    private static string Verdict(PrecisionRow row) =>
        row.IsDetailedEnough ? "detailed_enough" : "too_coarse";
}

using System.CommandLine;
using Plenum.Cli.Output;
using Plenum.Workbench.Questions;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum tree PROJECT [--level N] [--under CODE]</c></summary>
internal static class TreeCommand
{
    private const int WidestName = 60;

    public static Command Build(CliContext context)
    {
        var command = new Command("tree", "The breakdown: budgets, what was allotted, gaps.")
        {
            CommonOptions.Project,
            CommonOptions.Level,
            CommonOptions.Under,
            CommonOptions.Json,
        };
        return command.Answers<(TreeQuestion Question, TreeAnswer Answer)>(
            context,
            parsed =>
            {
                var question = new TreeQuestion(
                    parsed.GetValue(CommonOptions.Level),
                    parsed.GetValue(CommonOptions.Under)
                );
                return project => (question, question.Ask(project));
            },
            (into, told) => WriteJson(into, told.Question, told.Answer),
            (into, told) => WriteText(into, told.Answer)
        );
    }

    private static void WriteJson(CliContext context, TreeQuestion question, TreeAnswer answer) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.Number("level", question.Level);
                json.WriteString("under", question.Under);
                json.WriteNumber("revision", answer.Revision);
                json.WriteStartArray("rows");
                foreach (var row in answer.Rows)
                {
                    json.WriteStartObject();
                    json.WriteString("code", row.Code);
                    json.WriteString("name", row.Name);
                    json.WriteNumber("level", row.Level);
                    json.WriteString("kind", row.Kind);
                    json.WriteString("split", row.Split);
                    json.Money("budget", row.Budget);
                    json.Money("allotted", row.Allotted);
                    json.Money("gap", row.Gap);
                    json.WriteNumber("hours", row.Hours);
                    json.WriteNumber("packages", row.Packages);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            }
        );

    private static void WriteText(CliContext context, TreeAnswer answer)
    {
        if (answer.Rows.Count == 0)
        {
            context.Out.WriteLine("Nothing is broken down yet.");
            return;
        }

        var amounts = new Amounts(answer.Rows[0].Budget, answer.Currency);
        context.Out.WriteLine("Money in " + amounts.Unit + ".");
        var top = answer.Rows[0].Level;
        var table = new TextTable(
            "Element",
            "Split by",
            ">Budget",
            ">Allotted",
            ">Gap",
            ">Hours",
            ">Packages"
        );
        foreach (var row in answer.Rows)
        {
            table.Row(
                new string(' ', 2 * (row.Level - top))
                    + TextTable.Cut(row.Code + " " + row.Name, WidestName),
                row.Split == "part" ? "physical part" : row.Split ?? "",
                amounts.Amount(row.Budget),
                row.Allotted is null ? "" : amounts.Amount(row.Allotted),
                row.Gap is null or 0 ? "" : amounts.Variance(row.Gap),
                row.Hours == 0 ? "" : Amounts.Count(row.Hours),
                row.Kind is "work_package" or "planning_package" ? "" : Amounts.Count(row.Packages)
            );
        }

        table.Write(context.Out);
    }
}

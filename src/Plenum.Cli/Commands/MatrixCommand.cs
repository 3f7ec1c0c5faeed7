using System.CommandLine;
using Plenum.Cli.Output;
using Plenum.Core.Breakdown;
using Plenum.Workbench.Questions;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum matrix PROJECT [--under CODE] [--undecided]</c></summary>
internal static class MatrixCommand
{
    private const int WidestName = 40;
    private const int WidestCell = 12;

    private static readonly Option<bool> Undecided = new("--undecided")
    {
        Description = "Only parts with an activity that is not decided.",
    };

    public static Command Build(CliContext context)
    {
        var command = new Command(
            "matrix",
            "Parts by activities: what is planned, what is not needed and why, what is missing."
        )
        {
            CommonOptions.Project,
            CommonOptions.Under,
            Undecided,
            CommonOptions.Json,
        };
        return command.Answers<(PartsQuestion Question, PartsAnswer Answer)>(
            context,
            parsed =>
            {
                var question = new PartsQuestion(
                    parsed.GetValue(CommonOptions.Under),
                    parsed.GetValue(Undecided)
                );
                return project => (question, question.Ask(project));
            },
            (into, told) => WriteJson(into, told.Question, told.Answer),
            (into, told) => WriteText(into, told.Answer)
        );
    }

    private static void WriteJson(CliContext context, PartsQuestion question, PartsAnswer answer) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.WriteString("under", question.Under);
                json.WriteNumber("decided", answer.Decided);
                json.WriteNumber("cells", answer.Cells);
                json.WriteStartArray("activities");
                foreach (var column in answer.Columns)
                {
                    json.WriteStartObject();
                    json.WriteString("activity", column.Activity);
                    json.WriteString("facet", column.Facet);
                    json.WriteNumber("undecided", column.Undecided);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteStartArray("rows");
                foreach (var line in answer.Window(0, answer.Count).Where(line => !line.IsGroup))
                {
                    json.WriteStartObject();
                    json.WriteString("code", line.Code);
                    json.WriteString("name", line.Name);
                    json.WriteString("type", line.Type);
                    json.WriteString("person", line.Person);
                    json.WriteStartArray("cells");
                    foreach (var cell in line.Cells.OfType<PartsCell>())
                    {
                        json.WriteStartObject();
                        json.WriteString("activity", cell.Activity);
                        json.WriteString("state", Word(cell.State));
                        json.WriteNumber("hours", cell.Hours);
                        json.WriteString("package", cell.Package);
                        json.WriteString("reason", cell.Reason);
                        json.WriteEndObject();
                    }

                    json.WriteEndArray();
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            }
        );

    private static void WriteText(CliContext context, PartsAnswer answer)
    {
        context.Out.WriteLine(PartsSentence.Of(answer));
        if (answer.Count == 0)
        {
            return;
        }

        var table = new TextTable([
            "Part",
            .. answer.Columns.Select(column => ">" + column.Activity),
            ">Decided",
        ]);
        foreach (var line in answer.Window(0, answer.Count))
        {
            table.Row([
                TextTable.Cut((line.IsGroup ? "" : "  ") + line.Code + " " + line.Name, WidestName),
                .. line.IsGroup
                    ? answer.Columns.Select(_ => "")
                    : line.Cells.Select(cell => TextTable.Cut(Short(cell), WidestCell)),
                line.IsGroup ? "" : $"{line.Decided} of {line.Decided + line.Undecided}",
            ]);
        }

        table.Write(context.Out);
    }

    private static string Short(PartsCell? cell) =>
        cell?.State switch
        {
            null => "",
            ActivityState.Planned => Amounts.Count(cell.Hours),
            ActivityState.NotNeeded => cell.Reason ?? "",
            ActivityState.Both => "both",
            _ => "missing",
        };

    private static string Word(ActivityState state) =>
        state switch
        {
            ActivityState.Planned => "planned",
            ActivityState.NotNeeded => "not_needed",
            ActivityState.Both => "planned_and_not_needed",
            _ => "missing",
        };
}

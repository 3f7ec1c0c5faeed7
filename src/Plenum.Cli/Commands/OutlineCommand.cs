using System.CommandLine;
using Plenum.Cli.Output;
using Plenum.Workbench.Questions;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum outline PROJECT [--under CODE] [--format indented|coded]</c></summary>
internal static class OutlineCommand
{
    private static readonly Option<string> Format = new("--format")
    {
        Description = "indented: names, two spaces for each level; coded: code, tab and name.",
        DefaultValueFactory = _ => "indented",
    };

    static OutlineCommand() => Format.AcceptOnlyFromAmong("indented", "coded");

    public static Command Build(CliContext context)
    {
        var command = new Command("outline", "The breakdown as a list, to paste elsewhere.")
        {
            CommonOptions.Project,
            CommonOptions.Under,
            Format,
            CommonOptions.Json,
        };
        return command.Answers<(ListQuestion Question, ListAnswer Answer)>(
            context,
            parsed =>
            {
                var question = new ListQuestion(
                    parsed.GetValue(CommonOptions.Under),
                    parsed.GetValue(Format) == "coded"
                );
                return project => (question, question.Ask(project));
            },
            (into, told) => WriteJson(into, told.Question, told.Answer),
            (into, told) => told.Question.Write(into.Out, told.Answer)
        );
    }

    private static void WriteJson(CliContext context, ListQuestion question, ListAnswer answer) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.WriteString("under", question.Under);
                json.WriteNumber("revision", answer.Revision);
                json.WriteStartArray("rows");
                foreach (var line in answer.Lines)
                {
                    json.WriteStartObject();
                    json.WriteNumber("level", line.Level);
                    json.WriteString("code", line.Code);
                    json.WriteString("name", line.Name);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            }
        );
}

using System.CommandLine;
using Plenum.Cli.Output;
using Plenum.Workbench;
using Plenum.Workbench.Commands;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum edit PROJECT [--as PERSON]</c>: commands from standard input, one a line.</summary>
internal static class EditCommands
{
    public static Command Build(CliContext context)
    {
        var command = new Command(
            "edit",
            "Do edits from standard input, one JSON object a line; undo and redo too."
        )
        {
            CommonOptions.Project,
            CommonOptions.Json,
            ImportCommand.As,
        };
        command.SetAction(
            (parsed, ct) =>
                Task.FromResult(context.Run(parsed, json => Edit(context, parsed, json, ct)))
        );
        return command;
    }

    private static int Edit(CliContext context, ParseResult parsed, bool json, CancellationToken ct)
    {
        using var progress = new ProgressLine(context);
        using var project = context.Open(parsed, progress, ct);
        progress.Dispose();
        var person = ImportCommand.PersonOf(parsed);
        var status = ExitCode.Done;
        var line = 0;
        while (context.In.ReadLine() is { } text)
        {
            line++;
            ct.ThrowIfCancellationRequested();
            if (text.Trim().Length == 0)
            {
                continue;
            }

            try
            {
                var answer = Do(project, text.Trim(), person);
                Tell(context, json, line, answer, text.Trim());
            }
            catch (Exception refused) when (EditRefusal.Is(refused))
            {
                status = ExitCode.BadInput;
                if (json)
                {
                    Refuse(context, line, refused);
                }

                Say(context, line, refused);
            }
        }

        return status;
    }

    private static EditAnswer? Do(OpenProject project, string text, string person) =>
        text switch
        {
            "undo" => project.Undo(person),
            "redo" => project.Redo(person),
            _ => project.Edit(new CommandReader(project.Current).Read(text), person),
        };

    private static void Tell(
        CliContext context,
        bool json,
        int line,
        EditAnswer? answer,
        string asked
    )
    {
        if (json)
        {
            JsonAnswer.Write(
                context.Out,
                told =>
                {
                    told.WriteNumber("line", line);
                    told.WriteString("done", answer?.Words);
                    told.WriteStartObject("changed");
                    foreach (var change in answer?.Changes ?? [])
                    {
                        told.WriteNumber(change.Definition.Name, change.Count);
                    }

                    told.WriteEndObject();
                    if (answer is not null)
                    {
                        told.WriteNumber("revision", answer.Revision);
                    }
                }
            );
        }
        else
        {
            context.Out.WriteLine(
                answer is not null ? $"{answer.Revision}: {answer.Words}"
                : asked == "undo" ? "nothing to take back: nothing was done in this run"
                : "nothing to do again: nothing was taken back in this run"
            );
        }

        context.Out.Flush();
    }

    private static void Say(CliContext context, int line, Exception refused)
    {
        foreach (var wrong in EditRefusal.InWords(refused))
        {
            context.Error.WriteLine($"line {line}: {wrong}");
        }

        context.Error.WriteLine($"line {line}: nothing has changed.");
    }

    private static void Refuse(CliContext context, int line, Exception refused) =>
        JsonAnswer.Write(
            context.Out,
            told =>
            {
                told.WriteNumber("line", line);
                told.WriteStartArray("errors");
                foreach (var fault in EditRefusal.FaultsOf(refused))
                {
                    told.WriteStartObject();
                    told.WriteString("table", fault.Table);
                    told.WriteString("row", fault.Row);
                    told.WriteString("column", fault.Column);
                    told.WriteString("value", fault.Value);
                    told.WriteString("expected", fault.Expected);
                    told.WriteString("message", fault.Message);
                    told.WriteEndObject();
                }

                told.WriteEndArray();
                told.WriteStartArray("conflicts");
                foreach (var both in EditRefusal.ConflictsOf(refused))
                {
                    told.WriteStartObject();
                    told.WriteString("table", both.Table);
                    told.WriteString("row", both.Row);
                    told.WriteString("column", both.Column);
                    told.WriteString("theirs", both.Theirs);
                    told.WriteString("mine", both.Mine);
                    told.WriteString("person", both.Person);
                    told.WriteEndObject();
                }

                told.WriteEndArray();
            }
        );
}

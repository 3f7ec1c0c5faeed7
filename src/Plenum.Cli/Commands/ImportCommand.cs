using System.CommandLine;
using System.Globalization;
using Plenum.Cli.Output;
using Plenum.Workbench;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum import PROJECT PATH... [--dry-run] [--replace] [--as PERSON] [--change CHANGE]</c></summary>
internal static class ImportCommand
{
    public static readonly Option<string?> As = new("--as")
    {
        Description =
            "Who does it, for the audit record; the name you are signed in with by default.",
        HelpName = "PERSON",
    };

    private static readonly Argument<string[]> Paths = new("PATH")
    {
        Description =
            "CSV files, workbooks, or folders of them. A file's name says which table it holds.",
        Arity = ArgumentArity.OneOrMore,
    };

    private static readonly Option<bool> DryRun = new("--dry-run")
    {
        Description = "Say what would change, and change nothing.",
    };

    private static readonly Option<bool> Replace = new("--replace")
    {
        Description =
            "Make the named tables equal to the files: rows that are not in them are removed.",
    };

    private static readonly Option<string?> Change = new("--change")
    {
        Description = "The change request that authorises it.",
        HelpName = "CHANGE",
    };

    private static readonly Option<string?> Reason = new("--reason")
    {
        Description = "Why, for the audit record.",
        HelpName = "TEXT",
    };

    public static Command Build(CliContext context)
    {
        var command = new Command("import", "Take tables from files: all of them or nothing.")
        {
            CommonOptions.Project,
            Paths,
            DryRun,
            Replace,
            As,
            Change,
            Reason,
            CommonOptions.Json,
        };
        command.SetAction(
            (parsed, ct) =>
                Task.FromResult(context.Run(parsed, json => Import(context, parsed, json, ct)))
        );
        return command;
    }

    public static string PersonOf(ParseResult parsed) =>
        parsed.GetValue(As) ?? Environment.UserName;

    private static int Import(
        CliContext context,
        ParseResult parsed,
        bool json,
        CancellationToken ct
    )
    {
        ImportAnswer answer;
        using (var progress = new ProgressLine(context))
        {
            using var project = context.Open(parsed, progress, ct);
            answer = project.Import(
                new Workbench.ImportCommand(
                    parsed.GetRequiredValue(Paths),
                    parsed.GetValue(DryRun),
                    parsed.GetValue(Replace),
                    PersonOf(parsed),
                    parsed.GetValue(Change),
                    parsed.GetValue(Reason)
                ),
                progress.Show,
                ct
            );
        }

        if (answer.Errors.Any)
        {
            if (json)
            {
                InputErrorList.WriteJson(context.Out, answer.Errors);
            }
            else
            {
                InputErrorList.WriteText(context.Error, answer.Errors);
            }

            return ExitCode.BadInput;
        }

        if (json)
        {
            WriteJson(context, answer);
        }
        else
        {
            WriteText(context, answer);
        }

        return ExitCode.Done;
    }

    private static void WriteJson(CliContext context, ImportAnswer answer) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.WriteStartObject("changed");
                foreach (var change in answer.Changes)
                {
                    json.WriteNumber(change.Definition.Name, change.Count);
                }

                json.WriteEndObject();
                json.WriteNumber("revision", answer.Revision);
                if (answer.DryRun)
                {
                    json.WriteBoolean("dry_run", true);
                }
            }
        );

    private static void WriteText(CliContext context, ImportAnswer answer)
    {
        if (answer.Changes.Count == 0)
        {
            context.Out.WriteLine("Nothing changes: the project has all of this already.");
            return;
        }

        var table = new TextTable("Table", ">Added", ">Updated", ">Removed");
        foreach (var change in answer.Changes)
        {
            table.Row(
                change.Definition.Name,
                Amounts.Count(change.Added.Count),
                Amounts.Count(change.Updated.Count),
                Amounts.Count(change.Removed.Count)
            );
        }

        table.Write(context.Out);
        context.Out.WriteLine(
            answer.DryRun
                ? "Nothing was changed (--dry-run)."
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"Taken over. Revision {answer.Revision}."
                )
        );
    }
}

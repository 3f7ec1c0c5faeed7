using System.CommandLine;
using System.Globalization;
using Plenum.Cli.Output;
using Plenum.Workbench;
using Plenum.Workbench.Workbooks;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum workbook PROJECT FILE [--under CODE] [--read [--dry-run]]</c></summary>
internal static class WorkbookCommand
{
    private const int WidestText = 40;

    private static readonly Argument<FileInfo> File = new("FILE")
    {
        Description = "The workbook; its name ends in .xlsx.",
    };

    private static readonly Option<bool> Read = new("--read")
    {
        Description = "Take over what was changed in the workbook, instead of writing it.",
    };

    private static readonly Option<bool> DryRun = new("--dry-run")
    {
        Description = "With --read: say what would change, and change nothing.",
    };

    public static Command Build(CliContext context)
    {
        var command = new Command(
            "workbook",
            "Outline, dictionary and parts by activities as a workbook, to be edited and read back."
        )
        {
            CommonOptions.Project,
            File,
            CommonOptions.Under,
            Read,
            DryRun,
            ImportCommand.As,
            CommonOptions.Json,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(DryRun) && !result.GetValue(Read))
            {
                result.AddError("--dry-run goes with --read.");
            }

            if (result.GetValue(Read) && result.GetValue(CommonOptions.Under) is not null)
            {
                result.AddError(
                    "--under is for writing; a workbook that is read says itself what it holds."
                );
            }
        });
        command.SetAction(
            (parsed, ct) =>
                Task.FromResult(
                    context.Run(
                        parsed,
                        json =>
                        {
                            using var progress = new ProgressLine(context);
                            using var project = context.Open(parsed, progress, ct);
                            progress.Dispose();
                            return parsed.GetValue(Read)
                                ? ReadBack(context, parsed, project, json)
                                : Write(context, parsed, project, json);
                        }
                    )
                )
        );
        return command;
    }

    private static int Write(CliContext context, ParseResult parsed, OpenProject project, bool json)
    {
        var file = parsed.GetRequiredValue(File);
        var elements = WorkbookFile.Write(
            project.Current,
            parsed.GetValue(CommonOptions.Under),
            file.FullName
        );
        if (json)
        {
            JsonAnswer.Write(
                context.Out,
                answer =>
                {
                    answer.WriteString("file", file.ToString());
                    answer.WriteNumber("elements", elements);
                }
            );
        }
        else
        {
            context.Out.WriteLine(
                $"{Amounts.Count(elements)} {(elements == 1 ? "element" : "elements")} written in {file}. Edit it, then: plenum workbook {parsed.GetRequiredValue(CommonOptions.Project)} {file} --read --dry-run"
            );
        }

        return ExitCode.Done;
    }

    private static int ReadBack(
        CliContext context,
        ParseResult parsed,
        OpenProject project,
        bool json
    )
    {
        var answer = WorkbookReading.Read(project.Current, parsed.GetRequiredValue(File).FullName);
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

        var dryRun = parsed.GetValue(DryRun);
        if (answer.Command is null)
        {
            if (json)
            {
                WriteJson(context, answer, project.Current.Revision, dryRun);
            }
            else
            {
                WriteChanges(context, answer);
                context.Out.WriteLine("Nothing changes: the project has all of this already.");
            }

            return ExitCode.Done;
        }

        var done = EditAction.TryDo(
            context,
            project,
            answer.Command,
            ImportCommand.PersonOf(parsed),
            dryRun,
            json,
            fault => answer.Placed(fault, parsed.GetRequiredValue(File).Name)
        );
        if (done is not { } taken)
        {
            return ExitCode.BadInput;
        }

        if (json)
        {
            WriteJson(context, answer, taken.Revision, dryRun);
        }
        else
        {
            WriteChanges(context, answer);
            EditAction.WriteText(context, taken.Changes, taken.Revision, dryRun);
        }

        return ExitCode.Done;
    }

    private static void WriteChanges(CliContext context, WorkbookAnswer answer)
    {
        if (answer.Missing.Count > 0)
        {
            context.Out.WriteLine(
                $"{(answer.Missing.Count == 1 ? "1 element is not in the workbook and stays as it is" : $"{Amounts.Count(answer.Missing.Count)} elements are not in the workbook and stay as they are")}: {string.Join(", ", answer.Missing.Take(10))}{(answer.Missing.Count > 10 ? ", …" : "")}."
            );
        }

        if (answer.Changes.Count == 0)
        {
            return;
        }

        var table = new TextTable("Sheet", ">Row", "Element", "What", "Before", "After");
        foreach (var change in answer.Changes)
        {
            table.Row(
                change.Sheet,
                change.Row.ToString(CultureInfo.InvariantCulture),
                change.Code,
                change.What,
                Line(change.Before),
                Line(change.After)
            );
        }

        table.Write(context.Out);
    }

    private static string Line(string? text) =>
        text is null ? "" : TextTable.Cut(text.ReplaceLineEndings(" "), WidestText);

    private static void WriteJson(
        CliContext context,
        WorkbookAnswer answer,
        long revision,
        bool dryRun
    ) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.WriteNumber("revision", revision);
                json.WriteStartArray("rows");
                foreach (var change in answer.Changes)
                {
                    json.WriteStartObject();
                    json.WriteString("sheet", change.Sheet);
                    json.WriteNumber("row", change.Row);
                    json.WriteString("code", change.Code);
                    json.WriteString("what", change.What);
                    json.WriteString("before", change.Before);
                    json.WriteString("after", change.After);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteStartArray("missing");
                foreach (var code in answer.Missing)
                {
                    json.WriteStringValue(code);
                }

                json.WriteEndArray();
                if (dryRun)
                {
                    json.WriteBoolean("dry_run", true);
                }
            }
        );
}

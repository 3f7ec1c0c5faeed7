using System.CommandLine;
using Plenum.Cli.Output;
using Plenum.Workbench;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum export PROJECT DIR [--format csv|xlsx]</c></summary>
internal static class ExportCommand
{
    private static readonly Argument<DirectoryInfo> Folder = new("DIR")
    {
        Description = "The folder to write into.",
    };

    private static readonly Option<string> Format = new("--format")
    {
        Description = "csv: a file for each table; xlsx: one workbook with a sheet for each.",
        DefaultValueFactory = _ => "csv",
    };

    static ExportCommand() => Format.AcceptOnlyFromAmong("csv", "xlsx");

    public static Command Build(CliContext context)
    {
        var command = new Command("export", "Write all tables back into files.")
        {
            CommonOptions.Project,
            Folder,
            Format,
            CommonOptions.Json,
        };
        command.SetAction(
            (parsed, ct) =>
                Task.FromResult(
                    context.Run(
                        parsed,
                        json =>
                        {
                            var folder = parsed.GetRequiredValue(Folder);
                            using (var progress = new ProgressLine(context))
                            {
                                using var project = context.Open(parsed, progress, ct);
                                project.Export(
                                    folder.FullName,
                                    parsed.GetValue(Format) == "xlsx"
                                        ? ExportFormat.Xlsx
                                        : ExportFormat.Csv,
                                    progress.Show,
                                    ct
                                );
                            }

                            if (json)
                            {
                                JsonAnswer.Write(
                                    context.Out,
                                    answer => answer.WriteString("folder", folder.FullName)
                                );
                            }
                            else
                            {
                                context.Out.WriteLine($"Written into {folder.FullName}.");
                            }

                            return ExitCode.Done;
                        }
                    )
                )
        );
        return command;
    }
}

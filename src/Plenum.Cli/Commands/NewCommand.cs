using System.CommandLine;
using Plenum.Cli.Output;
using Plenum.Workbench;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum new PROJECT</c></summary>
internal static class NewCommand
{
    public static Command Build(CliContext context)
    {
        var command = new Command("new", "Make an empty project.")
        {
            CommonOptions.Project,
            CommonOptions.Json,
            ImportCommand.As,
        };
        command.SetAction(parsed =>
            context.Run(
                parsed,
                json =>
                {
                    var file = parsed.GetRequiredValue(CommonOptions.Project);
                    OpenProject.Create(
                        file.FullName,
                        ImportCommand.PersonOf(parsed),
                        context.Clock
                    );
                    if (json)
                    {
                        JsonAnswer.Write(
                            context.Out,
                            answer =>
                            {
                                answer.WriteString("project", file.FullName);
                                answer.WriteNumber("revision", 0);
                            }
                        );
                    }
                    else
                    {
                        context.Out.WriteLine(
                            $"{file.Name} is ready and empty. Next: plenum import {file.Name} FOLDER"
                        );
                    }

                    return ExitCode.Done;
                }
            )
        );
        return command;
    }
}

using System.CommandLine;
using Plenum.Cli.Output;
using Plenum.Core;

namespace Plenum.Cli;

/// <summary>What the commands do that ask a project one question and tell the answer, in words or as JSON.</summary>
internal static class AnswerAction
{
    /// <param name="question">Makes of the command line what is asked of the project; it is read before the project is opened.</param>
    public static Command Answers<TAnswer>(
        this Command command,
        CliContext context,
        Func<ParseResult, Func<Project, TAnswer>> question,
        Action<CliContext, TAnswer> writeJson,
        Action<CliContext, TAnswer> writeText
    )
    {
        command.SetAction(
            (parsed, ct) =>
                Task.FromResult(
                    context.Run(
                        parsed,
                        json =>
                        {
                            var ask = question(parsed);
                            using var progress = new ProgressLine(context);
                            using var project = context.Open(parsed, progress, ct);
                            var answer = ask(project.Current);
                            progress.Dispose();
                            (json ? writeJson : writeText)(context, answer);
                            return ExitCode.Done;
                        }
                    )
                )
        );
        return command;
    }
}

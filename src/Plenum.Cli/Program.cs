using System.CommandLine;
using System.CommandLine.Help;
using System.Text;
using Plenum.Cli.Commands;
using Plenum.Core.Foundation;

namespace Plenum.Cli;

/// <summary>The command <c>plenum</c>.</summary>
public static class Program
{
    private static async Task<int> Main(string[] args)
    {
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        using var stop = new CancellationTokenSource();
        Console.CancelKeyPress += (_, pressed) =>
        {
            pressed.Cancel = true;
            stop.Cancel();
        };
        return await RunAsync(
            args,
            new CliContext(
                Console.Out,
                Console.Error,
                TimeProvider.System,
                OwnFolder.OfThisPerson()
            ),
            stop.Token
        );
    }

    /// <summary>Runs one command line. Answers go to the context's output, messages and progress to its error writer.</summary>
    /// <returns>An <see cref="ExitCode"/>.</returns>
    public static async Task<int> RunAsync(string[] args, CliContext context, CancellationToken ct)
    {
        if (args.Length == 0)
        {
            return await DemoRun.Run(context, ct);
        }

        var root = new RootCommand(
            "Plenum: break a project down, watch it, and carry it to its end."
        )
        {
            DemoCommand.Build(context),
            NewCommand.Build(context),
            ImportCommand.Build(context),
            EditCommands.Build(context),
            ExportCommand.Build(context),
            CheckCommand.Build(context),
            ScopeCommand.Build(context),
            TreeCommand.Build(context),
            OutlineCommand.Build(context),
            StandardCommand.Build(context),
            WorkbookCommand.Build(context),
            MatrixCommand.Build(context),
            AccountsCommand.Build(context),
            ForecastCommand.Build(context),
            NetworkCommand.Build(context),
            AssessCommand.Build(context),
            PrecisionCommand.Build(context),
            CertaintyCommand.Build(context),
            ServeCommand.Build(context),
        };
        var parsed = root.Parse(args);
        if (parsed.Errors.Count > 0)
        {
            if (!args[0].StartsWith('-') && root.Subcommands.All(known => known.Name != args[0]))
            {
                await context.Error.WriteLineAsync(NoSuchCommand(args[0], root));
                return ExitCode.WrongUsage;
            }

            foreach (var error in parsed.Errors)
            {
                await context.Error.WriteLineAsync(error.Message);
            }

            await context.Error.WriteLineAsync(
                "plenum --help, or plenum COMMAND --help, says what is expected."
            );
            return ExitCode.WrongUsage;
        }

        var status = await parsed.InvokeAsync(
            new InvocationConfiguration
            {
                Output = context.Out,
                Error = context.Error,
                EnableDefaultExceptionHandler = false,
            },
            ct
        );
        if (parsed.CommandResult.Command == root && parsed.Action is HelpAction)
        {
            await context.Out.WriteAsync(WhatNext.Text);
        }

        return status;
    }

    private static string NoSuchCommand(string word, RootCommand root)
    {
        var known = root.Subcommands.Select(command => command.Name).ToList();
        var nearest = NearestWord.Of(word, known);
        return $"There is no command \"{word}\". "
            + (nearest is null ? "" : $"Did you mean {nearest}? ")
            + $"Known are {string.Join(", ", known)}; plenum COMMAND --help says what each takes.";
    }
}

using System.CommandLine;
using Plenum.Cli.Output;
using Plenum.Samples;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum demo DIR [--packages N] [--seed S]</c></summary>
internal static class DemoCommand
{
    private static readonly Argument<DirectoryInfo> Folder = new("DIR")
    {
        Description = "The folder to write into.",
    };

    private static readonly Option<int?> Packages = new("--packages")
    {
        Description = "A synthetic project of so many packages instead of the plant.",
        HelpName = "N",
        CustomParser = CommonOptions.WholeNumber(
            1,
            SyntheticProject.MostPackages,
            $"--packages takes a whole number from 1 to {SyntheticProject.MostPackages}."
        ),
    };

    private static readonly Option<ulong?> Seed = new("--seed")
    {
        Description = "The same seed gives the same files.",
        HelpName = "S",
        CustomParser = CommonOptions.WholeNumber(
            ulong.MinValue,
            ulong.MaxValue,
            $"--seed takes a whole number from 0 to {ulong.MaxValue}."
        ),
    };

    public static Command Build(CliContext context)
    {
        var command = new Command(
            "demo",
            "Write the files of the invented demo plant, or of a synthetic project."
        )
        {
            Folder,
            Packages,
            Seed,
            CommonOptions.Json,
        };
        command.SetAction(
            (parsed, ct) =>
                Task.FromResult(context.Run(parsed, json => Write(context, parsed, json, ct)))
        );
        return command;
    }

    private static int Write(
        CliContext context,
        ParseResult parsed,
        bool json,
        CancellationToken ct
    )
    {
        var folder = parsed.GetRequiredValue(Folder).FullName;
        var seed = parsed.GetValue(Seed);
        using (var progress = new ProgressLine(context))
        {
            if (parsed.GetValue(Packages) is { } packages)
            {
                SyntheticProject.Write(
                    folder,
                    packages,
                    seed ?? SyntheticProject.DefaultSeed,
                    (what, part) => progress.Show(part, what),
                    ct
                );
            }
            else
            {
                DemoProject.Write(folder, seed ?? DemoProject.DefaultSeed);
            }
        }

        if (json)
        {
            JsonAnswer.Write(context.Out, answer => answer.WriteString("folder", folder));
        }
        else
        {
            context.Out.WriteLine(
                $"Written into {folder}. Next: plenum new NAME.plenum, plenum import NAME.plenum {folder}"
            );
        }

        return ExitCode.Done;
    }
}

using System.CommandLine;
using Plenum.Store;
using Plenum.Web.Host;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum serve [PROJECT...] [--address A] [--port P]</c></summary>
internal static class ServeCommand
{
    private const int LastPort = 65_535;

    private static readonly Argument<FileInfo[]> Projects = new("PROJECT")
    {
        Description = "Project files to serve. More can be opened and made in the browser.",
        Arity = ArgumentArity.ZeroOrMore,
    };

    private static readonly Option<string> Address = new("--address")
    {
        Description = "The address to serve at; only this machine's own until people can sign in.",
        DefaultValueFactory = _ => "127.0.0.1",
        HelpName = "A",
    };

    private static readonly Option<int?> Port = new("--port")
    {
        Description = "The port; a free one by default.",
        HelpName = "P",
        CustomParser = CommonOptions.WholeNumber(
            0,
            LastPort,
            $"--port takes a whole number from 1 to {LastPort}, or 0 for a free port."
        ),
    };

    public static Command Build(CliContext context)
    {
        var command = new Command("serve", "Show projects in a browser on this machine.")
        {
            Projects,
            Address,
            Port,
        };
        command.SetAction(
            (parsed, ct) =>
                context.RunAsync("project", json: false, () => Serve(context, parsed, ct))
        );
        return command;
    }

    private static Task<int> Serve(CliContext context, ParseResult parsed, CancellationToken ct)
    {
        var files = parsed.GetValue(Projects) ?? [];
        foreach (var file in files)
        {
            // what cannot be opened is said now, not when somebody looks at it
            using var _ = ProjectFile.Open(file.FullName, clock: context.Clock);
        }

        return Serving.Run(
            context,
            new WebSettings(
                [.. files.Select(file => file.FullName)],
                Environment.CurrentDirectory,
                parsed.GetValue(Port) ?? 0,
                parsed.GetRequiredValue(Address)
            ),
            "",
            ct
        );
    }
}

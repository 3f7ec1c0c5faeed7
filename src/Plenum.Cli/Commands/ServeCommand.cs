using System.CommandLine;
using Microsoft.AspNetCore.Builder;
using Plenum.Web.Host;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum serve PROJECT... [--address A] [--port P]</c></summary>
internal static class ServeCommand
{
    private static readonly Argument<FileInfo[]> Projects = new("PROJECT")
    {
        Description = "Project files to serve.",
        Arity = ArgumentArity.ZeroOrMore,
    };

    private static readonly Option<string> Address = new("--address")
    {
        Description = "The address to serve at; only this machine's own until people can sign in.",
        DefaultValueFactory = _ => "127.0.0.1",
        HelpName = "A",
    };

    private static readonly Option<int> Port = new("--port")
    {
        Description = "The port; a free one by default.",
        HelpName = "P",
    };

    public static Command Build(CliContext context)
    {
        var command = new Command("serve", "Serve projects to a browser on this machine.")
        {
            Projects,
            Address,
            Port,
        };
        command.SetAction((parsed, ct) => Serve(context, parsed, ct));
        return command;
    }

    private static async Task<int> Serve(
        CliContext context,
        ParseResult parsed,
        CancellationToken ct
    )
    {
        var files = parsed.GetValue(Projects) ?? [];
        await using var app = PlenumWeb.Build(
            new WebSettings(
                [.. files.Select(file => file.FullName)],
                Environment.CurrentDirectory,
                parsed.GetValue(Port),
                parsed.GetRequiredValue(Address)
            ),
            context.Clock
        );
        await app.StartAsync(ct);
        foreach (var address in PlenumWeb.Addresses(app))
        {
            await context.Out.WriteLineAsync($"Plenum is at {address}/ (Ctrl+C stops it).");
        }

        await Microsoft.Extensions.Hosting.HostingAbstractionsHostExtensions.WaitForShutdownAsync(
            app,
            ct
        );
        return ExitCode.Done;
    }
}

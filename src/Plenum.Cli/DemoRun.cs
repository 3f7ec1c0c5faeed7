using Plenum.Web.Host;

namespace Plenum.Cli;

/// <summary><c>plenum</c> without arguments: the invented plant in a browser, and whatever was made there before.</summary>
internal static class DemoRun
{
    public static Task<int> Run(CliContext context, CancellationToken ct) =>
        context.RunAsync("demo", json: false, () => Serve(context, ct));

    private static async Task<int> Serve(CliContext context, CancellationToken ct)
    {
        string folder;
        try
        {
            folder = OwnFolder.Find(context.OwnFolder);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            await context.Error.WriteLineAsync(
                $"There is no place to keep the demo project: neither {context.OwnFolder ?? "a folder of your own"} nor "
                    + $"{Path.GetTempPath()} can be written. Make one of them writable, or serve a project that is there: "
                    + "plenum serve PROJECT"
            );
            return ExitCode.NotAllowed;
        }

        using var demo = await Task.Run(
            () => DemoPlace.Open(Path.Combine(folder, "demo"), context.Clock, ct),
            ct
        );
        var projects = Path.Combine(folder, "projects");
        Directory.CreateDirectory(projects);
        string[] own = Directory.GetFiles(projects, "*.plenum");
        Array.Sort(own, StringComparer.Ordinal);
        return await Serving.Run(
            context,
            new WebSettings([demo.File, .. own], projects),
            Below(demo, projects),
            ct
        );
    }

    private static string Below(DemoPlace demo, string projects) =>
        $"""

            It shows an invented desalination plant to try things on, {(
                demo.IsPassing
                    ? "a copy that goes when this stops, because another run has the other one open"
                    : "kept in " + demo.File
            )}.
            The tables it was made from are in {demo.Files}: change one, and bring it in on the page.
            Projects that you make on the page are kept in {projects}.
            Your own project files: plenum serve PROJECT. All commands: plenum --help

            """.ReplaceLineEndings();
}

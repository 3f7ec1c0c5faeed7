namespace Plenum.Cli.Tests.Support;

/// <summary>Finds the files of these tests from where they run.</summary>
internal static class Repository
{
    /// <summary>The folder of this project.</summary>
    public static string Tests { get; } = Path.Combine(Find(), "tests", "Plenum.Cli.Tests");

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Plenum.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName
            ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}

namespace Plenum.Browser.Tests;

/// <summary>Where the files of the repository are.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string Sample(string name) => Path.Combine(Root, "samples", name);

    private static string Find()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Plenum.slnx")))
        {
            folder =
                Path.GetDirectoryName(folder.TrimEnd(Path.DirectorySeparatorChar))
                ?? throw new InvalidOperationException("The tests do not run in the repository.");
        }

        return folder;
    }
}

namespace Plenum.Cli;

/// <summary>Where the program keeps what it makes by itself.</summary>
internal static class OwnFolder
{
    private const string Name = "Plenum";

    /// <summary>The folder in the data of the person who is signed in; null if the system names none.</summary>
    public static string? OfThisPerson()
    {
        var data = Environment.GetFolderPath(
            Environment.SpecialFolder.LocalApplicationData,
            Environment.SpecialFolderOption.DoNotVerify
        );
        return data.Length == 0 ? null : Path.Combine(data, Name);
    }

    /// <summary>That folder if it can be written, else a new one among what is temporary.</summary>
    /// <exception cref="IOException">Neither can be written.</exception>
    /// <exception cref="UnauthorizedAccessException">Neither may be written.</exception>
    public static string Find(string? wanted) =>
        wanted is not null && CanBeWritten(wanted)
            ? wanted
            : Directory.CreateTempSubdirectory("plenum-").FullName;

    private static bool CanBeWritten(string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
            var probe = Path.Combine(folder, $".{Guid.NewGuid():N}");
            File.WriteAllBytes(probe, [0]);
            File.Delete(probe);
            return true;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}

using System.Runtime.InteropServices;

namespace Plenum.Store.Sqlite;

/// <summary>Gives a file that was written under another name its own, so that it stays there after a power cut.</summary>
internal static partial class NewFile
{
    private const int AlreadyExists = 17;

    /// <summary>
    /// Renames without ever replacing a file, and makes the name durable. Both paths lie in the same folder.
    /// </summary>
    /// <exception cref="StoreException">A file of the name exists.</exception>
    public static void Publish(string temporary, string path)
    {
        try
        {
            // A second name first, then the removal of the first: unlike a rename this fails if the name is taken,
            // whoever was faster. File systems without second names get the ordinary move.
            if (OperatingSystem.IsWindows() || Link(temporary, path) != 0)
            {
                if (!OperatingSystem.IsWindows() && Marshal.GetLastPInvokeError() == AlreadyExists)
                {
                    throw Taken(path);
                }

                File.Move(temporary, path, overwrite: false);
            }
            else
            {
                File.Delete(temporary);
            }
        }
        catch (IOException) when (File.Exists(path))
        {
            throw Taken(path);
        }

        if (!OperatingSystem.IsWindows())
        {
            SyncFolder(Path.GetDirectoryName(path)!);
        }
    }

    public static StoreException Taken(string path) =>
        new(
            StoreProblem.AlreadyExists,
            $"{path} exists already and was left as it is. Choose another name, or open it."
        );

    private static void SyncFolder(string folder)
    {
        var descriptor = Open(folder, 0);
        if (descriptor >= 0)
        {
            // Best effort: some file systems refuse this for folders, and the file itself is safe.
            _ = Sync(descriptor);
            _ = Close(descriptor);
        }
    }

    [LibraryImport(
        "libc",
        EntryPoint = "link",
        SetLastError = true,
        StringMarshalling = StringMarshalling.Utf8
    )]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Link(string existing, string added);

    [LibraryImport("libc", EntryPoint = "open", StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Open(string path, int flags);

    [LibraryImport("libc", EntryPoint = "fsync")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Sync(int descriptor);

    [LibraryImport("libc", EntryPoint = "close")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Close(int descriptor);
}

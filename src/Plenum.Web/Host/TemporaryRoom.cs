namespace Plenum.Web.Host;

/// <summary>
/// A folder of this run for files that are only passing through: what is brought in, and what is about to be fetched.
/// Only the person who runs the program can look into it. It is removed at the end, and what a run that was broken off
/// has left is removed by the next.
/// </summary>
public sealed class TemporaryRoom : IDisposable
{
    private const string Prefix = "plenum-run-";
    private const string Lock = ".lock";

    private readonly Lock access = new();
    private readonly string parent;
    private string? own;
    private FileStream? held;
    private bool closed;

    public TemporaryRoom(WebSettings settings)
    {
        parent = settings.Temporary ?? Path.GetTempPath();
        RemoveLeftovers();
    }

    /// <summary>Makes a new, empty folder.</summary>
    /// <exception cref="IOException">There is no room for it.</exception>
    /// <exception cref="UnauthorizedAccessException">Nothing may be written there.</exception>
    public string NewFolder()
    {
        lock (access)
        {
            ObjectDisposedException.ThrowIf(closed, this);
            own ??= Open();
            var folder = Path.Combine(own, Guid.NewGuid().ToString("N"));
            Directory.CreateDirectory(folder);
            return folder;
        }
    }

    /// <summary>Removes a folder with all that is in it. What cannot be removed now goes with the room.</summary>
    public static void Remove(string folder)
    {
        try
        {
            if (Directory.Exists(folder))
            {
                Directory.Delete(folder, recursive: true);
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // another program looks at a file in it, or it is another person's
        }
    }

    public void Dispose()
    {
        lock (access)
        {
            closed = true;
            if (own is not null)
            {
                Remove(own);
                held!.Dispose();
                own = null;
            }
        }
    }

    private string Open()
    {
        var folder = Path.Combine(parent, Prefix + Guid.NewGuid().ToString("N"));
        // the lock comes first and goes last: a folder without one is nobody's
        held = new FileStream(
            folder + Lock,
            FileMode.CreateNew,
            FileAccess.ReadWrite,
            FileShare.None,
            bufferSize: 1,
            FileOptions.DeleteOnClose
        );
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(folder);
        }
        else
        {
            Directory.CreateDirectory(
                folder,
                UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute
            );
        }

        return folder;
    }

    private void RemoveLeftovers()
    {
        try
        {
            foreach (var file in Directory.GetFiles(parent, Prefix + "*" + Lock))
            {
                RemoveUnlessHeld(file);
            }

            foreach (var folder in Directory.GetDirectories(parent, Prefix + "*"))
            {
                if (!File.Exists(folder + Lock))
                {
                    Remove(folder);
                }
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // the folder cannot be listed; what is needed is said when a file is to be put there
        }
    }

    private static void RemoveUnlessHeld(string file)
    {
        try
        {
            using (new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.None))
            {
                Remove(file[..^Lock.Length]);
            }

            File.Delete(file);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // a run that is alive holds it, or it is another person's
        }
    }
}

namespace Plenum.Exchange;

/// <summary>
/// A file that is written under a temporary name beside its real one, hidden from those who look for tables, until all
/// of it is there.
/// </summary>
internal sealed class PartFile : IDisposable
{
    private readonly string path;
    private readonly string part;
    private bool renamed;

    public PartFile(string path)
    {
        this.path = Path.GetFullPath(path);
        var folder = Path.GetDirectoryName(this.path)!;
        Directory.CreateDirectory(folder);
        part = Path.Combine(folder, $".{Path.GetFileName(path)}.part");
        Stream = new FileStream(
            part,
            FileMode.Create,
            FileAccess.Write,
            FileShare.None,
            128 * 1024
        );
    }

    public FileStream Stream { get; }

    /// <summary>Puts everything on disk and closes the file, still under its temporary name.</summary>
    public void Close()
    {
        Stream.Flush(flushToDisk: true);
        Stream.Dispose();
    }

    /// <summary>Gives the closed file its real name, in place of one that was there.</summary>
    public void Rename()
    {
        File.Move(part, path, overwrite: true);
        renamed = true;
    }

    /// <summary>Removes the file if it did not get its real name.</summary>
    public void Dispose()
    {
        try
        {
            Stream.Dispose();
        }
        catch (IOException) when (!renamed)
        {
            // what is left in the buffer does not fit on the disk, and goes with the file
        }

        if (!renamed)
        {
            File.Delete(part);
        }
    }
}

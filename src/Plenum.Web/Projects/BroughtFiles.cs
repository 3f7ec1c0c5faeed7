using Plenum.Core.Foundation;
using Plenum.Web.Host;

namespace Plenum.Web.Projects;

/// <summary>A file that was brought: its name as the person has it, and its size in bytes.</summary>
public sealed record BroughtFile(string Name, long Bytes);

/// <summary>Why a file was not taken, as a status of HTTP and in words.</summary>
public sealed class NotTakenException(int status, string message) : Exception(message)
{
    public int Status => status;
}

/// <summary>
/// The files of one import while it is being looked at, in a folder of their own. They do not change while they are
/// read. A file of a known name takes the place of the one that was there.
/// </summary>
public sealed class BroughtFiles : IDisposable
{
    private readonly Lock access = new();
    private readonly Dictionary<string, Held> files = new(StringComparer.OrdinalIgnoreCase);
    private readonly CancellationTokenSource closing = new();
    private readonly Action<BroughtFiles> left;
    private long arriving;
    private int writers;
    private int readers;
    private bool closed;

    internal BroughtFiles(string id, string projectKey, string folder, Action<BroughtFiles> left)
    {
        Id = id;
        ProjectKey = projectKey;
        Folder = folder;
        this.left = left;
    }

    /// <summary>A number that cannot be guessed: who knows it may bring files.</summary>
    public string Id { get; }

    /// <summary>The project that they are for.</summary>
    public string ProjectKey { get; }

    /// <summary>Where they lie.</summary>
    public string Folder { get; }

    /// <summary>Grows with every file that comes or goes.</summary>
    public int Version { get; private set; }

    /// <summary>What was wrong with them when they were last looked at; null if nothing was, or they were not.</summary>
    public IReadOnlyList<InputError>? Errors { get; set; }

    /// <summary>Bytes that have come, also of files that are still coming.</summary>
    public long Received
    {
        get
        {
            lock (access)
            {
                return Bytes + arriving;
            }
        }
    }

    /// <summary>In the order of their names.</summary>
    public IReadOnlyList<BroughtFile> Files
    {
        get
        {
            lock (access)
            {
                return
                [
                    .. files
                        .Values.Select(file => new BroughtFile(file.Name, file.Bytes))
                        .OrderBy(file => file.Name, StringComparer.Ordinal),
                ];
            }
        }
    }

    private long Bytes => files.Values.Sum(file => file.Bytes);

    /// <summary>Takes a file.</summary>
    /// <param name="name">Its name, with the folder in which it came if it came in one.</param>
    /// <param name="batch">Files that came at once have the same number.</param>
    /// <exception cref="NotTakenException">It is not taken, and why.</exception>
    /// <exception cref="IOException">It could not be written.</exception>
    /// <exception cref="OperationCanceledException">It was broken off. Nothing of it stays.</exception>
    public async Task Take(string name, int batch, Stream content, CancellationToken ct)
    {
        if (FileNames.FaultOfTables(name) is { } fault)
        {
            throw new NotTakenException(400, fault);
        }

        using var stop = CancellationTokenSource.CreateLinkedTokenSource(ct, closing.Token);
        BeginWriting(name);
        var part = Path.Combine(Folder, $".{Guid.NewGuid():N}.part");
        var bytes = 0L;
        try
        {
            await using (var file = new FileStream(part, FileMode.CreateNew, FileAccess.Write))
            {
                var buffer = new byte[128 * 1024];
                while (await content.ReadAsync(buffer, stop.Token) is > 0 and var read)
                {
                    bytes += read;
                    CountIn(read);
                    await file.WriteAsync(buffer.AsMemory(0, read), stop.Token);
                }
            }

            Place(name, batch, part, bytes);
            bytes = 0;
        }
        finally
        {
            EndWriting(bytes, part);
        }
    }

    /// <summary>Takes one file away again.</summary>
    public void TakeAway(string name)
    {
        lock (access)
        {
            if (readers == 0 && files.Remove(name, out var file))
            {
                File.Delete(file.Path);
                Version++;
            }
        }
    }

    /// <summary>Takes all files away again.</summary>
    public void Clear()
    {
        foreach (var file in Files)
        {
            TakeAway(file.Name);
        }
    }

    /// <summary>The paths of the files, which stay as they are until what is returned is disposed of.</summary>
    public Reading BeginReading()
    {
        lock (access)
        {
            ObjectDisposedException.ThrowIf(closed, this);
            readers++;
            return new Reading(
                this,
                [
                    .. files
                        .Values.OrderBy(file => file.Name, StringComparer.Ordinal)
                        .Select(file => file.Path),
                ],
                Version
            );
        }
    }

    /// <summary>A text about the files without the folder in which they lie here.</summary>
    public string AsBrought(string text) =>
        text.Replace(Folder + Path.DirectorySeparatorChar, "", StringComparison.Ordinal);

    /// <summary>Ends bringing, and removes the files as soon as nobody reads or writes them.</summary>
    public void Dispose()
    {
        bool empty;
        lock (access)
        {
            if (closed)
            {
                return;
            }

            closed = true;
            empty = readers + writers == 0;
        }

        closing.Cancel();
        left(this);
        if (empty)
        {
            TemporaryRoom.Remove(Folder);
        }
    }

    private void BeginWriting(string name)
    {
        lock (access)
        {
            if (closed)
            {
                throw new NotTakenException(
                    410,
                    "This import has been left. Choose the files again."
                );
            }

            if (readers > 0)
            {
                throw new NotTakenException(
                    409,
                    $"{name} was not taken: the files are being read. Bring it when that is done."
                );
            }

            if (files.Count + writers >= UploadLimits.MostFiles && !files.ContainsKey(name))
            {
                throw new NotTakenException(
                    413,
                    $"{name} was not taken: at most {UploadLimits.MostFiles} files come in one import. Bring the others in a second one."
                );
            }

            writers++;
        }
    }

    private void CountIn(int read)
    {
        lock (access)
        {
            arriving += read;
            if (Bytes + arriving > UploadLimits.MostBytes)
            {
                throw new NotTakenException(413, UploadLimits.TooMuch);
            }
        }
    }

    private void Place(string name, int batch, string part, long bytes)
    {
        lock (access)
        {
            var place = PlaceOf(name, batch);
            var path = Path.Combine([Folder, .. place.Split('/')]);
            if (files.Remove(place, out var before))
            {
                File.Delete(before.Path);
            }

            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.Move(part, path);
            files.Add(place, new Held(place, path, bytes, batch));
            arriving -= bytes;
            Version++;
        }
    }

    /// <summary>
    /// A single file that comes later takes the place of the one of its name, also where that came in a folder: a
    /// person who has mended one file of a folder brings just this one.
    /// </summary>
    private string PlaceOf(string name, int batch)
    {
        if (files.ContainsKey(name) || name.Contains('/', StringComparison.Ordinal))
        {
            return files.GetValueOrDefault(name)?.Name ?? name;
        }

        var same = files
            .Values.Where(file =>
                file.Batch != batch
                && Path.GetFileName(file.Path).Equals(name, StringComparison.OrdinalIgnoreCase)
            )
            .ToList();
        return same.Count == 1 ? same[0].Name : name;
    }

    private void EndWriting(long bytes, string part)
    {
        bool empty;
        lock (access)
        {
            arriving -= bytes;
            writers--;
            empty = closed && readers + writers == 0;
        }

        File.Delete(part);
        if (empty)
        {
            TemporaryRoom.Remove(Folder);
        }
    }

    private void EndReading()
    {
        bool empty;
        lock (access)
        {
            readers--;
            empty = closed && readers + writers == 0;
        }

        if (empty)
        {
            TemporaryRoom.Remove(Folder);
        }
    }

    /// <summary>The files while they stay as they are.</summary>
    public sealed class Reading : IDisposable
    {
        private readonly BroughtFiles files;
        private bool done;

        internal Reading(BroughtFiles files, IReadOnlyList<string> paths, int version)
        {
            this.files = files;
            Paths = paths;
            Version = version;
        }

        public IReadOnlyList<string> Paths { get; }

        public int Version { get; }

        public void Dispose()
        {
            if (!done)
            {
                done = true;
                files.EndReading();
            }
        }
    }

    private sealed record Held(string Name, string Path, long Bytes, int Batch);
}

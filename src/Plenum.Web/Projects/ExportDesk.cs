using System.Collections.Concurrent;
using System.IO.Compression;
using Plenum.Core;
using Plenum.Store;
using Plenum.Web.Host;
using Plenum.Workbench;
using Plenum.Workbench.Questions;

namespace Plenum.Web.Projects;

/// <summary>A project's tables on their way out: being written, ready to be fetched, or refused with the reason.</summary>
public sealed class ExportJob : IDisposable
{
    /// <summary>Share of the work that writing the tables is; packing them is the rest.</summary>
    private const double Writing = 0.8;

    private readonly CancellationTokenSource stop = new();
    private readonly Action<ExportJob> gone;
    private string? folder;

    internal ExportJob(
        ShelvedProject project,
        ExportFormat format,
        TemporaryRoom room,
        TimeProvider clock,
        Action<ExportJob> gone
    )
    {
        Project = project;
        Format = format;
        Since = clock.GetTimestamp();
        this.gone = gone;
        var token = stop.Token;
        Done = Task.Run(() => Run(room, token), CancellationToken.None);
    }

    public string Id { get; } = Guid.NewGuid().ToString("N");

    public ShelvedProject Project { get; }

    public ExportFormat Format { get; }

    /// <summary>When it began.</summary>
    public long Since { get; }

    /// <summary>How much is done, 0 to 1.</summary>
    public double Part { get; private set; }

    /// <summary>Ends when the file is ready or refused; never fails.</summary>
    public Task Done { get; }

    /// <summary>The file; null until it is ready.</summary>
    public string? FilePath { get; private set; }

    /// <summary>The file is on its way to the person.</summary>
    public bool IsFetched { get; internal set; }

    /// <summary>Why there is no file; null if there is, or if it was stopped.</summary>
    public string? Refusal { get; private set; }

    public static string TypeOf(ExportFormat format) =>
        format == ExportFormat.Csv
            ? "application/zip"
            : "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    /// <summary>Stops writing, and takes what was written away.</summary>
    public void Dispose()
    {
        gone(this);
        stop.Cancel();
        _ = CleanUp();
    }

    private async Task CleanUp()
    {
        await Done;
        if (folder is not null)
        {
            TemporaryRoom.Remove(folder);
        }

        stop.Dispose();
    }

    private async Task Run(TemporaryRoom room, CancellationToken ct)
    {
        try
        {
            if (await Project.Open() is not { } open)
            {
                Refusal = Project.Refusal;
                return;
            }

            folder = room.NewFolder();
            var tables = Path.Combine(folder, "tables");
            open.Export(tables, Format, (part, _) => Part = part * Writing, ct);
            if (Format == ExportFormat.Xlsx)
            {
                FilePath = Directory.GetFiles(tables).Single();
                return;
            }

            var packed = Path.Combine(folder, NameOf(open.Current) + ".zip");
            await Pack(tables, packed, ct);
            FilePath = packed;
        }
        catch (OperationCanceledException)
        {
            // stopped: there is nobody left to tell
        }
        catch (Exception error)
            when (error
                    is IOException
                        or UnauthorizedAccessException
                        or QuestionException
                        or StoreException
                        or ObjectDisposedException
            )
        {
            Refusal = error.Message;
        }
    }

    private async Task Pack(string tables, string packed, CancellationToken ct)
    {
        var files = Directory.GetFiles(tables);
        Array.Sort(files, StringComparer.Ordinal);
        var total = files.Sum(file => (double)new FileInfo(file).Length);
        var done = 0.0;
        await using var zip = await ZipFile.OpenAsync(packed, ZipArchiveMode.Create, ct);
        foreach (var file in files)
        {
            await zip.CreateEntryFromFileAsync(
                file,
                Path.GetFileName(file),
                CompressionLevel.Fastest,
                ct
            );
            done += new FileInfo(file).Length;
            Part = Writing + ((1 - Writing) * (total == 0 ? 1 : done / total));
        }
    }

    private string NameOf(Project project) =>
        project.Settings.Code is { Length: > 0 } code && FileNames.Fault(code) is null
            ? code
            : Project.Key;
}

/// <summary>All exports that are being written or wait to be fetched.</summary>
public sealed class ExportDesk(TemporaryRoom room, TimeProvider clock) : IDisposable
{
    private readonly ConcurrentDictionary<string, ExportJob> open = new(StringComparer.Ordinal);

    public ExportJob Begin(ShelvedProject project, ExportFormat format)
    {
        var job = new ExportJob(
            project,
            format,
            room,
            clock,
            done => open.TryRemove(done.Id, out _)
        );
        open[job.Id] = job;
        return job;
    }

    public ExportJob? Find(string projectKey, string id) =>
        open.TryGetValue(id, out var job) && job.Project.Key == projectKey ? job : null;

    public void Dispose()
    {
        foreach (var job in open.Values)
        {
            job.Dispose();
        }
    }
}

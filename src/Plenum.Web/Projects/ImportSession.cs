using Plenum.Core;
using Plenum.Store;
using Plenum.Web.Host;
using Plenum.Workbench;

namespace Plenum.Web.Projects;

/// <summary>How taking over has ended.</summary>
public enum Accepted
{
    /// <summary>The project has the rows.</summary>
    Taken,

    /// <summary>Project or files are no longer those that were looked at; they were looked at anew.</summary>
    LookedAnew,

    /// <summary>It could not be done; <see cref="ImportSession.Trouble"/> says why. Nothing has changed.</summary>
    NotTaken,
}

/// <summary>
/// One import: files are looked at, which changes nothing, and then taken over, exactly those that were looked at, on
/// exactly the revision that they were looked at with. One step at a time.
/// </summary>
public sealed class ImportSession(
    ShelvedProject project,
    BroughtFiles files,
    string person,
    TimeProvider clock
) : IAsyncDisposable
{
    private CancellationTokenSource? stop;
    private Task running = Task.CompletedTask;

    public ShelvedProject Shelved => project;

    public BroughtFiles Files => files;

    /// <summary>What the files would do; null until they were looked at.</summary>
    public ImportPreview? Preview { get; private set; }

    /// <summary>Why a step could not be done; null if it could.</summary>
    public string? Trouble { get; private set; }

    /// <summary>The step was stopped by hand.</summary>
    public bool IsStopped { get; private set; }

    /// <summary>Why files were looked at anew instead of taken over; null if they were not.</summary>
    public string? Anew { get; private set; }

    /// <summary>How much of the step is done, 0 to 1.</summary>
    public double Part { get; private set; }

    /// <summary>What is being done, such as the file that is being read.</summary>
    public string What { get; private set; } = "";

    /// <summary>When the step that is running began; null if none is.</summary>
    public long? Since { get; private set; }

    /// <summary>Looks at the files: what they would change, or all that is wrong with them.</summary>
    public Task Look(bool replace) => Step(ct => LookOnce(replace, ct));

    /// <summary>Takes over what was looked at.</summary>
    /// <param name="reason">Why, for the audit record; empty for none.</param>
    public async Task<Accepted> Accept(string? reason)
    {
        var end = Accepted.NotTaken;
        await Step(async ct => end = await AcceptOnce(reason, ct));
        return end;
    }

    /// <summary>Stops the step that is running. Nothing has changed then.</summary>
    public void Stop() => stop?.Cancel();

    /// <summary>Forgets what was looked at, after files have come or gone.</summary>
    public void Forget()
    {
        Preview = null;
        Trouble = null;
        IsStopped = false;
        Anew = null;
        files.Errors = null;
    }

    public async ValueTask DisposeAsync()
    {
        Stop();
        await running;
        files.Dispose();
    }

    private Task Step(Func<CancellationToken, Task> step)
    {
        if (!running.IsCompleted)
        {
            throw new InvalidOperationException("A step is running already.");
        }

        return running = Run(step);
    }

    private async Task Run(Func<CancellationToken, Task> step)
    {
        Trouble = null;
        IsStopped = false;
        Anew = null;
        Part = 0;
        What = "";
        Since = clock.GetTimestamp();
        using var source = new CancellationTokenSource();
        stop = source;
        try
        {
            await step(source.Token);
        }
        catch (OperationCanceledException)
        {
            IsStopped = true;
            Trouble = "The project is as it was.";
        }
        catch (StoreException refused)
        {
            Trouble = refused.Message;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            Trouble = files.AsBrought(error.Message) + " Nothing has changed.";
        }
        finally
        {
            stop = null;
            Since = null;
        }
    }

    private async Task LookOnce(bool replace, CancellationToken ct)
    {
        Preview = null;
        files.Errors = null;
        using var reading = files.BeginReading();
        if (await project.Open() is not { } open)
        {
            Trouble = project.Refusal;
            return;
        }

        var before = open.Current;
        // the command's second half, writing, does not come
        var answer = await project.Import(
            Command(reading, replace, dryRun: true, null),
            (part, what) => Tell(part * 2, what),
            ct
        );
        Show(answer!, before, reading.Version, replace);
    }

    private async Task<Accepted> AcceptOnce(string? reason, CancellationToken ct)
    {
        if (Preview is not { CanBeTaken: true } preview)
        {
            throw new InvalidOperationException("Nothing that can be taken was looked at.");
        }

        try
        {
            using var reading = files.BeginReading();
            var answer =
                reading.Version == preview.FilesVersion
                    ? await project.Import(
                        Command(reading, preview.Replace, dryRun: false, reason),
                        Tell,
                        ct,
                        preview.Revision
                    )
                    : null;
            if (answer is { Errors.Any: false })
            {
                return Accepted.Taken;
            }
        }
        catch (StoreException conflict) when (conflict.Problem == StoreProblem.Conflict)
        {
            await project.Reload(ct);
        }

        await LookOnce(preview.Replace, ct);
        Anew =
            (
                project.Current?.Revision == preview.Revision
                    ? "The files are no longer those that were looked at. "
                    : $"The project has changed since: it was at revision {preview.Revision}, it is at {project.Current?.Revision}. "
            ) + "Nothing was taken over. This is what the files would change now.";
        return Accepted.LookedAnew;
    }

    private ImportCommand Command(
        BroughtFiles.Reading reading,
        bool replace,
        bool dryRun,
        string? reason
    ) =>
        new(
            reading.Paths,
            dryRun,
            replace,
            person,
            Reason: string.IsNullOrWhiteSpace(reason) ? null : reason.Trim()
        );

    private void Show(ImportAnswer answer, Project before, int version, bool replace)
    {
        Preview = ImportPreview.Of(answer, before, version, replace, files.AsBrought);
        files.Errors = Preview.ErrorCount > 0 ? Preview.Errors : null;
    }

    private void Tell(double part, string what)
    {
        Part = Math.Clamp(part, 0, 1);
        What = files.AsBrought(what);
    }
}

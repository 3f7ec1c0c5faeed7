using Plenum.Core;
using Plenum.Store;
using Plenum.Workbench;
using Plenum.Workbench.Commands;

namespace Plenum.Web.Host;

/// <summary>A project on the shelf: closed, being opened, open, or refused with the reason.</summary>
public sealed class ShelvedProject : IDisposable
{
    private readonly TimeProvider clock;
    private readonly Lock access = new();
    private readonly SemaphoreSlim oneAfterAnother = new(1, 1);
    private Task<OpenProject>? opening;
    private CancellationTokenSource? stop;
    private OpenProject? open;

    internal ShelvedProject(string key, string path, TimeProvider clock)
    {
        Key = key;
        Path = path;
        this.clock = clock;
    }

    /// <summary>The progress of opening, or the project's value, has changed.</summary>
    public event Action? Changed;

    /// <summary>Its name in addresses.</summary>
    public string Key { get; internal set; }

    /// <summary>The file.</summary>
    public string Path { get; }

    /// <summary>The newest value; null until it is open.</summary>
    public Project? Current => open?.Current;

    /// <summary>What the project is called: by its own name, or by that of its file as long as it has none.</summary>
    public string Name =>
        Current?.Settings.Name is { Length: > 0 } name
            ? name
            : System.IO.Path.GetFileNameWithoutExtension(Path);

    /// <summary>How much of it has been read, 0 to 1.</summary>
    public double Progress { get; private set; }

    /// <summary>Why it could not be opened; null if it was not tried or went well.</summary>
    public string? Refusal { get; private set; }

    /// <summary>When reading began; null if it is not being read.</summary>
    public long? ReadingSince { get; private set; }

    /// <summary>Opens it, or waits until it is open. A reason why not stands in <see cref="Refusal"/>.</summary>
    public async Task<OpenProject?> Open()
    {
        if (open is { } there)
        {
            return there;
        }

        Task<OpenProject> task;
        lock (access)
        {
            if (opening is null)
            {
                stop = new CancellationTokenSource();
                Refusal = null;
                ReadingSince = clock.GetTimestamp();
                var token = stop.Token;
                opening = Task.Run(() =>
                {
                    var read = OpenProject.Open(Path, clock, new ReadingProgress(this), token);
                    Prepare(read.Current);
                    return read;
                });
            }

            task = opening;
        }

        try
        {
            open = await task;
            return open;
        }
        catch (Exception refused)
            when (refused
                    is StoreException
                        or IOException
                        or UnauthorizedAccessException
                        or OperationCanceledException
            )
        {
            lock (access)
            {
                if (ReferenceEquals(opening, task))
                {
                    opening = null;
                }
            }

            Refusal =
                refused is OperationCanceledException
                    ? "Reading was stopped. The project is as it was."
                    : refused.Message;
            return null;
        }
        finally
        {
            ReadingSince = null;
            Changed?.Invoke();
        }
    }

    /// <summary>Computes what every sheet asks for at once, so that no page waits for it while it is drawn.</summary>
    private static void Prepare(Project project)
    {
        _ = project.Totals;
        _ = project.HourTotals;
        _ = project.Baseline;
        _ = project.Placement;
    }

    /// <summary>Stops reading; nothing is lost.</summary>
    public void Stop() => stop?.Cancel();

    /// <summary>Takes tables from files, and tells everybody who looks at the project.</summary>
    /// <param name="onRevision">
    /// The revision on which it is to be done, whatever has been seen before; null for the newest.
    /// </param>
    /// <returns>Null if the project has another revision by now; nothing was done then.</returns>
    /// <exception cref="StoreException">It could not be written; nothing has changed.</exception>
    public async Task<ImportAnswer?> Import(
        ImportCommand command,
        Action<double, string>? progress,
        CancellationToken ct,
        long? onRevision = null
    )
    {
        var project =
            await Open() ?? throw new InvalidOperationException(Refusal ?? "It is not open.");
        await oneAfterAnother.WaitAsync(ct);
        ImportAnswer answer;
        try
        {
            if (onRevision is { } wanted && project.Current.Revision != wanted)
            {
                return null;
            }

            answer = await Task.Run(
                () =>
                {
                    var given = project.Import(command, progress, ct);
                    Prepare(project.Current);
                    return given;
                },
                ct
            );
        }
        finally
        {
            oneAfterAnother.Release();
        }

        if (!command.DryRun && !answer.Errors.Any && answer.Changes.Count > 0)
        {
            Changed?.Invoke();
        }

        return answer;
    }

    /// <summary>Accepts a finding of the audit with a reason, or takes that back, and tells everybody.</summary>
    /// <exception cref="Workbench.Questions.QuestionException">There is no such finding now, or no reason is given.</exception>
    /// <exception cref="StoreException">It could not be written; nothing has changed.</exception>
    public Task Accept(AcceptFindingCommand command) =>
        Write(project => project.Accept(command), changed => changed);

    /// <summary>Does a command, and tells everybody.</summary>
    /// <inheritdoc cref="OpenProject.Edit" path="/exception"/>
    public Task<EditAnswer> Edit(EditCommand command, string person, string? reason = null) =>
        Write(project => project.Edit(command, person, reason), answer => answer.Changes.Count > 0);

    /// <summary>Takes back a person's last command; null if there is none.</summary>
    /// <inheritdoc cref="OpenProject.Undo" path="/exception"/>
    public Task<EditAnswer?> Undo(string person) =>
        Write(project => project.Undo(person), answer => answer is not null);

    /// <summary>Does again what a person took back last; null if there is nothing.</summary>
    /// <inheritdoc cref="OpenProject.Redo" path="/exception"/>
    public Task<EditAnswer?> Redo(string person) =>
        Write(project => project.Redo(person), answer => answer is not null);

    /// <summary>What a person could take back and do again, in words; null for nothing.</summary>
    public (string? Undo, string? Redo) StepsOf(string person) =>
        open?.StepsOf(person) ?? (null, null);

    /// <summary>The last edits since the project was opened, newest first.</summary>
    public IReadOnlyList<EditNote> LastEdits(int count) => open?.LastEdits(count) ?? [];

    /// <summary>One write after another; whoever looks at the project is told once it is written.</summary>
    private async Task<T> Write<T>(Func<OpenProject, T> write, Func<T, bool> hasChanged)
    {
        var project =
            await Open() ?? throw new InvalidOperationException(Refusal ?? "It is not open.");
        await oneAfterAnother.WaitAsync();
        T answer;
        try
        {
            answer = await Task.Run(() =>
            {
                var written = write(project);
                if (hasChanged(written))
                {
                    Prepare(project.Current);
                }

                return written;
            });
        }
        finally
        {
            oneAfterAnother.Release();
        }

        if (hasChanged(answer))
        {
            Changed?.Invoke();
        }

        return answer;
    }

    /// <summary>Reads the file anew, after another program has written to it, and tells everybody.</summary>
    /// <exception cref="StoreException">It cannot be read now; the value stays the one that was there.</exception>
    public async Task Reload(CancellationToken ct)
    {
        if (await Open() is { } project)
        {
            await Task.Run(() => project.Reload(ct: ct), ct);
            Changed?.Invoke();
        }
    }

    public void Dispose()
    {
        stop?.Cancel();
        stop?.Dispose();
        open?.Dispose();
        oneAfterAnother.Dispose();
    }

    private sealed class ReadingProgress(ShelvedProject project) : IProgress<double>
    {
        public void Report(double value)
        {
            if (value - project.Progress > 0.01 || value >= 1)
            {
                project.Progress = value;
                project.Changed?.Invoke();
            }
        }
    }
}

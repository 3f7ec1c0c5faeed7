using Plenum.Core;
using Plenum.Store;
using Plenum.Workbench;

namespace Plenum.Web.Host;

/// <summary>A project on the shelf: closed, being opened, open, or refused with the reason.</summary>
public sealed class ShelvedProject : IDisposable
{
    private readonly TimeProvider clock;
    private readonly Lock access = new();
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
    public string Key { get; }

    /// <summary>The file.</summary>
    public string Path { get; }

    /// <summary>The newest value; null until it is open.</summary>
    public Project? Current => open?.Current;

    /// <summary>How much of it has been read, 0 to 1.</summary>
    public double Progress { get; private set; }

    /// <summary>Why it could not be opened; null if it was not tried or went well.</summary>
    public string? Refusal { get; private set; }

    /// <summary>When reading began; null if it is not being read.</summary>
    public long? ReadingSince { get; private set; }

    /// <summary>Opens it, or waits until it is open. A reason why not stands in <see cref="Refusal"/>.</summary>
    public async Task<OpenProject?> Open()
    {
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
                    OpenProject.Open(Path, clock, new ReadingProgress(this), token)
                );
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

    /// <summary>Stops reading; nothing is lost.</summary>
    public void Stop() => stop?.Cancel();

    /// <summary>Takes tables from files, and tells everybody who looks at the project.</summary>
    public async Task<ImportAnswer> Import(
        ImportCommand command,
        Action<double, string>? progress,
        CancellationToken ct
    )
    {
        var project =
            await Open() ?? throw new InvalidOperationException(Refusal ?? "It is not open.");
        var answer = await Task.Run(() => project.Import(command, progress, ct), ct);
        if (!command.DryRun && !answer.Errors.Any && answer.Changes.Count > 0)
        {
            Changed?.Invoke();
        }

        return answer;
    }

    public void Dispose()
    {
        stop?.Cancel();
        stop?.Dispose();
        open?.Dispose();
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

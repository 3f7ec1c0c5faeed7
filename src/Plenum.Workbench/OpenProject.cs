using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Exchange;
using Plenum.Exchange.Export;
using Plenum.Exchange.Import;
using Plenum.Store;
using Plenum.Workbench.Commands;

namespace Plenum.Workbench;

/// <summary>
/// One open project: commands are applied one after another, written in one transaction with their audit record, and
/// only then does anybody see the new value. Questions are asked of <see cref="Current"/> and never wait for a command.
/// </summary>
public sealed partial class OpenProject : IDisposable
{
    private readonly ProjectFile file;
    private readonly EditDesk desk;
    private readonly Lock writing = new();

    private OpenProject(ProjectFile file, Project current, TimeProvider clock)
    {
        this.file = file;
        desk = new EditDesk(current, file.Commit, clock);
    }

    /// <summary>The newest value that is written.</summary>
    public Project Current => desk.Current;

    /// <summary>True if the columns came from the cache beside the file, false if from its tables.</summary>
    public bool LoadedFromCache => file.LoadedFromCache;

    /// <summary>Makes a new, empty project.</summary>
    /// <exception cref="StoreException">It exists already, or cannot be written.</exception>
    public static void Create(string path, string person, TimeProvider clock)
    {
        using var _ = ProjectFile.Create(path, new AuditEntry(person, "new", null, null), clock);
    }

    /// <exception cref="StoreException">It is not there, no project, newer than this program, or held by another.</exception>
    public static OpenProject Open(
        string path,
        TimeProvider clock,
        IProgress<double>? progress = null,
        CancellationToken ct = default
    )
    {
        var opened = ProjectFile.Open(path, clock: clock);
        try
        {
            return new OpenProject(opened, opened.Load(progress, ct), clock);
        }
        catch
        {
            opened.Dispose();
            throw;
        }
    }

    /// <summary>Reads the file anew, after another program has written to it.</summary>
    /// <exception cref="StoreException">It cannot be read now; the value stays the one that was there.</exception>
    public void Reload(IProgress<double>? progress = null, CancellationToken ct = default)
    {
        lock (writing)
        {
            desk.Replace(file.Load(progress, ct));
        }
    }

    /// <summary>Takes tables from files: all of them or nothing.</summary>
    /// <exception cref="StoreException">It could not be written; nothing has changed.</exception>
    public ImportAnswer Import(
        ImportCommand command,
        Action<double, string>? progress = null,
        CancellationToken ct = default
    )
    {
        lock (writing)
        {
            var result = Importer.Run(
                Current,
                command.Paths,
                command.Replace,
                (part, what) => progress?.Invoke(part / 2, what),
                ct
            );
            if (!result.Errors.Any)
            {
                CheckChangeExists(result.Project, command.Change);
            }

            if (!result.Errors.Any && !command.DryRun && result.Changes.Count > 0)
            {
                desk.Publish(
                    result.Project,
                    result.Changes,
                    new AuditEntry(command.Person, "import", command.Reason, command.Change),
                    progress is null ? null : new StepProgress(progress),
                    ct: ct
                );
            }

            return new ImportAnswer(
                result.Changes.Where(change => change.Count > 0).ToList(),
                result.Errors,
                Current.Revision,
                command.DryRun
            );
        }
    }

    /// <summary>Accepts a finding of the audit with a reason, or takes that back.</summary>
    /// <returns>Whether anything has changed.</returns>
    /// <exception cref="Questions.QuestionException">There is no such finding, or no reason is given.</exception>
    /// <exception cref="StoreException">It could not be written; nothing has changed.</exception>
    public bool Accept(AcceptFindingCommand command)
    {
        lock (writing)
        {
            if (command.Apply(Current) is not var (next, change))
            {
                return false;
            }

            desk.Publish(
                next,
                [change],
                new AuditEntry(
                    command.Person,
                    command.Reason is null ? "take back accepted finding" : "accept finding",
                    command.Reason,
                    null
                )
            );
            return true;
        }
    }

    /// <summary>Writes all tables into a folder, as CSV files or as one workbook.</summary>
    /// <exception cref="IOException">It cannot be written, or does not fit in a workbook.</exception>
    /// <exception cref="Questions.QuestionException">A workbook is asked for and there is no table to write.</exception>
    public void Export(
        string folder,
        ExportFormat format,
        Action<double, string>? progress = null,
        CancellationToken ct = default
    )
    {
        if (File.Exists(folder))
        {
            throw new IOException($"{folder} is a file. Name a folder to write into.");
        }

        if (format == ExportFormat.Xlsx && Current.Tables.All(table => table.Count == 0))
        {
            throw new Questions.QuestionException(
                "The project is empty, and a workbook needs a table. Import tables first."
            );
        }

        Directory.CreateDirectory(folder);
        using TablesWriter writer =
            format == ExportFormat.Csv
                ? new CsvTablesWriter(folder)
                : new XlsxTablesWriter(Path.Combine(folder, WorkbookName()));
        ProjectExporter.Write(Current, writer, progress, ct);
    }

    public void Dispose() => file.Dispose();

    /// <summary>The change that an import names is known, or comes with the import.</summary>
    private static void CheckChangeExists(Project project, string? change)
    {
        if (
            change is not null
            && project[Core.Changes.ChangeTable.Definition].RowOfCode(change) < 0
        )
        {
            throw new Questions.QuestionException(
                $"No change request has the number \"{change}\". Name one that is known, or import it along in changes.csv."
            );
        }
    }

    private string WorkbookName()
    {
        var code = Current.Settings.Code;
        var usable =
            code.Length > 0 && code.AsSpan().IndexOfAny(Path.GetInvalidFileNameChars()) < 0;
        return (usable ? code : "project") + ".xlsx";
    }

    private sealed class StepProgress(Action<double, string> progress) : IProgress<double>
    {
        public void Report(double value) => progress(0.5 + (value / 2), "writing");
    }
}

public enum ExportFormat
{
    Csv,
    Xlsx,
}

/// <param name="Paths">Files and folders.</param>
/// <param name="DryRun">Say what would change and change nothing.</param>
/// <param name="Replace">Make the named tables equal to the files.</param>
/// <param name="Person">Who does it.</param>
/// <param name="Change">The change request that authorises it.</param>
/// <param name="Reason">Why, for the audit record.</param>
public sealed record ImportCommand(
    IReadOnlyList<string> Paths,
    bool DryRun,
    bool Replace,
    string Person,
    string? Change = null,
    string? Reason = null
);

/// <param name="Changes">What changed, or would change.</param>
/// <param name="Errors">All that is wrong; if there is anything, nothing changed.</param>
/// <param name="Revision">Revision of the project afterwards.</param>
/// <param name="DryRun">Nothing was to be changed.</param>
public sealed record ImportAnswer(
    IReadOnlyList<TableChange> Changes,
    InputErrors Errors,
    long Revision,
    bool DryRun
);

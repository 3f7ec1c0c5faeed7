using Plenum.Core;
using Plenum.Core.Foundation.Tables;
using Plenum.Store.Columns;
using Plenum.Store.Rows;
using Plenum.Store.Sqlite;
using SQLitePCL;

namespace Plenum.Store;

/// <summary>
/// A project in one file. What <see cref="Commit"/> has returned from survives the end of the program and of the
/// machine at any moment; nothing that is half done is ever seen, by this program or another. Several programs may
/// have the file open; one writes at a time, and only on top of what it has loaded. May be used from several threads,
/// which then wait for one another. Errors come as <see cref="StoreException"/>.
/// </summary>
public sealed partial class ProjectFile : IDisposable
{
    private static readonly TimeSpan DefaultBusyTimeout = TimeSpan.FromSeconds(5);
    private readonly Lock gate = new();
    private readonly Database connection;
    private readonly TimeProvider clock;
    private Stamp known;
    private Project? current;
    private bool columnsWritten;
    private bool disposed;

    private ProjectFile(Database database, TimeProvider clock)
    {
        connection = database;
        this.clock = clock;
        IsReadOnly = database.IsReadOnly;
    }

    /// <summary>The file, with its whole path.</summary>
    public string FilePath => connection.Path;

    /// <summary>The file can only be read: <see cref="Commit"/> says so too.</summary>
    public bool IsReadOnly { get; }

    /// <summary>The value that was loaded last came from the column cache beside the file.</summary>
    public bool LoadedFromCache { get; private set; }

    internal Database Connection => connection;

    /// <summary>
    /// Makes a new project without a row, with the entry as the first of its audit record, and opens it. It is
    /// written under another name first: either the whole file is there, or none.
    /// </summary>
    /// <exception cref="StoreException">
    /// <see cref="StoreProblem.AlreadyExists"/>, <see cref="StoreProblem.NotFound"/> if the folder is missing,
    /// <see cref="StoreProblem.DiskFull"/>, <see cref="StoreProblem.ReadOnly"/>.
    /// </exception>
    public static ProjectFile Create(string path, AuditEntry entry, TimeProvider clock)
    {
        var full = Path.GetFullPath(path);
        if (File.Exists(full) || Directory.Exists(full))
        {
            throw NewFile.Taken(full);
        }

        var folder = Path.GetDirectoryName(full)!;
        if (!Directory.Exists(folder))
        {
            throw new StoreException(
                StoreProblem.NotFound,
                $"There is no folder {folder}. Nothing was made; make the folder first."
            );
        }

        var temporary = $"{full}-new-{Guid.NewGuid():N}";
        try
        {
            WriteNew(temporary, full, entry, clock);
            NewFile.Publish(temporary, full);
        }
        catch (StoreException fault) when (fault.Code == raw.SQLITE_CANTOPEN)
        {
            throw new StoreException(
                StoreProblem.ReadOnly,
                $"{full} could not be made: the folder cannot be written. Choose another folder.",
                fault
            );
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new StoreException(
                StoreProblem.Other,
                $"{full} could not be made: {error.Message}",
                error
            );
        }
        finally
        {
            File.Delete(temporary);
            File.Delete(temporary + "-journal");
        }

        var file = Open(full, clock: clock);
        file.current = Project.Empty;
        return file;
    }

    /// <summary>
    /// Opens a project, for writing if the file and its folder allow it. A file of an older layout is brought up to
    /// this version's first; that adds to it and loses nothing.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <param name="busyTimeout">How long to wait for another program that writes; 5 seconds if not given.</param>
    /// <param name="clock">Dates the audit record; the system's if not given.</param>
    /// <exception cref="StoreException">
    /// <see cref="StoreProblem.NotFound"/>, <see cref="StoreProblem.NotAProject"/>,
    /// <see cref="StoreProblem.NewerVersion"/>, <see cref="StoreProblem.Busy"/>, <see cref="StoreProblem.Damaged"/>.
    /// </exception>
    public static ProjectFile Open(
        string path,
        TimeSpan? busyTimeout = null,
        TimeProvider? clock = null
    )
    {
        var full = Path.GetFullPath(path);
        if (Directory.Exists(full))
        {
            throw new StoreException(
                StoreProblem.NotAProject,
                $"{full} is a folder, not a Plenum project. Name the file."
            );
        }

        if (!File.Exists(full))
        {
            throw new StoreException(
                StoreProblem.NotFound,
                $"There is no file {full}. Check the name, or make a new project."
            );
        }

        var database = Database.Open(
            full,
            new FileInfo(full).IsReadOnly,
            busyTimeout ?? DefaultBusyTimeout
        );
        try
        {
            Configure(database);
            CheckLayout(database);
            var file = new ProjectFile(database, clock ?? TimeProvider.System);
            file.InReadTransaction(() => file.known = FileFacts.Read(database));
            return file;
        }
        catch
        {
            database.Dispose();
            throw;
        }
    }

    /// <summary>
    /// The project as it is stored now: rows in the order of their ids, elements depth first. Comes from the column
    /// cache beside the file where that belongs to exactly this state of the file.
    /// </summary>
    /// <param name="progress">Told the share that is done, 0 to 1.</param>
    /// <exception cref="StoreException">
    /// <see cref="StoreProblem.Damaged"/> with table, row and column if a cell cannot be understood;
    /// <see cref="StoreProblem.Busy"/>.
    /// </exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public Project Load(
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        lock (gate)
        {
            ObjectDisposedException.ThrowIf(disposed, this);
            if (!IsReadOnly)
            {
                KeepRollbackJournal(connection);
            }

            Table[]? tables = null;
            Stamp stamp = default;
            var fromCache = false;
            InReadTransaction(() =>
            {
                stamp = FileFacts.Read(connection);
                tables = CountsChanges() ? ColumnFileReader.TryRead(FilePath, stamp) : null;
                fromCache = tables is not null;
                tables ??= ProjectReader.Read(
                    connection,
                    stamp.Length,
                    progress,
                    cancellationToken
                );
            });
            // Only now: a load that failed leaves the file object on the state that it had.
            current = fromCache
                ? new Project(tables!, stamp.Revision)
                : ProjectReader.Finish(tables!, stamp.Revision, FilePath);
            known = stamp;
            LoadedFromCache = fromCache;
            columnsWritten = fromCache;
            progress?.Report(1);
            return current;
        }
    }

    /// <summary>The last entries of the audit record, newest first.</summary>
    public IReadOnlyList<AuditRecord> Audit(int last = 100)
    {
        lock (gate)
        {
            ObjectDisposedException.ThrowIf(disposed, this);
            return AuditTable.Last(connection, last);
        }
    }

    /// <summary>
    /// Writes the column cache for the value that was loaded or committed last, unless it is there already, so that
    /// the next opening is fast. It is also done on closing; a program that keeps a project open may call it when it
    /// has nothing else to do. Never an error: without the cache the tables are read. Commits need not wait for it.
    /// </summary>
    public void SaveColumnCache()
    {
        try
        {
            Project? project;
            Stamp stamp;
            lock (gate)
            {
                ObjectDisposedException.ThrowIf(disposed, this);
                project = columnsWritten || !CountsChanges() ? null : current;
                stamp = known;
            }

            if (
                project is not null
                && ColumnFileWriter.TryWrite(
                    FilePath,
                    ProjectReader.InFileOrder(project, FilePath),
                    stamp
                )
            )
            {
                lock (gate)
                {
                    columnsWritten |= stamp == known;
                }
            }
        }
        catch (StoreException)
        {
            // Best effort: the columns that the value still had to fetch, or the file, were out of reach.
        }
    }

    /// <summary>Closes the file, after writing the column cache where it is out of date.</summary>
    public void Dispose()
    {
        lock (gate)
        {
            if (!disposed)
            {
                SaveColumnCache();
                CloseWithoutCache();
            }
        }
    }

    internal void CloseWithoutCache()
    {
        lock (gate)
        {
            disposed = true;
            connection.Dispose();
        }
    }

    private static void WriteNew(string path, string called, AuditEntry entry, TimeProvider clock)
    {
        using var database = Database.Create(path, called);
        Configure(database);
        Migration.Apply(database, Migration.All);
        database.Execute("BEGIN IMMEDIATE");
        FileFacts.Write(database, Guid.NewGuid(), 0, Guid.NewGuid(), Project.Empty.Settings);
        AuditTable.Add(database, entry, clock.GetUtcNow(), 0, []);
        database.Execute("COMMIT");
    }

    private static void Configure(Database database)
    {
        // References are checked in memory, where it is a thousand times cheaper, see ReferenceCheck.
        database.Execute("PRAGMA foreign_keys = OFF");
        // After a commit the removal of the journal is made durable too; otherwise a power cut could undo it.
        database.Execute("PRAGMA synchronous = EXTRA");
        database.Execute("PRAGMA trusted_schema = OFF");
        database.Execute("PRAGMA cache_size = -65536");
    }

    private static void CheckLayout(Database database)
    {
        if (database.Number("PRAGMA application_id") != FormatFacts.ApplicationId)
        {
            throw new StoreException(
                StoreProblem.NotAProject,
                $"{database.Path} is not a Plenum project. It was left as it is; name a .plenum file."
            );
        }

        var version = database.Number("PRAGMA user_version");
        if (version > Migration.All.Count)
        {
            throw new StoreException(
                StoreProblem.NewerVersion,
                $"{database.Path} was written by a newer version of Plenum (layout {version}; this version knows "
                    + $"{Migration.All.Count}). It was left as it is; open it with the newer version."
            );
        }

        if (version < 1)
        {
            throw new StoreException(
                StoreProblem.Damaged,
                $"{database.Path} names no layout. Go back to a copy of the file."
            );
        }

        if (database.IsReadOnly)
        {
            if (version < Migration.All.Count)
            {
                throw new StoreException(
                    StoreProblem.ReadOnly,
                    $"{database.Path} has an older layout and must be opened once where it can be written."
                );
            }

            return;
        }

        KeepRollbackJournal(database);
        if (version < Migration.All.Count)
        {
            // only then: it takes the file for writing, and a question must not wait for another program's command
            Migration.Apply(database, Migration.All);
        }
    }

    /// <summary>Another program may have switched the file to write-ahead mode, in which it is three files.</summary>
    private static void KeepRollbackJournal(Database database)
    {
        if (database.Text("PRAGMA journal_mode = DELETE") != "delete")
        {
            throw new StoreException(
                StoreProblem.Busy,
                $"{database.Path} is held by another program in write-ahead mode; try again once it has closed the file."
            );
        }
    }

    private Table[] ReadTables(IProgress<double>? progress, CancellationToken cancellationToken) =>
        ProjectReader.Read(connection, known.Length, progress, cancellationToken);

    /// <summary>In write-ahead mode the header does not say whether the file has changed.</summary>
    private bool CountsChanges() => connection.Text("PRAGMA journal_mode") != "wal";

    private void InReadTransaction(Action read)
    {
        connection.Execute("BEGIN");
        try
        {
            read();
        }
        finally
        {
            connection.Rollback();
        }
    }
}

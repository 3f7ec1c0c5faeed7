using Plenum.Core;
using Plenum.Core.Foundation.Tables;
using Plenum.Store.Rows;
using SQLitePCL;

namespace Plenum.Store;

public sealed partial class ProjectFile
{
    /// <summary>
    /// Writes what a command changed, with the audit record, in one transaction: all of it, or nothing. Once it has
    /// returned, the revision stays.
    /// </summary>
    /// <param name="before">The value that was loaded, or committed last.</param>
    /// <param name="after">The value that the command made of it; its revision is greater.</param>
    /// <param name="changes">The rows, by id, in which the two differ.</param>
    /// <param name="entry">Who, by which command, and why.</param>
    /// <param name="progress">Told the share that is done, 0 to 1.</param>
    /// <exception cref="StoreException">
    /// <see cref="StoreProblem.Conflict"/> if the file is no longer in the state that was loaded, whoever changed it;
    /// <see cref="StoreProblem.Busy"/>, <see cref="StoreProblem.ReadOnly"/>, <see cref="StoreProblem.DiskFull"/>. In
    /// every case the stored project is as it was.
    /// </exception>
    /// <exception cref="ArgumentException">
    /// The changes do not fit the two values, or a row would refer to one that is not there. Nothing was written.
    /// </exception>
    /// <exception cref="OperationCanceledException">The call was cancelled in time. Nothing was written.</exception>
    public void Commit(
        Project before,
        Project after,
        IReadOnlyList<TableChange> changes,
        AuditEntry entry,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        lock (gate)
        {
            ObjectDisposedException.ThrowIf(disposed, this);
            CheckRequest(before, after, changes);
            var token = Guid.NewGuid();
            long length;
            connection.Execute("BEGIN IMMEDIATE");
            try
            {
                if (FileFacts.Read(connection) != known)
                {
                    throw Conflict();
                }

                using (cancellationToken.Register(connection.Interrupt))
                {
                    WriteRows(before, after, changes, progress, cancellationToken);
                    AuditTable.Add(connection, entry, clock.GetUtcNow(), after.Revision, changes);
                    FileFacts.Write(
                        connection,
                        known.Project,
                        after.Revision,
                        token,
                        after.Settings
                    );
                    length = FileFacts.LengthOf(connection);
                }

                // Last call: a commit that has begun is not broken off, so that its outcome is never in doubt.
                cancellationToken.ThrowIfCancellationRequested();
                connection.Execute("COMMIT");
            }
            catch (StoreException fault)
                when (fault.Code == raw.SQLITE_INTERRUPT
                    && cancellationToken.IsCancellationRequested
                )
            {
                connection.Rollback();
                throw new OperationCanceledException(cancellationToken);
            }
            catch
            {
                connection.Rollback();
                throw;
            }

            known = new Stamp(
                known.Project,
                after.Revision,
                token,
                unchecked(known.ChangeCounter + 1), // as SQLite counts: it goes round
                length
            );
            current = after;
            columnsWritten = false;
            progress?.Report(1);
        }
    }

    private void CheckRequest(Project before, Project after, IReadOnlyList<TableChange> changes)
    {
        if (IsReadOnly)
        {
            throw new StoreException(
                StoreProblem.ReadOnly,
                $"{FilePath} can only be read; the file or its folder is read-only. Nothing was changed."
            );
        }

        if (current is null)
        {
            throw new InvalidOperationException("A project is loaded before it is changed.");
        }

        if (before.Revision != known.Revision)
        {
            throw Conflict();
        }

        if (after.Revision <= before.Revision)
        {
            throw new ArgumentException("A command makes a later revision.", nameof(after));
        }

        if (changes.Select(change => change.Definition).Distinct().Count() != changes.Count)
        {
            throw new ArgumentException(
                "A table is named once among the changes.",
                nameof(changes)
            );
        }

        if (ReferenceCheck.AfterChange(after, changes) is { } broken)
        {
            throw new ArgumentException($"A reference leads nowhere: {broken}.", nameof(changes));
        }
    }

    private void WriteRows(
        Project before,
        Project after,
        IReadOnlyList<TableChange> changes,
        IProgress<double>? progress,
        CancellationToken cancellationToken
    )
    {
        var total = Math.Max(1, changes.Sum(change => (long)change.Count));
        var done = 0L;
        foreach (var change in changes)
        {
            TableWriter.Write(
                connection,
                before[change.Definition],
                after[change.Definition],
                change,
                rows =>
                {
                    cancellationToken.ThrowIfCancellationRequested();
                    done += rows;
                    progress?.Report(done / (double)total);
                }
            );
        }
    }

    private StoreException Conflict() =>
        new(
            StoreProblem.Conflict,
            $"{FilePath} was changed after it was loaded, by another program or another copy of Plenum. Nothing was "
                + "written; load it again and repeat the command."
        );
}

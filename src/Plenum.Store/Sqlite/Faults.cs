using SQLitePCL;

namespace Plenum.Store.Sqlite;

/// <summary>Says the database's result codes in words for a person.</summary>
internal static class Faults
{
    private const int PrimaryCode = 0xFF;
    private const int WriteFailed = raw.SQLITE_IOERR | (3 << 8);
    private const int SyncFailed = raw.SQLITE_IOERR | (4 << 8);
    private const int FolderSyncFailed = raw.SQLITE_IOERR | (5 << 8);
    private const int TruncateFailed = raw.SQLITE_IOERR | (6 << 8);

    public static StoreException Of(int code, string detail, string path)
    {
        var (problem, message) = (code & PrimaryCode) switch
        {
            raw.SQLITE_BUSY or raw.SQLITE_LOCKED => (
                StoreProblem.Busy,
                "is being written by another program; try again. Nothing was changed."
            ),
            raw.SQLITE_READONLY or raw.SQLITE_PERM => (
                StoreProblem.ReadOnly,
                "cannot be written; the file or its folder is read-only. Nothing was changed."
            ),
            raw.SQLITE_FULL => (
                StoreProblem.DiskFull,
                "does not fit: the disk is full. The stored project is as it was before; make room and try again."
            ),
            raw.SQLITE_IOERR when IsWrite(code) => (
                StoreProblem.DiskFull,
                "could not be written: the disk refused it, or it is full. The stored project is as it was before."
            ),
            raw.SQLITE_CORRUPT => (
                StoreProblem.Damaged,
                "is damaged. Keep the file as it is and go back to a copy."
            ),
            raw.SQLITE_NOTADB => (
                StoreProblem.NotAProject,
                "is not a Plenum project: it is no database. It was left as it is; name a .plenum file."
            ),
            raw.SQLITE_CANTOPEN => (
                StoreProblem.Other,
                "cannot be opened; the right to read it, or to write into its folder, may be missing. Nothing was changed."
            ),
            _ => (StoreProblem.Other, "could not be used. Nothing was changed."),
        };
        return new StoreException(problem, $"{path} {message} ({detail}; code {code})")
        {
            Code = code & PrimaryCode,
        };
    }

    private static bool IsWrite(int code) =>
        code is WriteFailed or SyncFailed or FolderSyncFailed or TruncateFailed;
}

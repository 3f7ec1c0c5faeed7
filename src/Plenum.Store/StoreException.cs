namespace Plenum.Store;

/// <summary>What kind of trouble the store met; decides what a caller can do about it.</summary>
public enum StoreProblem
{
    /// <summary>There is no such file or folder.</summary>
    NotFound,

    /// <summary>A file of that name exists; it was left alone.</summary>
    AlreadyExists,

    /// <summary>The file is no Plenum project.</summary>
    NotAProject,

    /// <summary>The file was written by a newer version of Plenum.</summary>
    NewerVersion,

    /// <summary>Another program holds the file; the same call may succeed later.</summary>
    Busy,

    /// <summary>The stored project is no longer the one that was loaded; load again.</summary>
    Conflict,

    /// <summary>The file or its folder cannot be written.</summary>
    ReadOnly,

    /// <summary>No room on the disk, or the disk refused a write; the stored project is as before.</summary>
    DiskFull,

    /// <summary>The file's content cannot be understood.</summary>
    Damaged,

    /// <summary>Anything else that the database reports.</summary>
    Other,
}

/// <summary>
/// Every error that the store reports. The message is for the person: what happened, what is safe, what to do. Unless
/// the message says otherwise the stored project is as it was before the call.
/// </summary>
[System.Diagnostics.CodeAnalysis.SuppressMessage(
    "Roslynator",
    "RCS1194",
    Justification = "The problem and what to do about it are always said."
)]
public sealed class StoreException : Exception
{
    public StoreException(StoreProblem problem, string message, Exception? inner = null)
        : base(message, inner) => Problem = problem;

    public StoreProblem Problem { get; }

    /// <summary>The database's own result code, 0 where there is none.</summary>
    internal int Code { get; init; }
}

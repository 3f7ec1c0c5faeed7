using SQLitePCL;

namespace Plenum.Store.Sqlite;

/// <summary>
/// One connection to an SQLite file. Not safe for several threads. Every error comes as <see cref="StoreException"/>.
/// </summary>
internal sealed class Database : IDisposable
{
    // Asks for result codes in full; not among the constants of the binding.
    private const int ExtendedResults = 0x02000000;
    private readonly sqlite3 handle;

    static Database() => Batteries_V2.Init();

    private Database(string path, sqlite3 handle)
    {
        Path = path;
        this.handle = handle;
    }

    public string Path { get; }

    public bool IsReadOnly => raw.sqlite3_db_readonly(handle, "main") == 1;

    /// <summary>A transaction is open. Some errors end it on their own.</summary>
    public bool IsInTransaction => raw.sqlite3_get_autocommit(handle) == 0;

    public sqlite3 Handle => handle;

    /// <summary>Opens a file that exists, for writing if the file allows it.</summary>
    public static Database Open(string path, bool readOnly, TimeSpan busyTimeout) =>
        Open(
            path,
            path,
            readOnly ? raw.SQLITE_OPEN_READONLY : raw.SQLITE_OPEN_READWRITE,
            busyTimeout
        );

    /// <summary>Makes a new, empty file; an error if there is one.</summary>
    /// <param name="path">The file.</param>
    /// <param name="called">What messages call it.</param>
    public static Database Create(string path, string called) =>
        Open(
            path,
            called,
            raw.SQLITE_OPEN_READWRITE | raw.SQLITE_OPEN_CREATE | raw.SQLITE_OPEN_EXCLUSIVE,
            TimeSpan.Zero
        );

    /// <summary>Runs one or more statements that return nothing.</summary>
    public void Execute(string sql) => Check(raw.sqlite3_exec(handle, sql));

    public Statement Prepare(string sql)
    {
        Check(raw.sqlite3_prepare_v2(handle, sql, out var statement));
        return new Statement(this, statement);
    }

    /// <summary>The whole number in the first column of the first row; 0 if there is no row.</summary>
    public long Number(string sql)
    {
        using var statement = Prepare(sql);
        return statement.Step() ? statement.Long(0) : 0;
    }

    /// <summary>The text in the first column of the first row; null if there is none.</summary>
    public string? Text(string sql)
    {
        using var statement = Prepare(sql);
        return statement.Step() ? statement.String(0) : null;
    }

    /// <summary>Stops the statement that is running; may be called from any thread.</summary>
    public void Interrupt() => raw.sqlite3_interrupt(handle);

    public void Rollback()
    {
        if (IsInTransaction)
        {
            // A failure here changes nothing: closing or the next opening rolls back all the same.
            _ = raw.sqlite3_exec(handle, "ROLLBACK");
        }
    }

    /// <summary>The error that the database reported last, in words for a person.</summary>
    public StoreException Fault(int code) =>
        Faults.Of(code, raw.sqlite3_errmsg(handle).utf8_to_string(), Path);

    public void Check(int code)
    {
        if (code is not (raw.SQLITE_OK or raw.SQLITE_ROW or raw.SQLITE_DONE))
        {
            throw Fault(code);
        }
    }

    public void Dispose() => handle.Dispose();

    private static Database Open(string path, string called, int flags, TimeSpan busyTimeout)
    {
        var code = raw.sqlite3_open_v2(
            path,
            out var handle,
            flags | raw.SQLITE_OPEN_NOMUTEX | ExtendedResults,
            null
        );
        var database = new Database(called, handle);
        if (code != raw.SQLITE_OK)
        {
            var fault = database.Fault(code);
            database.Dispose();
            throw fault;
        }

        _ = raw.sqlite3_busy_timeout(handle, (int)busyTimeout.TotalMilliseconds);
        return database;
    }
}

using System.Text;
using SQLitePCL;

namespace Plenum.Store.Sqlite;

/// <summary>A prepared statement. Parameters count from 1, columns from 0, as SQLite counts them.</summary>
internal sealed class Statement(Database database, sqlite3_stmt handle) : IDisposable
{
    private byte[] buffer = new byte[1_024];

    public void BindNull(int parameter) => database.Check(raw.sqlite3_bind_null(handle, parameter));

    public void Bind(int parameter, long value) =>
        database.Check(raw.sqlite3_bind_int64(handle, parameter, value));

    public void Bind(int parameter, string? value)
    {
        if (value is null)
        {
            BindNull(parameter);
            return;
        }

        var longest = Encoding.UTF8.GetMaxByteCount(value.Length);
        if (longest > buffer.Length)
        {
            buffer = new byte[longest];
        }

        Bind(parameter, buffer.AsSpan(0, Encoding.UTF8.GetBytes(value, buffer)));
    }

    public void Bind(int parameter, ReadOnlySpan<byte> text) =>
        // an empty span would be bound as NULL
        database.Check(
            text.IsEmpty
                ? raw.sqlite3_bind_text(handle, parameter, "")
                : raw.sqlite3_bind_text(handle, parameter, text)
        );

    /// <summary>Goes on to the next row; false at the end.</summary>
    public bool Step()
    {
        var code = raw.sqlite3_step(handle);
        if (code == raw.SQLITE_ROW)
        {
            return true;
        }

        database.Check(code);
        return false;
    }

    /// <summary>Runs a statement that returns no rows and makes it ready for the next.</summary>
    public void Run()
    {
        var code = raw.sqlite3_step(handle);
        if (code != raw.SQLITE_DONE)
        {
            var fault = database.Fault(code);
            _ = raw.sqlite3_reset(handle);
            throw fault;
        }

        _ = raw.sqlite3_reset(handle);
    }

    /// <summary>Rows that the statement changed when it was run last.</summary>
    public int Changed() => raw.sqlite3_changes(database.Handle);

    /// <summary>One of the type numbers of SQLite.</summary>
    public int Type(int column) => raw.sqlite3_column_type(handle, column);

    public bool IsNull(int column) => Type(column) == raw.SQLITE_NULL;

    /// <summary>The cell as a whole number; 0 for NULL.</summary>
    public long Long(int column) => raw.sqlite3_column_int64(handle, column);

    /// <summary>The cell as UTF-8 text, valid until the next step; empty for NULL.</summary>
    public ReadOnlySpan<byte> Utf8(int column) => raw.sqlite3_column_blob(handle, column);

    public string? String(int column) =>
        IsNull(column) ? null : raw.sqlite3_column_text(handle, column).utf8_to_string();

    public void Dispose() => handle.Dispose();
}

using System.Text;
using SQLitePCL;

namespace Plenum.Store.Sqlite;

/// <summary>A prepared statement. Parameters count from 1, columns from 0, as SQLite counts them.</summary>
internal sealed unsafe class Statement(Database database, sqlite3_stmt handle) : IDisposable
{
    private const nint CopyText = -1;

    // Valid until the handle is disposed of, which only this object does.
    private readonly nint pointer = handle.DangerousGetHandle();
    private byte[] buffer = new byte[1_024];

    public void BindNull(int parameter) => database.Check(Native.BindNull(pointer, parameter));

    public void Bind(int parameter, long value) =>
        database.Check(Native.BindLong(pointer, parameter, value));

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

    public void Bind(int parameter, ReadOnlySpan<byte> text)
    {
        byte nothing = 0;
        fixed (byte* bytes = text)
        {
            // The pointer of an empty span is null, which would be bound as NULL.
            database.Check(
                Native.BindText(
                    pointer,
                    parameter,
                    bytes is null ? &nothing : bytes,
                    text.Length,
                    CopyText
                )
            );
        }
    }

    /// <summary>Goes on to the next row; false at the end.</summary>
    public bool Step()
    {
        var code = Native.Step(pointer);
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
        var code = Native.Step(pointer);
        if (code != raw.SQLITE_DONE)
        {
            var fault = database.Fault(code);
            _ = Native.Reset(pointer);
            throw fault;
        }

        _ = Native.Reset(pointer);
    }

    /// <summary>Rows that the statement changed when it was run last.</summary>
    public int Changed() => raw.sqlite3_changes(database.Handle);

    /// <summary>One of the type numbers of SQLite.</summary>
    public int Type(int column) => Native.ColumnType(pointer, column);

    public bool IsNull(int column) => Type(column) == raw.SQLITE_NULL;

    /// <summary>The cell as a whole number; 0 for NULL.</summary>
    public long Long(int column) => Native.ColumnLong(pointer, column);

    /// <summary>The cell as UTF-8 text, valid until the next step; empty for NULL.</summary>
    public ReadOnlySpan<byte> Utf8(int column)
    {
        var text = Native.ColumnText(pointer, column);
        return text is null ? default : new(text, Native.ColumnBytes(pointer, column));
    }

    public string? String(int column) =>
        IsNull(column) ? null : Encoding.UTF8.GetString(Utf8(column));

    public void Dispose() => handle.Dispose();
}

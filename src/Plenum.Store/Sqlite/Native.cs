using System.Runtime.InteropServices;

namespace Plenum.Store.Sqlite;

/// <summary>
/// The functions of SQLite that are called for every cell and row, without the handle counting of the general
/// binding; a project of millions of rows is read in half the time. Whoever calls them keeps the statement alive.
/// Those that neither wait nor call back skip the switch of the garbage collector's mode too.
/// </summary>
internal static unsafe partial class Native
{
    private const string Library = "e_sqlite3";
    private const DllImportSearchPath Path =
        DllImportSearchPath.AssemblyDirectory | DllImportSearchPath.SafeDirectories;

    [LibraryImport(Library, EntryPoint = "sqlite3_step")]
    [DefaultDllImportSearchPaths(Path)]
    public static partial int Step(nint statement);

    [LibraryImport(Library, EntryPoint = "sqlite3_reset")]
    [DefaultDllImportSearchPaths(Path)]
    public static partial int Reset(nint statement);

    [LibraryImport(Library, EntryPoint = "sqlite3_column_type")]
    [DefaultDllImportSearchPaths(Path)]
    [SuppressGCTransition]
    public static partial int ColumnType(nint statement, int column);

    [LibraryImport(Library, EntryPoint = "sqlite3_column_int64")]
    [DefaultDllImportSearchPaths(Path)]
    [SuppressGCTransition]
    public static partial long ColumnLong(nint statement, int column);

    /// <summary>The cell as UTF-8, for numbers too; null for NULL. Asked before <see cref="ColumnBytes"/>.</summary>
    [LibraryImport(Library, EntryPoint = "sqlite3_column_text")]
    [DefaultDllImportSearchPaths(Path)]
    [SuppressGCTransition]
    public static partial byte* ColumnText(nint statement, int column);

    [LibraryImport(Library, EntryPoint = "sqlite3_column_bytes")]
    [DefaultDllImportSearchPaths(Path)]
    [SuppressGCTransition]
    public static partial int ColumnBytes(nint statement, int column);

    [LibraryImport(Library, EntryPoint = "sqlite3_bind_null")]
    [DefaultDllImportSearchPaths(Path)]
    [SuppressGCTransition]
    public static partial int BindNull(nint statement, int parameter);

    [LibraryImport(Library, EntryPoint = "sqlite3_bind_int64")]
    [DefaultDllImportSearchPaths(Path)]
    [SuppressGCTransition]
    public static partial int BindLong(nint statement, int parameter, long value);

    /// <param name="text">UTF-8; not null, or NULL is bound.</param>
    /// <param name="destructor">−1: SQLite copies the text.</param>
    [LibraryImport(Library, EntryPoint = "sqlite3_bind_text")]
    [DefaultDllImportSearchPaths(Path)]
    [SuppressGCTransition]
    public static partial int BindText(
        nint statement,
        int parameter,
        byte* text,
        int bytes,
        nint destructor
    );

    [LibraryImport(
        Library,
        EntryPoint = "sqlite3_file_control",
        StringMarshalling = StringMarshalling.Utf8
    )]
    [DefaultDllImportSearchPaths(Path)]
    public static partial int FileControl(
        nint database,
        string schema,
        int operation,
        out nint result
    );
}

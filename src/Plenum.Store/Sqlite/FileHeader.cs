using System.Buffers.Binary;

namespace Plenum.Store.Sqlite;

/// <summary>
/// Reads the counter in the file's header that every change of the file moves, whichever program makes it. It is
/// read through the open connection: on Unix, opening and closing the file a second time in the same process would
/// drop the locks that SQLite holds on it.
/// </summary>
internal static unsafe class FileHeader
{
    private const int GiveFilePointer = 7;
    private const int CounterOffset = 24;

    // Place of the reading function in SQLite's table of file functions: version, close, read.
    private const int ReadFunction = 2;

    /// <summary>
    /// The file change counter as it stands on disk. The caller is inside a transaction that has read something and
    /// not yet written. Means nothing while the file is in write-ahead mode.
    /// </summary>
    public static uint ChangeCounter(Database database)
    {
        database.Check(
            Native.FileControl(
                database.Handle.DangerousGetHandle(),
                "main",
                GiveFilePointer,
                out var file
            )
        );
        var functions = *(void***)file;
        var read = (delegate* unmanaged[Cdecl]<nint, byte*, int, long, int>)functions[ReadFunction];
        var bytes = stackalloc byte[sizeof(uint)];
        database.Check(read(file, bytes, sizeof(uint), CounterOffset));
        GC.KeepAlive(database);
        return BinaryPrimitives.ReadUInt32BigEndian(new ReadOnlySpan<byte>(bytes, sizeof(uint)));
    }
}

using System.Buffers.Binary;
using System.IO.Hashing;
using System.Runtime.InteropServices;
using System.Text;
using Plenum.Core;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Store.Columns;

/// <summary>Writes a column cache. Time and space: as many bytes as the columns have.</summary>
internal sealed class ColumnFileWriter
{
    private const int Sample = 4_096;
    private readonly FileStream output;
    private readonly XxHash3 hash = new();
    private byte[] buffer = new byte[1 << 16];
    private int filled;

    private ColumnFileWriter(FileStream output) => this.output = output;

    /// <summary>
    /// Replaces the cache of a project file, whole or not at all. False if that did not succeed: no room, no right to
    /// write, another program doing the same. The database does not mind.
    /// </summary>
    public static bool TryWrite(string projectPath, Project project, Stamp stamp)
    {
        if (!BitConverter.IsLittleEndian)
        {
            return false;
        }

        var path = ColumnFile.PathOf(projectPath);
        var temporary = path + "-new";
        var begun = false;
        try
        {
            using (
                var stream = new FileStream(
                    temporary,
                    FileMode.Create,
                    FileAccess.Write,
                    FileShare.None,
                    bufferSize: 0
                )
            )
            {
                begun = true;
                new ColumnFileWriter(stream).Write(project, stamp);
            }

            File.Move(temporary, path, overwrite: true);
            return true;
        }
        catch (Exception error) when (IsOrdinary(error))
        {
            if (begun)
            {
                Remove(temporary);
            }

            return false;
        }
    }

    private static bool IsOrdinary(Exception error) =>
        error is IOException or UnauthorizedAccessException or OverflowException or StoreException;

    private static void Remove(string temporary)
    {
        try
        {
            File.Delete(temporary);
        }
        catch (Exception error) when (IsOrdinary(error))
        {
            // It is in nobody's way: the next writer begins it anew.
        }
    }

    private void Write(Project project, Stamp stamp)
    {
        output.Write(ColumnFile.Magic);
        var tables = project.Tables.Select(WriteTable).ToList();
        var directory = Directory(tables, stamp);
        output.Write(directory);
        Span<byte> tail = stackalloc byte[ColumnFile.TailLength];
        BinaryPrimitives.WriteInt64LittleEndian(tail, directory.Length);
        BinaryPrimitives.WriteUInt64LittleEndian(tail[8..], XxHash3.HashToUInt64(directory));
        ColumnFile.Magic.CopyTo(tail[16..]);
        output.Write(tail);
    }

    private TableBlocks WriteTable(Table table)
    {
        var ids = WriteNumbers<int>(table.Ids);
        var columns = new Block[table.Definition.Columns.Count];
        for (var index = 0; index < columns.Length; index++)
        {
            columns[index] = table.ColumnAt(index) switch
            {
                NumberColumn<int> column => WriteNumbers(column.Values),
                NumberColumn<long> column => WriteNumbers(column.Values),
                NumberColumn<decimal> column => WriteNumbers(column.Values),
                var column => WriteTexts(((TextColumn)column).Values),
            };
        }

        return new TableBlocks(
            table.Definition,
            table.Count,
            ids,
            columns,
            [
                .. table
                    .OwnFields.Where(field => field.Value.Values.ContainsAnyExcept((string?)null))
                    .OrderBy(field => field.Key, StringComparer.Ordinal)
                    .Select(field =>
                        KeyValuePair.Create(field.Key, WriteTexts(field.Value.Values))
                    ),
            ]
        );
    }

    private static byte[] Directory(List<TableBlocks> tables, Stamp stamp)
    {
        using var bytes = new MemoryStream();
        using var writer = new BinaryWriter(bytes, Encoding.UTF8);
        writer.Write(ColumnFile.Format);
        writer.Write((ulong)(LayoutFingerprint.Value >> 64));
        writer.Write((ulong)(LayoutFingerprint.Value & ulong.MaxValue));
        writer.Write(stamp.Project.ToByteArray());
        writer.Write(stamp.Revision);
        writer.Write(stamp.Token.ToByteArray());
        writer.Write(stamp.ChangeCounter);
        writer.Write(stamp.Length);
        foreach (var table in tables)
        {
            writer.Write(table.Rows);
            Put(table.Ids);
            Array.ForEach(table.Columns, Put);
            writer.Write(table.OwnFields.Count);
            foreach (var (heading, block) in table.OwnFields)
            {
                writer.Write(heading);
                Put(block);
            }
        }

        writer.Flush();
        return bytes.ToArray();

        void Put(Block block)
        {
            writer.Write(block.Offset);
            writer.Write(block.Length);
            writer.Write(block.Hash);
        }
    }

    private Block WriteNumbers<T>(ReadOnlySpan<T> values)
        where T : unmanaged, IEquatable<T>
    {
        var same = values.Length > 0 && !values.ContainsAnyExcept(values[0]);
        var offset = output.Position;
        Begin(same ? BlockKind.SameNumber : BlockKind.Numbers);
        Flush();
        var bytes = MemoryMarshal.AsBytes(same ? values[..1] : values);
        hash.Append(bytes);
        output.Write(bytes);
        return End(offset);
    }

    private Block WriteTexts(ReadOnlySpan<string?> values)
    {
        var offset = output.Position;
        if (!values.ContainsAnyExcept((string?)null))
        {
            Begin(BlockKind.NoTexts);
        }
        else if (RepeatOften(values))
        {
            WriteRepeated(values);
        }
        else
        {
            Begin(BlockKind.Texts);
            foreach (var text in values)
            {
                Put(text is null ? -1 : Encoding.UTF8.GetByteCount(text));
            }

            foreach (var text in values)
            {
                Put(text);
            }
        }

        Flush();
        return End(offset);
    }

    private void WriteRepeated(ReadOnlySpan<string?> values)
    {
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        var codes = new int[values.Length];
        for (var row = 0; row < codes.Length; row++)
        {
            if (values[row] is not { } text)
            {
                codes[row] = -1;
            }
            else if (!places.TryGetValue(text, out codes[row]))
            {
                codes[row] = places.Count;
                places.Add(text, places.Count);
            }
        }

        Begin(BlockKind.RepeatedTexts);
        Put(places.Count);
        // A dictionary without removals gives its keys in the order in which they were added.
        foreach (var text in places.Keys)
        {
            Put(Encoding.UTF8.GetByteCount(text));
        }

        foreach (var text in places.Keys)
        {
            Put(text);
        }

        Flush();
        var bytes = MemoryMarshal.AsBytes(codes.AsSpan());
        hash.Append(bytes);
        output.Write(bytes);
    }

    /// <summary>Judged by the first few thousand texts: fewer than half of them are different.</summary>
    private static bool RepeatOften(ReadOnlySpan<string?> values)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var looked = 0;
        foreach (var text in values)
        {
            if (text is not null)
            {
                seen.Add(text);
                if (++looked == Sample)
                {
                    break;
                }
            }
        }

        return seen.Count * 2 < looked;
    }

    private void Begin(BlockKind kind)
    {
        hash.Reset();
        Put((int)kind);
        Put(0);
    }

    private Block End(long offset) =>
        new(offset, output.Position - offset, hash.GetCurrentHashAsUInt64());

    private void Put(int value)
    {
        Room(sizeof(int));
        BinaryPrimitives.WriteInt32LittleEndian(buffer.AsSpan(filled), value);
        filled += sizeof(int);
    }

    private void Put(string? text)
    {
        if (text is not null)
        {
            Room(Encoding.UTF8.GetMaxByteCount(text.Length));
            filled += Encoding.UTF8.GetBytes(text, buffer.AsSpan(filled));
        }
    }

    private void Room(int bytes)
    {
        if (filled + bytes > buffer.Length)
        {
            Flush();
            if (bytes > buffer.Length)
            {
                buffer = new byte[bytes];
            }
        }
    }

    private void Flush()
    {
        var bytes = buffer.AsSpan(0, filled);
        hash.Append(bytes);
        output.Write(bytes);
        filled = 0;
    }
}

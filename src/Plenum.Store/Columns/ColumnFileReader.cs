using System.Buffers;
using System.Buffers.Binary;
using System.IO.Hashing;
using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;
using Plenum.Core;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Store.Columns;

/// <summary>
/// Reads a column cache. Everything is checked against its hashes on opening; a column is copied out when it is first
/// asked for, and checked again, so that whatever happens to the file in between is noticed. It is read and not
/// mapped into memory: a mapped file that another program cuts short would end the process.
/// </summary>
internal sealed class ColumnFileReader
{
    private const int Prefix = 8;
    private const int ChunkLength = 1 << 20;
    private readonly string path;
    private readonly SafeFileHandle file;

    private ColumnFileReader(string path, SafeFileHandle file)
    {
        this.path = path;
        this.file = file;
    }

    /// <summary>
    /// All tables, in the order of the layout; null if there is no cache, or it belongs to another state of the
    /// database, another project or another version, or is damaged. Columns are fetched while the tables are in use;
    /// the file is closed once nothing refers to them any more.
    /// </summary>
    public static Table[]? TryRead(string projectPath, Stamp stamp)
    {
        var cache = ColumnFile.PathOf(projectPath);
        if (!BitConverter.IsLittleEndian || !File.Exists(cache))
        {
            return null;
        }

        SafeFileHandle? handle = null;
        try
        {
            handle = File.OpenHandle(
                cache,
                FileMode.Open,
                FileAccess.Read,
                FileShare.ReadWrite | FileShare.Delete
            );
            var reader = new ColumnFileReader(cache, handle);
            if (
                reader.Directory(stamp) is { } tables
                && tables.SelectMany(BlocksOf).All(reader.IsIntact)
            )
            {
                return [.. tables.Select(reader.TableOf)];
            }
        }
        catch (Exception error)
            when (error is IOException or UnauthorizedAccessException or StoreException)
        {
            // As good as absent: the tables hold the same, and the cache is written anew.
        }

        handle?.Dispose();
        return null;
    }

    private static IEnumerable<Block> BlocksOf(TableBlocks table) =>
        table.Columns.Prepend(table.Ids).Concat(table.OwnFields.Select(field => field.Value));

    private List<TableBlocks>? Directory(Stamp stamp)
    {
        var length = RandomAccess.GetLength(file);
        Span<byte> tail = stackalloc byte[ColumnFile.TailLength];
        if (
            length < ColumnFile.Magic.Length + tail.Length
            || !ReadWhole(length - tail.Length, tail)
            || !tail[16..].SequenceEqual(ColumnFile.Magic)
        )
        {
            return null;
        }

        var directoryLength = BinaryPrimitives.ReadInt64LittleEndian(tail);
        if (
            directoryLength < 0
            || directoryLength > length - ColumnFile.Magic.Length - tail.Length
            || directoryLength > int.MaxValue
        )
        {
            return null;
        }

        var directory = new byte[directoryLength];
        return
            ReadWhole(length - tail.Length - directoryLength, directory)
            && XxHash3.HashToUInt64(directory) == BinaryPrimitives.ReadUInt64LittleEndian(tail[8..])
            ? Parse(directory, stamp)
            : null;
    }

    private static List<TableBlocks>? Parse(byte[] directory, Stamp stamp)
    {
        using var reader = new BinaryReader(new MemoryStream(directory), Encoding.UTF8);
        if (
            reader.ReadInt32() != ColumnFile.Format
            || reader.ReadUInt64() != (ulong)(LayoutFingerprint.Value >> 64)
            || reader.ReadUInt64() != (ulong)(LayoutFingerprint.Value & ulong.MaxValue)
            || new Guid(reader.ReadBytes(16)) != stamp.Project
            || reader.ReadInt64() != stamp.Revision
            || new Guid(reader.ReadBytes(16)) != stamp.Token
            || reader.ReadUInt32() != stamp.ChangeCounter
            || reader.ReadInt64() != stamp.Length
        )
        {
            return null;
        }

        List<TableBlocks> tables = [];
        foreach (var definition in ProjectLayout.Tables)
        {
            var rows = reader.ReadInt32();
            var ids = Get();
            var columns = new Block[definition.Columns.Count];
            for (var index = 0; index < columns.Length; index++)
            {
                columns[index] = Get();
            }

            var fields = new KeyValuePair<string, Block>[reader.ReadInt32()];
            for (var field = 0; field < fields.Length; field++)
            {
                fields[field] = KeyValuePair.Create(reader.ReadString(), Get());
            }

            tables.Add(new TableBlocks(definition, rows, ids, columns, fields));
        }

        return tables;

        Block Get() => new(reader.ReadInt64(), reader.ReadInt64(), reader.ReadUInt64());
    }

    private bool IsIntact(Block block)
    {
        var chunk = ArrayPool<byte>.Shared.Rent(ChunkLength);
        try
        {
            var hash = new XxHash3();
            for (var done = 0L; done < block.Length; )
            {
                var part = chunk.AsSpan(0, (int)Math.Min(ChunkLength, block.Length - done));
                if (!ReadWhole(block.Offset + done, part))
                {
                    return false;
                }

                hash.Append(part);
                done += part.Length;
            }

            return hash.GetCurrentHashAsUInt64() == block.Hash;
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(chunk);
        }
    }

    private Table TableOf(TableBlocks table) =>
        new(
            table.Definition,
            Numbers<int>(table.Ids, table.Rows),
            index => Fetch(table, index),
            table.OwnFields.ToDictionary(
                field => field.Key,
                field => new TextColumn(Texts(field.Value, table.Rows)),
                StringComparer.Ordinal
            )
        );

    private Column Fetch(TableBlocks table, int index)
    {
        var block = table.Columns[index];
        return table.Definition.Columns[index].Storage switch
        {
            ColumnStorage.Text => new TextColumn(Texts(block, table.Rows)),
            ColumnStorage.Long => new NumberColumn<long>(Numbers<long>(block, table.Rows)),
            ColumnStorage.Decimal => new NumberColumn<decimal>(Numbers<decimal>(block, table.Rows)),
            _ => new NumberColumn<int>(Numbers<int>(block, table.Rows)),
        };
    }

    private T[] Numbers<T>(Block block, int rows)
        where T : unmanaged
    {
        Span<byte> prefix = stackalloc byte[Prefix];
        ReadOrFail(block.Offset, prefix);
        var same = BinaryPrimitives.ReadInt32LittleEndian(prefix) == (int)BlockKind.SameNumber;
        var values = GC.AllocateUninitializedArray<T>(rows);
        var stored = MemoryMarshal.AsBytes(values.AsSpan(0, same ? 1 : rows));
        if (block.Length != Prefix + stored.Length)
        {
            throw Changed();
        }

        ReadOrFail(block.Offset + Prefix, stored);
        var hash = new XxHash3();
        hash.Append(prefix);
        hash.Append(stored);
        if (hash.GetCurrentHashAsUInt64() != block.Hash)
        {
            throw Changed();
        }

        if (same)
        {
            values.AsSpan().Fill(values[0]);
        }

        return values;
    }

    private string?[] Texts(Block block, int rows)
    {
        var rented = ArrayPool<byte>.Shared.Rent(checked((int)block.Length));
        try
        {
            var bytes = rented.AsSpan(0, (int)block.Length);
            ReadOrFail(block.Offset, bytes);
            return XxHash3.HashToUInt64(bytes) == block.Hash
                ? TextsOf(bytes, rows)
                : throw Changed();
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(rented);
        }
    }

    private static string?[] TextsOf(ReadOnlySpan<byte> bytes, int rows)
    {
        var kind = (BlockKind)BinaryPrimitives.ReadInt32LittleEndian(bytes);
        var values = new string?[rows];
        switch (kind)
        {
            case BlockKind.Texts:
                Decode(bytes[Prefix..], values);
                break;
            case BlockKind.RepeatedTexts:
                var texts = new string?[BinaryPrimitives.ReadInt32LittleEndian(bytes[Prefix..])];
                Decode(bytes[(Prefix + sizeof(int))..], texts);
                var codes = MemoryMarshal.Cast<byte, int>(bytes[^(rows * sizeof(int))..]);
                for (var row = 0; row < rows; row++)
                {
                    values[row] = codes[row] < 0 ? null : texts[codes[row]];
                }

                break;
        }

        return values;
    }

    /// <summary>Lengths first, then the texts.</summary>
    private static void Decode(ReadOnlySpan<byte> bytes, string?[] texts)
    {
        var lengths = MemoryMarshal.Cast<byte, int>(bytes[..(texts.Length * sizeof(int))]);
        var at = texts.Length * sizeof(int);
        for (var text = 0; text < texts.Length; text++)
        {
            if (lengths[text] >= 0)
            {
                texts[text] = Encoding.UTF8.GetString(bytes.Slice(at, lengths[text]));
                at += lengths[text];
            }
        }
    }

    private void ReadOrFail(long offset, Span<byte> bytes)
    {
        if (!ReadWhole(offset, bytes))
        {
            throw Changed();
        }
    }

    private bool ReadWhole(long offset, Span<byte> bytes)
    {
        while (bytes.Length > 0)
        {
            var read = RandomAccess.Read(file, bytes, offset);
            if (read == 0)
            {
                return false;
            }

            bytes = bytes[read..];
            offset += read;
        }

        return true;
    }

    private StoreException Changed() =>
        new(
            StoreProblem.Damaged,
            $"{path} was changed by another program while it was in use. The project itself is safe; open it again."
        );
}

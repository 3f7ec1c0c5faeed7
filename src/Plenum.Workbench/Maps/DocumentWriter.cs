using System.Buffers;
using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Text;

namespace Plenum.Workbench.Maps;

/// <summary>
/// Writes the little-endian documents of the map: fields one after another, then columns, each of which begins at the
/// next multiple of 8 bytes.
/// </summary>
internal sealed class DocumentWriter(IBufferWriter<byte> output)
{
    private const int ColumnBoundary = 8;
    private long written;

    public void Byte(int value)
    {
        output.GetSpan(1)[0] = (byte)value;
        Advance(1);
    }

    public void UInt16(int value)
    {
        BinaryPrimitives.WriteUInt16LittleEndian(output.GetSpan(2), (ushort)value);
        Advance(2);
    }

    public void UInt32(int value)
    {
        BinaryPrimitives.WriteUInt32LittleEndian(output.GetSpan(4), (uint)value);
        Advance(4);
    }

    public void Int64(long value)
    {
        BinaryPrimitives.WriteInt64LittleEndian(output.GetSpan(8), value);
        Advance(8);
    }

    public void Bytes(ReadOnlySpan<byte> bytes)
    {
        output.Write(bytes);
        written += bytes.Length;
    }

    /// <exception cref="PlatformNotSupportedException">The machine is not little-endian.</exception>
    public void Column<T>(ReadOnlySpan<T> values)
        where T : unmanaged
    {
        if (!BitConverter.IsLittleEndian)
        {
            throw new PlatformNotSupportedException("Maps are written on little-endian machines.");
        }

        Align();
        Bytes(MemoryMarshal.AsBytes(values));
    }

    /// <summary>Two columns: offsets, one more than there are texts, and the UTF-8 text that they point into.</summary>
    /// <exception cref="OverflowException">The text is longer than 4 GB.</exception>
    public void Texts(ReadOnlySpan<string?> texts)
    {
        var offsets = new uint[texts.Length + 1];
        for (var i = 0; i < texts.Length; i++)
        {
            offsets[i + 1] = offsets[i] + (uint)Encoding.UTF8.GetByteCount(texts[i] ?? "");
        }

        Column<uint>(offsets);
        Align();
        foreach (var text in texts)
        {
            Text(text ?? "");
        }
    }

    private void Text(string text)
    {
        var room = output.GetSpan(Encoding.UTF8.GetMaxByteCount(text.Length));
        Advance(Encoding.UTF8.GetBytes(text, room));
    }

    private void Align()
    {
        var past = (int)(written % ColumnBoundary);
        if (past > 0)
        {
            var missing = ColumnBoundary - past;
            output.GetSpan(missing)[..missing].Clear();
            Advance(missing);
        }
    }

    private void Advance(int bytes)
    {
        output.Advance(bytes);
        written += bytes;
    }
}

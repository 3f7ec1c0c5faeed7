using System.Buffers;

namespace Plenum.Workbench.Maps;

/// <summary>Hands what is written to a stream in pieces of about 64 KB. <see cref="Flush"/> hands over the last.</summary>
internal sealed class StreamOutput(Stream stream) : IBufferWriter<byte>
{
    private byte[] buffer = new byte[64 * 1024];
    private int filled;

    /// <summary>Writes a whole document to a stream.</summary>
    public static void Write(Stream stream, Action<IBufferWriter<byte>> document)
    {
        var output = new StreamOutput(stream);
        document(output);
        output.Flush();
    }

    public void Advance(int count) => filled += count;

    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        MakeRoom(sizeHint);
        return buffer.AsMemory(filled);
    }

    public Span<byte> GetSpan(int sizeHint = 0)
    {
        MakeRoom(sizeHint);
        return buffer.AsSpan(filled);
    }

    private void Flush()
    {
        stream.Write(buffer, 0, filled);
        filled = 0;
    }

    private void MakeRoom(int sizeHint)
    {
        var needed = Math.Max(1, sizeHint);
        if (buffer.Length - filled >= needed)
        {
            return;
        }

        Flush();
        if (buffer.Length < needed)
        {
            buffer = new byte[needed];
        }
    }
}

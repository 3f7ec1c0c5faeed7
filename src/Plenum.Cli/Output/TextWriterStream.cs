using System.Text;

namespace Plenum.Cli.Output;

/// <summary>Passes UTF-8 bytes on to a text writer, keeping characters whole that are split between two writes.</summary>
internal sealed class TextWriterStream(TextWriter writer) : Stream
{
    private readonly Decoder decoder = Encoding.UTF8.GetDecoder();

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Write(byte[] buffer, int offset, int count) =>
        Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        var characters = new char[Encoding.UTF8.GetMaxCharCount(buffer.Length)];
        var count = decoder.GetChars(buffer, characters, flush: false);
        writer.Write(characters, 0, count);
    }

    public override void Flush() => writer.Flush();

    public override int Read(byte[] buffer, int offset, int count) =>
        throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}

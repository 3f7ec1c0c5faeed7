using System.Buffers;
using System.Text.Unicode;

namespace Plenum.Exchange.Csv;

/// <summary>Why a text cannot be read beyond some place.</summary>
internal enum TextTrouble
{
    None,

    /// <summary>A zero byte, which no text holds.</summary>
    Zero,

    NotUtf8,
    RecordTooLong,
}

/// <summary>
/// The characters of a UTF-8 file, in blocks, for the CSV parser. Decodes strictly. At the first thing that no CSV file
/// may hold it hands out one <see cref="Mark"/> and then ends: the record with the mark is the one in trouble, so its row
/// is known although the parser reads ahead.
/// </summary>
internal sealed class Utf8Text : TextReader
{
    /// <summary>Stands where the trouble is. A text from here holds this character for no other reason.</summary>
    public const char Mark = '\0';

    /// <summary>The longest record in characters.</summary>
    public const int LongestRecord = 1_000_000;

    /// <summary>
    /// How many characters the parser may ask for before it finds a record. More than the longest one, because it reads
    /// ahead: its buffer is at most twice as long as the longest record that it has seen.
    /// </summary>
    private const int MostAhead = 3 * LongestRecord;

    private const int BlockBytes = 64 * 1024;

    private readonly Stream stream;
    private readonly byte[] block = new byte[BlockBytes];
    private int start;
    private int end;
    private int? zeroAt;
    private bool ended;
    private bool marked;
    private int sinceRecord;

    /// <summary>A character that was decoded and did not fit.</summary>
    private char? held;
    private long filled;

    public Utf8Text(Stream stream)
    {
        this.stream = stream;
        Fill();
        if (Block.StartsWith<byte>([0xEF, 0xBB, 0xBF]))
        {
            start = 3;
        }
    }

    public TextTrouble Trouble { get; private set; }

    /// <summary>The byte at which the text stops being UTF-8.</summary>
    public byte BadByte { get; private set; }

    /// <summary>The bytes at hand; before anything was read, the beginning of the file after a byte order mark.</summary>
    public ReadOnlySpan<byte> Block => block.AsSpan(start, end - start);

    /// <summary>How many bytes have been handed out as characters.</summary>
    public long BytesRead => filled - (end - start);

    /// <summary>Tells that the parser turns to the next record, whose length is counted from here.</summary>
    public void BeginRecord() => sinceRecord = 0;

    public override int Read(Span<char> buffer)
    {
        if (held is { } low)
        {
            held = null;
            buffer[0] = low;
            return 1;
        }

        if (buffer.Length > 1)
        {
            return Decode(buffer);
        }

        Span<char> pair = stackalloc char[2];
        var count = Decode(pair);
        if (count > 0)
        {
            buffer[0] = pair[0];
        }

        if (count > 1)
        {
            held = pair[1];
        }

        return Math.Min(1, count);
    }

    public override int Read(char[] buffer, int index, int count) =>
        Read(buffer.AsSpan(index, count));

    /// <summary>Decodes what fits into the buffer, which has room for a pair of surrogates.</summary>
    private int Decode(Span<char> buffer)
    {
        if (Trouble != TextTrouble.None)
        {
            return HandOutMark(buffer);
        }

        if (sinceRecord > MostAhead)
        {
            return Stop(TextTrouble.RecordTooLong, buffer);
        }

        while (true)
        {
            var limit = zeroAt ?? end;
            if (start < limit)
            {
                var status = Utf8.ToUtf16(
                    block.AsSpan(start, limit - start),
                    buffer,
                    out var read,
                    out var written,
                    replaceInvalidSequences: false,
                    isFinalBlock: ended || zeroAt is not null
                );
                start += read;
                if (written > 0)
                {
                    sinceRecord += written;
                    return written;
                }

                if (status == OperationStatus.InvalidData)
                {
                    BadByte = block[start];
                    return Stop(TextTrouble.NotUtf8, buffer);
                }
            }
            else if (zeroAt is not null)
            {
                return Stop(TextTrouble.Zero, buffer);
            }

            if (ended)
            {
                return 0;
            }

            Fill();
        }
    }

    /// <summary>The next character if it is of ASCII; otherwise some other character that is not.</summary>
    public override int Peek()
    {
        if (held is { } low)
        {
            return low;
        }

        if (Trouble != TextTrouble.None)
        {
            return -1;
        }

        if (start == end && !ended)
        {
            Fill();
        }

        if (start == end)
        {
            return -1;
        }

        return block[start] < 0x80 ? block[start] : char.MaxValue;
    }

    public override int Read()
    {
        Span<char> one = stackalloc char[1];
        return Read(one) == 0 ? -1 : one[0];
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            stream.Dispose();
        }

        base.Dispose(disposing);
    }

    private int Stop(TextTrouble trouble, Span<char> buffer)
    {
        Trouble = trouble;
        return HandOutMark(buffer);
    }

    private int HandOutMark(Span<char> buffer)
    {
        if (marked)
        {
            return 0;
        }

        marked = true;
        buffer[0] = Mark;
        return 1;
    }

    /// <summary>Moves what is left, at most the beginning of one character, to the front and reads behind it.</summary>
    private void Fill()
    {
        Block.CopyTo(block);
        end -= start;
        start = 0;
        var room = block.AsSpan(end);
        var read = stream.ReadAtLeast(room, room.Length, throwOnEndOfStream: false);
        ended = read < room.Length;
        filled += read;
        var zero = room[..read].IndexOf((byte)0);
        zeroAt = zero < 0 ? null : end + zero;
        end += read;
    }
}

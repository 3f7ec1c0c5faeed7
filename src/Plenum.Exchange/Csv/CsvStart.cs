namespace Plenum.Exchange.Csv;

/// <summary>What the first bytes of a file tell: whether it can be CSV at all, and what separates its cells.</summary>
internal static class CsvStart
{
    private const int Looked = 4096;

    /// <summary>Why a file that begins like this is not CSV, as expectation and message; null if it may be.</summary>
    public static (string Expected, string Message)? Complaint(ReadOnlySpan<byte> bytes)
    {
        if (bytes.IsEmpty)
        {
            return (
                "a header row",
                "the file is empty: its first row must hold the names of the columns"
            );
        }

        if (bytes.StartsWith("PK\x03\x04"u8) || bytes.StartsWith<byte>([0xD0, 0xCF, 0x11, 0xE0]))
        {
            return (
                "CSV",
                "this is a workbook under the name of a CSV file: give it its own ending, or save it as CSV UTF-8"
            );
        }

        var start = bytes[..Math.Min(bytes.Length, Looked)];
        if (
            start.StartsWith<byte>([0xFF, 0xFE])
            || start.StartsWith<byte>([0xFE, 0xFF])
            || IsUtf16(start)
        )
        {
            return ("UTF-8", "the file is UTF-16 (\"Unicode text\"): save it as CSV UTF-8");
        }

        if (start.IndexOfAnyExcept((byte)0) < 0)
        {
            return (
                "CSV",
                "the file holds nothing but zero bytes, it is damaged: copy or save it again"
            );
        }

        return start.Contains((byte)0)
            ? ("CSV", "the file is not text: save it as CSV UTF-8")
            : null;
    }

    /// <summary>
    /// The separator that stands most often in the header row outside quotation marks; a comma if none does.
    /// </summary>
    public static char Separator(ReadOnlySpan<byte> bytes)
    {
        int commas = 0,
            semicolons = 0,
            tabs = 0;
        var quoted = false;
        foreach (var value in bytes)
        {
            if (value == '"')
            {
                quoted = !quoted;
            }
            else if (!quoted)
            {
                if (value is (byte)'\n' or (byte)'\r')
                {
                    break;
                }

                commas += value == ',' ? 1 : 0;
                semicolons += value == ';' ? 1 : 0;
                tabs += value == '\t' ? 1 : 0;
            }
        }

        if (commas >= semicolons && commas >= tabs)
        {
            return ',';
        }

        return semicolons >= tabs ? ';' : '\t';
    }

    /// <summary>
    /// Whether every second byte is mostly zero and the others hardly ever: the letters of UTF-16 without a byte order
    /// mark.
    /// </summary>
    private static bool IsUtf16(ReadOnlySpan<byte> bytes)
    {
        var zeros = (Even: 0, Odd: 0);
        for (var index = 0; index < bytes.Length; index++)
        {
            if (bytes[index] == 0)
            {
                zeros = index % 2 == 0 ? (zeros.Even + 1, zeros.Odd) : (zeros.Even, zeros.Odd + 1);
            }
        }

        var pairs = bytes.Length / 2;
        var (fewer, more) = (Math.Min(zeros.Even, zeros.Odd), Math.Max(zeros.Even, zeros.Odd));
        return pairs > 0 && more * 2 >= pairs && fewer * 20 <= pairs;
    }
}

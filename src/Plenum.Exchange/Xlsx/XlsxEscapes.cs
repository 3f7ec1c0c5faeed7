namespace Plenum.Exchange.Xlsx;

/// <summary>
/// Characters that XML cannot hold or would change stand in a workbook as <c>_xHHHH_</c>, the number of the character in
/// hexadecimal (ISO/IEC 29500-1, type ST_Xstring): control characters but tab and line feed, carriage returns, U+FFFE
/// and U+FFFF. A text that looks like such an escape has its underscore escaped.
/// </summary>
internal static class XlsxEscapes
{
    /// <summary>The characters of an escape.</summary>
    public const int Length = 7;

    /// <summary>Writes the text escaped and returns its length, at most <see cref="Length"/> times as long.</summary>
    public static int Write(ReadOnlySpan<char> text, Span<char> escaped)
    {
        var length = 0;
        for (var at = 0; at < text.Length; at++)
        {
            var character = text[at];
            if (Needs(text, at))
            {
                WriteEscape(character, escaped[length..]);
                length += Length;
            }
            else
            {
                escaped[length++] = character;
            }
        }

        return length;
    }

    public static bool Needs(ReadOnlySpan<char> text)
    {
        for (var at = 0; at < text.Length; at++)
        {
            if (Needs(text, at))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Needs(ReadOnlySpan<char> text, int at) =>
        text[at] switch
        {
            '\t' or '\n' => false,
            < ' ' or '\uFFFE' or '\uFFFF' => true,
            '_' => LooksEscaped(text[at..]),
            _ => false,
        };

    /// <summary>
    /// Whether the text begins like an escape. Its closing underscore need not be there: an escape that follows brings
    /// one.
    /// </summary>
    private static bool LooksEscaped(ReadOnlySpan<char> text) =>
        text.Length >= 6
        && text[1] is 'x' or 'X'
        && char.IsAsciiHexDigit(text[2])
        && char.IsAsciiHexDigit(text[3])
        && char.IsAsciiHexDigit(text[4])
        && char.IsAsciiHexDigit(text[5]);

    private static void WriteEscape(char character, Span<char> escaped)
    {
        const string Digits = "0123456789ABCDEF";
        escaped[0] = '_';
        escaped[1] = 'x';
        escaped[2] = Digits[character >> 12];
        escaped[3] = Digits[(character >> 8) & 0xF];
        escaped[4] = Digits[(character >> 4) & 0xF];
        escaped[5] = Digits[character & 0xF];
        escaped[6] = '_';
    }
}

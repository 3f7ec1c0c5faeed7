using System.Text;

namespace Plenum.Workbench.Maps;

/// <summary>
/// Text made comparable: words of lower-case letters without accents and of digits, each with a space before it.
/// Whatever is neither letter nor digit only separates words. "Überström-Ventil 01.2" becomes " uberstrom ventil 01 2".
/// </summary>
internal static class FoldedText
{
    private const char Separator = ' ';
    private const char AsItIs = '?';
    private const char TwoLetters = '*';
    private const char FirstMark = '\u0300';
    private const char LastMark = '\u036F';

    /// <summary>
    /// Letters without their accents, by range; made from the decompositions of the Unicode Character Database. A
    /// question mark: as it is, in lower case. An asterisk: two letters, below.
    /// </summary>
    private static readonly (char First, string Letters)[] Ranges =
    [
        (
            '\u00C0',
            "aaaaaa*ceeeeiiiidnooooo?ouuuuy**aaaaaa*ceeeeiiiidnooooo?ouuuuy*yaaaaaaccccccccddddeeeeeeeeee"
                + "gggggggghhhhiiiiiiiiii**jjkkkllllll??llnnnnnn*nnoooooo**rrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs"
        ),
        ('\u0386', "α?εηι?ο?υωιαβγδεζηθικλμνξοπρ?στυφχψωιυαεηιυ?????????????????????????ιυουω"),
        (
            '\u1E00',
            "aabbbbbbccddddddddddeeeeeeeeeeffgghhhhhhhhhhiiiikkkkkkllllllllmmmmmmnnnnnnnnoooooooopppp"
                + "rrrrrrrrssssssssssttttttttuuuuuuuuuuvvvvwwwwwwwwwwxxxxyyzzzzzzhtwy?s??*?aaaaaaaaaaaaaaaaaaaaaaaa"
                + "eeeeeeeeeeeeeeeeiiiioooooooooooooooooooooooouuuuuuuuuuuuuuyyyyyyyy??????"
        ),
    ];

    /// <summary>The words of a text; empty if there is none.</summary>
    public static byte[] Of(string text)
    {
        List<byte> folded = [];
        Append(text, folded);
        return [.. folded];
    }

    /// <summary>Adds the words of a text.</summary>
    public static void Append(string text, List<byte> folded)
    {
        var isInside = false;
        foreach (var letter in text)
        {
            if (letter < 0x80)
            {
                var isWord = char.IsAsciiLetterOrDigit(letter);
                if (isWord)
                {
                    Begin(folded, ref isInside);
                    folded.Add((byte)char.ToLowerInvariant(letter));
                }

                isInside = isWord;
            }
            else if (letter is not (>= FirstMark and <= LastMark))
            {
                AppendOther(letter, folded, ref isInside);
            }
        }
    }

    private static void AppendOther(char letter, List<byte> folded, ref bool isInside)
    {
        // halves of a pair are kept as they come; they stand for letters more often than not
        if (!char.IsLetterOrDigit(letter) && !char.IsSurrogate(letter))
        {
            isInside = false;
            return;
        }

        Begin(folded, ref isInside);
        var plain = Plain(letter);
        if (plain == TwoLetters)
        {
            folded.AddRange(Encoding.ASCII.GetBytes(Two(letter)));
        }
        else if (plain < 0x80)
        {
            folded.Add((byte)plain);
        }
        else
        {
            AppendUnit(plain, folded);
        }
    }

    /// <summary>Three bytes hold any letter; they need be the same for the same letter and nothing more.</summary>
    private static void AppendUnit(char letter, List<byte> folded)
    {
        folded.Add((byte)(0xE0 | (letter >> 12)));
        folded.Add((byte)(0x80 | ((letter >> 6) & 0x3F)));
        folded.Add((byte)(0x80 | (letter & 0x3F)));
    }

    private static void Begin(List<byte> folded, ref bool isInside)
    {
        if (!isInside)
        {
            folded.Add((byte)Separator);
            isInside = true;
        }
    }

    private static char Plain(char letter)
    {
        foreach (var (first, letters) in Ranges)
        {
            var at = letter - first;
            if (at >= 0 && at < letters.Length && letters[at] != AsItIs)
            {
                return letters[at];
            }
        }

        return char.ToLowerInvariant(letter);
    }

    private static string Two(char letter) =>
        letter switch
        {
            'æ' or 'Æ' => "ae",
            'œ' or 'Œ' => "oe",
            'þ' or 'Þ' => "th",
            'ĳ' or 'Ĳ' => "ij",
            'ŉ' => "n",
            _ => "ss",
        };
}

namespace Plenum.Exchange.Lists;

/// <summary>Codes at the beginning of the lines of a list, and the tree that they show.</summary>
internal static class ListCodes
{
    private const string Separators = ".-/_";

    /// <summary>The code with which a text begins, and what follows it; null if it does not look like one.</summary>
    public static (string Code, string Name)? Split(string text)
    {
        var end = text.AsSpan().IndexOfAny(' ', '\u00A0');
        if (end < 1)
        {
            return null;
        }

        var code = text[..end].TrimEnd('.');
        return IsCodeLike(code) ? (code, text[end..].Trim()) : null;
    }

    /// <summary>
    /// Whether the first words of a list are its codes. They are if every line begins with one and no two are the same,
    /// or if most lines begin with one that has a digit and some of these have several parts, such as 1.1.
    /// </summary>
    public static bool AreCodes(IReadOnlyList<string> texts)
    {
        HashSet<string> different = new(StringComparer.Ordinal);
        var (found, numbered, compound) = (0, 0, 0);
        foreach (var text in texts)
        {
            if (Split(text) is var (code, _))
            {
                found++;
                different.Add(code);
                numbered += HasDigit(code) ? 1 : 0;
                compound += HasDigit(code) && Parts(code) > 1 ? 1 : 0;
            }
        }

        return texts.Count > 1
            && (
                (found == texts.Count && different.Count == found)
                || (compound > 0 && numbered * 2 > texts.Count)
            );
    }

    /// <summary>The code without its last part; null for a code of one part.</summary>
    public static string? Above(string code) =>
        code.AsSpan().LastIndexOfAny(Separators) is var mark and > 0 ? code[..mark] : null;

    /// <summary>How many parts a code has.</summary>
    public static int Parts(string code)
    {
        var parts = 1;
        foreach (var mark in code)
        {
            parts += Separators.Contains(mark) ? 1 : 0;
        }

        return parts;
    }

    /// <summary>
    /// What the codes of parts begin with: the code itself; for one such as 1.0 its beginning, 1, where no other row
    /// has that code and some begin with it.
    /// </summary>
    public static string Stem(string code, IReadOnlySet<string> codes, IReadOnlySet<string> parents)
    {
        var above = Above(code);
        return
            above is not null
            && code.AsSpan(above.Length + 1).Trim('0').IsEmpty
            && !codes.Contains(above)
            && parents.Contains(above)
            ? above
            : code;
    }

    private static bool IsCodeLike(string code)
    {
        var wasMark = true;
        var marks = 0;
        var capitals = true;
        foreach (var letter in code)
        {
            var isMark = Separators.Contains(letter);
            if ((isMark && wasMark) || (!isMark && !char.IsAsciiLetterOrDigit(letter)))
            {
                return false;
            }

            marks += isMark ? 1 : 0;
            capitals &= isMark || char.IsAsciiLetterUpper(letter) || char.IsAsciiDigit(letter);
            wasMark = isMark;
        }

        // A, B1 or A-B, but neither "Pumps" nor "Pre-treatment"
        return !wasMark && (HasDigit(code) || (capitals && (marks > 0 || code.Length <= 3)));
    }

    private static bool HasDigit(string code) => code.AsSpan().ContainsAnyInRange('0', '9');
}

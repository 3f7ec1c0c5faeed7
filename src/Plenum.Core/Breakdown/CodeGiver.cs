using System.Globalization;

namespace Plenum.Core.Breakdown;

/// <summary>
/// Gives codes to new elements: the parent's code and a number of its own, in the form of the mask where the project has
/// one, else in that of the sisters. The root's code stands before those of its children only where its children, or
/// the root itself, are numbered so. Source: a code shows the place (PMI practice standard, from memory); the forms are
/// ours.
/// </summary>
public static class CodeGiver
{
    /// <summary>The code of a child with a number.</summary>
    /// <param name="mask">The mask, such as 00.0.00.0; empty for none.</param>
    /// <param name="parent">Code of the parent.</param>
    /// <param name="parentLevel">Level of the parent; 1 for the root.</param>
    /// <param name="sister">Code of a sister, whose form is followed without a mask; null if there is none.</param>
    /// <param name="number">The number among the sisters, from 1.</param>
    public static string Child(
        string mask,
        string parent,
        int parentLevel,
        string? sister,
        int number
    )
    {
        if (mask.Length > 0)
        {
            return ByMask(mask, parent, parentLevel, number);
        }

        if (sister is not null && LastGroup(sister) is var begin and >= 0)
        {
            return sister[..begin] + Padded(number, sister.Length - begin, sister[begin]);
        }

        var root = parentLevel > 1 || IsNumber(parent) ? Plain(parent, parentLevel) : "";
        return root + number.ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>The number that the last part of a code says; 0 if it is none.</summary>
    public static int NumberOf(string code)
    {
        var begin = LastGroup(code);
        if (begin < 0)
        {
            return 0;
        }

        var own = code.AsSpan(begin);
        if (int.TryParse(own, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
        {
            return number;
        }

        return own.Length == 1 && char.IsAsciiLetterUpper(own[0]) ? own[0] - 'A' + 1 : 0;
    }

    private static string ByMask(string mask, string parent, int parentLevel, int number)
    {
        var group = parentLevel - 1;
        var at = 0;
        var mark = "";
        for (var skipped = 0; skipped < group && at < mask.Length; skipped++)
        {
            while (at < mask.Length && char.IsLetterOrDigit(mask[at]))
            {
                at++;
            }

            mark = at < mask.Length ? mask[at].ToString() : "";
            at++;
        }

        var end = at;
        while (end < mask.Length && char.IsLetterOrDigit(mask[end]))
        {
            end++;
        }

        var own =
            end > at
                ? Padded(number, end - at, char.IsAsciiLetter(mask[at]) ? 'A' : '0')
                : number.ToString(CultureInfo.InvariantCulture);
        return parentLevel == 1 ? own : parent + (mark.Length > 0 ? mark : ".") + own;
    }

    /// <summary>1.0 is the root of 1.1 and 1.2.</summary>
    private static string Plain(string parent, int parentLevel) =>
        parentLevel == 1 && parent.EndsWith(".0", StringComparison.Ordinal)
            ? parent[..^1]
            : parent + ".";

    private static bool IsNumber(string code) =>
        code.Length > 0 && code.All(mark => char.IsAsciiDigit(mark) || mark == '.');

    private static int LastGroup(string code)
    {
        var begin = code.Length;
        while (begin > 0 && char.IsAsciiDigit(code[begin - 1]))
        {
            begin--;
        }

        if (begin == code.Length)
        {
            var isLetter =
                begin > 0
                && char.IsAsciiLetterUpper(code[begin - 1])
                && (begin == 1 || !char.IsLetterOrDigit(code[begin - 2]));
            return isLetter ? begin - 1 : -1;
        }

        return begin;
    }

    private static string Padded(int number, int width, char form)
    {
        if (!char.IsAsciiLetter(form))
        {
            return number.ToString(CultureInfo.InvariantCulture).PadLeft(width, '0');
        }

        var letters = "";
        for (var rest = number; rest > 0; rest = (rest - 1) / 26)
        {
            letters = (char)('A' + ((rest - 1) % 26)) + letters;
        }

        return letters.PadLeft(width, 'A');
    }
}

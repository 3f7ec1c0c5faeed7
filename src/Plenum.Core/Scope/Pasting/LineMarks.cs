using System.Globalization;
using System.Text.RegularExpressions;

namespace Plenum.Core.Scope.Pasting;

/// <summary>How a line of a numbered text may begin.</summary>
internal static partial class LineMarks
{
    /// <summary>A number such as 4, 4.1.2, 4.1.a or 4.1-2, perhaps with a stop or bracket after it.</summary>
    [GeneratedRegex(
        @"^(?<number>\d{1,4}(?:\.(?:\d{1,4}|[A-Za-z]{1,4}))*(?:-\d{1,4})*)(?<end>[.)]?)(?:\s+(?<text>.*))?$",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        1000
    )]
    public static partial Regex Number();

    /// <summary>A label such as a), (i) or (2).</summary>
    [GeneratedRegex(
        @"^(?<open>\(?)(?<label>[A-Za-z]{1,4}|\d{1,3})\)\s+(?<text>.+)$",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        1000
    )]
    public static partial Regex Label();

    [GeneratedRegex(
        @"^[-–—•*·]\s+(?<text>.+)$",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        1000
    )]
    public static partial Regex Dash();

    /// <summary>The place of a label in its list, from 1, read as a number, a letter or a Roman number; 0 if it is none.</summary>
    public static int Place(string label, LabelSort sort) =>
        sort switch
        {
            LabelSort.Digits => char.IsAsciiDigit(label[0])
                ? int.Parse(label, CultureInfo.InvariantCulture)
                : 0,
            LabelSort.Letters => label.Length == 1 && char.IsAsciiLetter(label[0])
                ? (label[0] | 0x20) - 'a' + 1
                : 0,
            _ => Roman(label),
        };

    private static int Roman(string label)
    {
        var sum = 0;
        var last = 0;
        for (var at = label.Length - 1; at >= 0; at--)
        {
            var value = (label[at] | 0x20) switch
            {
                'i' => 1,
                'v' => 5,
                'x' => 10,
                'l' => 50,
                _ => 0,
            };
            if (value == 0)
            {
                return 0;
            }

            sum += value < last ? -value : value;
            last = Math.Max(last, value);
        }

        return sum;
    }
}

/// <summary>What the labels of a list are.</summary>
internal enum LabelSort
{
    Digits,
    Letters,
    Roman,
}

using System.Text;
using Plenum.Core.Foundation;

namespace Plenum.Core.Scope.Pasting;

/// <summary>
/// A scope statement as numbered text, as it stands in a contract: 4, 4.1, 4.1.2; below them labels such as a) or (i), and
/// dashes. Lines without a mark go on with the item before them.
/// </summary>
public static class NumberedText
{
    /// <summary>Most items that one text may hold.</summary>
    public const int MostItems = 10_000;

    /// <summary>
    /// Reads items with their hierarchy. A label or dash becomes an item below the number that it follows: 4.1.a, 4.1.a.i,
    /// 4.1-1. The kind of an item comes from the nearest heading above it that names one ("Exclusions"), else it is a
    /// requirement. Cost: one walk over the text.
    /// </summary>
    /// <param name="text">The text, with any line ends.</param>
    /// <param name="known">Numbers that the statement has already: a pasted item may be part of one of them.</param>
    public static PastedStatement Read(string text, IReadOnlySet<string>? known = null)
    {
        var lines = text.TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n');
        return new NumberedTextReader(
            lines,
            known ?? new HashSet<string>(StringComparer.Ordinal)
        ).Read();
    }

    /// <summary>
    /// Writes items, one a line, in the natural order of their numbers; <see cref="Read"/> gives the same items back if
    /// their numbers are such as it gives itself and each has its parent among them.
    /// </summary>
    public static string Write(IEnumerable<(string Item, string Text)> items)
    {
        var output = new StringBuilder();
        foreach (var (item, text) in items.OrderBy(pair => pair.Item, NaturalOrder.Codes))
        {
            output.Append(item).Append(' ').Append(text.ReplaceLineEndings(" ")).Append('\n');
        }

        return output.ToString();
    }
}

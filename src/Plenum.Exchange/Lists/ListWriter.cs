using System.Text;
using Plenum.Core.Breakdown;

namespace Plenum.Exchange.Lists;

/// <summary>How a breakdown is written as a list.</summary>
public enum ListLayout
{
    /// <summary>Names, two spaces for each level.</summary>
    Indented,

    /// <summary>Code, tab and name, two spaces for each level before the code.</summary>
    Coded,

    /// <summary>Names, one empty cell (a tab) for each level: the rows of a spreadsheet.</summary>
    Cells,
}

/// <summary>
/// Writes a breakdown as a list that <see cref="ListReader"/> reads back as the same tree, with the same codes where
/// they are written. Where the names alone would be misread (all of them begin like codes, say), a line with headings
/// stands first. Lines end with a line feed.
/// </summary>
public static class ListWriter
{
    /// <param name="rows">Level from 1, code and name; depth first, the first row on the least level.</param>
    public static void Write(
        TextWriter output,
        IReadOnlyList<(int Level, string Code, string Name)> rows,
        ListLayout layout
    )
    {
        if (rows.Count == 0)
        {
            return;
        }

        var top = rows[0].Level;
        var line = new StringBuilder();
        if (NeedsHeadings(rows, layout))
        {
            Append(line, layout, 0, ElementTable.Code.Name, ElementTable.Name.Name);
            output.Write(line);
        }

        foreach (var (level, code, name) in rows)
        {
            line.Clear();
            Append(line, layout, level - top, code, name);
            output.Write(line);
        }
    }

    private static bool NeedsHeadings(
        IReadOnlyList<(int Level, string Code, string Name)> rows,
        ListLayout layout
    )
    {
        var line = new StringBuilder();
        Append(line, layout, 0, rows[0].Code, rows[0].Name);
        return ListHeadings.IsHeading(ListLines.Of(line.ToString()).First())
            || (
                layout != ListLayout.Coded
                && ListDrafts.MayBeMisread([.. rows.Select(row => row.Name)])
            );
    }

    private static void Append(
        StringBuilder line,
        ListLayout layout,
        int depth,
        string code,
        string name
    )
    {
        line.Append(
            layout == ListLayout.Cells ? '\t' : ' ',
            layout == ListLayout.Cells ? depth : 2 * depth
        );
        if (layout == ListLayout.Coded)
        {
            AppendCell(line, code);
            line.Append('\t');
        }

        AppendCell(line, name);
        line.Append('\n');
    }

    private static void AppendCell(StringBuilder line, string text)
    {
        if (ListLines.MustBeQuoted(text))
        {
            line.Append('"')
                .Append(text.Replace("\"", "\"\"", StringComparison.Ordinal))
                .Append('"');
        }
        else
        {
            line.Append(text);
        }
    }
}

namespace Plenum.Exchange.Lists;

/// <summary>A line of a list, cut into its cells.</summary>
/// <param name="Line">Its number, from 1; of a line with line breaks inside quotation marks the first.</param>
/// <param name="Cells">The cells between tabs, trimmed; empty ones at the end are left out.</param>
/// <param name="Indents">Spaces before the text of each cell.</param>
internal sealed record ListLine(int Line, IReadOnlyList<string> Cells, IReadOnlyList<int> Indents)
{
    /// <summary>The first cell that holds anything.</summary>
    public int First { get; } = FirstFilled(Cells);

    /// <summary>Some spaces stand alone in a cell before the first that holds anything.</summary>
    public bool HasBlankIndent => Indents.Take(First).Any(indent => indent > 0);

    private static int FirstFilled(IReadOnlyList<string> cells)
    {
        for (var cell = 0; cell < cells.Count; cell++)
        {
            if (cells[cell].Length > 0)
            {
                return cell;
            }
        }

        return cells.Count;
    }
}

/// <summary>
/// Cuts a text into lines and cells as spreadsheets put rows on the clipboard: tabs between cells; a cell with a tab, a
/// line break or a quotation mark in quotation marks, those inside doubled. Lines without any text are left out, and a
/// byte-order mark is.
/// </summary>
internal static class ListLines
{
    public static IEnumerable<ListLine> Of(string text)
    {
        var at = text.StartsWith('\uFEFF') ? 1 : 0;
        var line = 1;
        List<string> cells = [];
        List<int> indents = [];
        while (at < text.Length)
        {
            var first = line;
            cells.Clear();
            indents.Clear();
            while (true)
            {
                Take(text, ref at, ref line, cells, indents);
                if (at >= text.Length || text[at] != '\t')
                {
                    break;
                }

                at++;
            }

            SkipBreak(text, ref at);
            line++;
            while (cells.Count > 0 && cells[^1].Length == 0)
            {
                cells.RemoveAt(cells.Count - 1);
            }

            if (cells.Count > 0)
            {
                yield return new ListLine(first, [.. cells], [.. indents.Take(cells.Count)]);
            }
        }
    }

    private static void Take(
        string text,
        ref int at,
        ref int line,
        List<string> cells,
        List<int> indents
    )
    {
        var start = at;
        while (at < text.Length && IsSpace(text[at]))
        {
            at++;
        }

        indents.Add(at - start);
        if (at < text.Length && text[at] == '"' && Quoted(text, at) is var (content, end))
        {
            line += Breaks(text.AsSpan(at, end - at));
            at = end;
            cells.Add(content);
            return;
        }

        var length = text.AsSpan(at).IndexOfAny('\t', '\n', '\r');
        length = length < 0 ? text.Length - at : length;
        cells.Add(text.Substring(at, length).TrimEnd());
        at += length;
    }

    /// <summary>The content of a cell in quotation marks and where it ends; null if it is no such cell.</summary>
    private static (string Content, int End)? Quoted(string text, int at)
    {
        for (var from = at + 1; ; )
        {
            var length = text.AsSpan(from).IndexOf('"');
            if (length < 0 || from + length - at > (2 * ListLimits.LongestText) + 2)
            {
                return null;
            }

            var quote = from + length;
            if (quote + 1 < text.Length && text[quote + 1] == '"')
            {
                from = quote + 2;
                continue;
            }

            var content = text[(at + 1)..quote].Replace("\"\"", "\"", StringComparison.Ordinal);
            var end = quote + 1;
            while (end < text.Length && IsSpace(text[end]))
            {
                end++;
            }

            var closes = end >= text.Length || text[end] is '\t' or '\n' or '\r';
            return closes && MustBeQuoted(content) ? (content, end) : null;
        }
    }

    /// <summary>Whether a cell is written in quotation marks, so that it reads back as it is.</summary>
    public static bool MustBeQuoted(ReadOnlySpan<char> text) =>
        text.ContainsAny("\t\n\r")
        || text.StartsWith("\"", StringComparison.Ordinal)
        || text.StartsWith("\uFEFF", StringComparison.Ordinal)
        || (text.Length > 0 && (char.IsWhiteSpace(text[0]) || char.IsWhiteSpace(text[^1])));

    private static int Breaks(ReadOnlySpan<char> text) =>
        text.Count('\n') + text.Count('\r') - text.Count("\r\n");

    private static void SkipBreak(string text, ref int at)
    {
        if (at < text.Length && text[at] == '\r')
        {
            at++;
            if (at < text.Length && text[at] == '\n')
            {
                at++;
            }
        }
        else if (at < text.Length)
        {
            at++;
        }
    }

    private static bool IsSpace(char mark) =>
        mark is not ('\t' or '\n' or '\r') && char.IsWhiteSpace(mark);
}

using System.Buffers;
using System.Text;

namespace Plenum.Oracle.Tables;

/// <summary>Text tables as RFC 4180 files: UTF-8 without mark, comma, CR LF, quotes where needed.</summary>
public static class CsvFolder
{
    private static readonly SearchValues<char> ToQuote = SearchValues.Create(",;\t\"\r\n");

    /// <summary>Writes one file a table, <c>table.csv</c>, into the folder, which is made if it is not there.</summary>
    public static void Write(TextProject project, string folder)
    {
        Directory.CreateDirectory(folder);
        foreach (var table in project.TableNames)
        {
            File.WriteAllText(
                Path.Combine(folder, table + ".csv"),
                Text(project.Rows(table)),
                new UTF8Encoding(false)
            );
        }
    }

    /// <summary>The text of one file: a header of all columns that any row has, in order of first use, then the rows.</summary>
    public static string Text(IReadOnlyList<TextRow> rows)
    {
        var columns = new List<string>();
        foreach (var column in rows.SelectMany(row => row.Columns))
        {
            if (!columns.Contains(column, StringComparer.Ordinal))
            {
                columns.Add(column);
            }
        }

        var text = new StringBuilder();
        text.Append(Line(columns));
        foreach (var row in rows)
        {
            text.Append(Line(columns.Select(column => row[column])));
        }

        return text.ToString();
    }

    private static string Line(IEnumerable<string> cells) =>
        string.Join(',', cells.Select(Cell)) + "\r\n";

    private static string Cell(string text) =>
        text.AsSpan().ContainsAny(ToQuote) || text != text.Trim()
            ? "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\""
            : text;
}

using System.Globalization;
using Plenum.Core.Foundation;

namespace Plenum.Exchange;

/// <summary>The rules that a header row follows, be it of a CSV file or of a sheet.</summary>
internal static class Headings
{
    public const int Row = 1;

    /// <summary>
    /// The headings, trimmed and without empty ones at the end; null after an error was reported.
    /// </summary>
    public static IReadOnlyList<string>? Read(
        string file,
        IEnumerable<string> cells,
        InputErrors errors
    )
    {
        var headings = cells.Select(cell => cell.Trim()).ToList();
        while (headings.Count > 0 && headings[^1].Length == 0)
        {
            headings.RemoveAt(headings.Count - 1);
        }

        if (headings.Count == 0)
        {
            errors.Add(
                file,
                Row,
                null,
                [],
                "headings",
                "no headings found: the first row must hold the names of the columns"
            );
            return null;
        }

        var sound = true;
        var firstAt = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        for (var index = 0; index < headings.Count; index++)
        {
            var heading = headings[index];
            if (heading.Length == 0)
            {
                sound = false;
                errors.Add(
                    file,
                    Row,
                    null,
                    [],
                    "a heading in every column",
                    $"column {Letters(index)} has no heading: name it, or remove the column"
                );
            }
            else if (!firstAt.TryAdd(heading, index))
            {
                sound = false;
                errors.Add(
                    file,
                    Row,
                    heading,
                    heading,
                    "every heading once",
                    $"columns {Letters(firstAt[heading])} and {Letters(index)} are both headed \"{heading}\": "
                        + "rename or remove one of them"
                );
            }
        }

        return sound ? headings : null;
    }

    /// <summary>Reports a row with another number of cells than there are headings.</summary>
    public static void ReportCount(
        string file,
        int row,
        int found,
        int expected,
        InputErrors errors
    )
    {
        var remedy =
            found > expected
                ? "put a value that holds the separator into quotation marks, or give each column a heading"
                : "add the missing cells, empty ones too";
        errors.Add(
            file,
            row,
            null,
            found.ToString(CultureInfo.InvariantCulture),
            Cells(expected),
            $"{Cells(found)} found, {Cells(expected)} expected, one for each heading: {remedy}"
        );
    }

    /// <summary>The name of a column for an error: its heading, or its letters where it has none.</summary>
    public static string Name(IReadOnlyList<string> headings, int index) =>
        index < headings.Count ? headings[index] : Letters(index);

    /// <summary>The letters that a spreadsheet puts above a column counted from 0: A, B, … Z, AA.</summary>
    public static string Letters(int index)
    {
        var letters = string.Empty;
        for (var rest = index; rest >= 0; rest = (rest / 26) - 1)
        {
            letters = (char)('A' + (rest % 26)) + letters;
        }

        return letters;
    }

    private static string Cells(int count) =>
        count == 1 ? "1 cell" : string.Create(CultureInfo.InvariantCulture, $"{count} cells");
}

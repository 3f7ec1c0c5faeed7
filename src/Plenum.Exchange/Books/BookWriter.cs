using System.Globalization;
using Plenum.Exchange.Xlsx;
using SpreadCheetah;
using SpreadCheetah.Worksheets;

namespace Plenum.Exchange.Books;

/// <summary>
/// Writes a workbook that people edit and send back: headings in view, levels as indents, keys on a darker ground, a
/// last sheet of notes on what may be edited. Texts stay texts whatever they look like, so that nothing becomes a
/// formula. The file has its own name only when it is whole.
/// </summary>
public static class BookWriter
{
    /// <summary>Readers pass it over: its name begins with an underscore.</summary>
    private const string NotesSheet = "_notes";

    private const int LongestText = 32_767;
    private const double NotesWidth = 110;
    private const int MostDigits = 15;

    /// <param name="file">The file; one that is there is replaced.</param>
    /// <param name="sheets">The sheets.</param>
    /// <param name="notes">What may be edited, line by line.</param>
    /// <exception cref="IOException">
    /// It cannot be written; or a text is longer than 32 767 characters, or there are more rows than a sheet has.
    /// </exception>
    public static void Write(
        string file,
        IReadOnlyList<BookSheet> sheets,
        IReadOnlyList<string> notes
    )
    {
        using var part = new PartFile(file);
        using (
            var workbook = Wait(
                Spreadsheet.CreateNewAsync(
                    part.Stream,
                    new SpreadCheetahOptions
                    {
                        PreserveStringWhitespace = true,
                        WriteCellReferenceAttributes = true,
                    }
                )
            )
        )
        {
            var styles = new BookStyles(workbook);
            foreach (var sheet in sheets)
            {
                Write(workbook, styles, sheet);
            }

            WriteNotes(workbook, styles, notes);
            Wait(workbook.FinishAsync());
        }

        part.Close();
        part.Rename();
    }

    private static void Write(Spreadsheet workbook, BookStyles styles, BookSheet sheet)
    {
        var options = new WorksheetOptions { FrozenRows = 1, FrozenColumns = sheet.FrozenColumns };
        for (var column = 0; column < sheet.Columns.Count; column++)
        {
            options.Column(column + 1).Width = sheet.Columns[column].Width;
            options.Column(column + 1).Hidden = sheet.Columns[column].IsHidden;
        }

        Wait(workbook.StartWorksheetAsync(sheet.Name, options));
        var cells = new StyledCell[sheet.Columns.Count];
        for (var column = 0; column < cells.Length; column++)
        {
            cells[column] = new StyledCell(Escaped(sheet.Columns[column].Heading), styles.Heading);
        }

        Wait(workbook.AddRowAsync(cells));
        var rows = 1;
        foreach (var row in sheet.Rows)
        {
            if (++rows > SheetRows.MostRows)
            {
                throw new IOException(
                    $"The sheet {sheet.Name} would have more rows than a sheet has: write a part of the breakdown (--under)."
                );
            }

            for (var column = 0; column < cells.Length; column++)
            {
                cells[column] = Cell(sheet, row, column, styles);
            }

            Wait(workbook.AddRowAsync(cells));
        }
    }

    private static StyledCell Cell(BookSheet sheet, BookRow row, int column, BookStyles styles)
    {
        var kind = sheet.Columns[column].Kind;
        var mark = row.Marks.Count > 0 ? row.Marks[column] : BookMark.None;
        var style = styles.Of(kind, mark, row.IsBold, row.Level);
        var text = row.Cells[column];
        if (text is null)
        {
            return new StyledCell((string?)null, style);
        }

        if (text.Length > LongestText)
        {
            throw new IOException(
                $"A text of the sheet {sheet.Name} has more than 32 767 characters, the most that fit in a cell: shorten it first."
            );
        }

        return kind == BookColumnKind.Number && IsExact(text, out var number)
            ? new StyledCell(number, style)
            : new StyledCell(Escaped(text), style);
    }

    /// <summary>A spreadsheet keeps 15 significant digits.</summary>
    private static bool IsExact(string text, out decimal number) =>
        decimal.TryParse(
            text,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out number
        )
        && text.Count(char.IsAsciiDigit) <= MostDigits;

    private static void WriteNotes(
        Spreadsheet workbook,
        BookStyles styles,
        IReadOnlyList<string> notes
    )
    {
        var options = new WorksheetOptions();
        options.Column(1).Width = NotesWidth;
        Wait(workbook.StartWorksheetAsync(NotesSheet, options));
        foreach (var note in notes)
        {
            Wait(
                workbook.AddRowAsync([
                    new StyledCell(
                        Escaped(note),
                        styles.Of(BookColumnKind.Lines, BookMark.None, false, 1)
                    ),
                ])
            );
        }
    }

    private static string Escaped(string text)
    {
        if (!XlsxEscapes.Needs(text))
        {
            return text;
        }

        var escaped = new char[text.Length * XlsxEscapes.Length];
        return new string(escaped, 0, XlsxEscapes.Write(text, escaped));
    }

    /// <summary>Waits for what is done at once anyway: the file is written synchronously.</summary>
    private static void Wait(ValueTask task)
    {
        if (!task.IsCompletedSuccessfully)
        {
            task.AsTask().GetAwaiter().GetResult();
        }
    }

    private static T Wait<T>(ValueTask<T> task) => task.AsTask().GetAwaiter().GetResult();
}

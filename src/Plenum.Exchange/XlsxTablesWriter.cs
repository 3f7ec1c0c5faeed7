using Plenum.Exchange.Xlsx;
using SpreadCheetah;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;

namespace Plenum.Exchange;

/// <summary>
/// Writes one workbook with a sheet for each table: the header frozen, numbers and dates as such, text as text whatever
/// it looks like, so that a code such as 1.10 stays one and nothing becomes a formula. Numbers of more than 15
/// significant digits, which a spreadsheet would round, and dates before 1 March 1900, which it counts wrongly, are
/// written as text. A table of more than 1 048 575 rows and a text of more than 32 767 characters fit in no sheet:
/// <see cref="IOException"/> that says to export as CSV.
/// </summary>
public sealed class XlsxTablesWriter : TablesWriter
{
    private const int MostRecords = SheetRows.MostRows - 1;
    private const int LongestText = 32_767;
    private static readonly DateOnly FirstDate = new(1900, 3, 1);

    private readonly PartFile file;
    private readonly Spreadsheet workbook;
    private readonly StyleId headingStyle;
    private readonly StyleId textStyle;
    private readonly StyleId dateStyle;
    private StyledCell[] row = [];
    private int cells;
    private int records;
    private bool any;

    /// <summary>The texts of the row at hand.</summary>
    private char[] texts = new char[4096];
    private int used;

    public XlsxTablesWriter(string file)
    {
        this.file = new PartFile(file);
        try
        {
            workbook = Wait(
                Spreadsheet.CreateNewAsync(
                    this.file.Stream,
                    new SpreadCheetahOptions
                    {
                        PreserveStringWhitespace = true,
                        WriteCellReferenceAttributes = true,
                    }
                )
            );
            var asText = NumberFormat.Standard(StandardNumberFormat.Text);
            headingStyle = workbook.AddStyle(new Style { Format = asText, Font = { Bold = true } });
            textStyle = workbook.AddStyle(new Style { Format = asText });
            dateStyle = workbook.AddStyle(new Style { Format = NumberFormat.Custom("yyyy-mm-dd") });
        }
        catch
        {
            this.file.Dispose();
            throw;
        }
    }

    private protected override void Begin(string table, IReadOnlyList<string> columns)
    {
        Wait(workbook.StartWorksheetAsync(table, new WorksheetOptions { FrozenRows = 1 }));
        any = true;
        row = new StyledCell[columns.Count];
        foreach (var column in columns)
        {
            row[cells++] = new StyledCell(Keep(column), headingStyle);
        }

        EndCells();
        records = 0;
    }

    private protected override void Put(ReadOnlySpan<char> value) =>
        row[cells++] = value.IsEmpty ? default : new StyledCell(Keep(value), textStyle);

    private protected override void PutNumber(decimal value, ReadOnlySpan<char> plain)
    {
        if (SignificantDigits(plain) > CellText.Digits)
        {
            Put(plain);
        }
        else
        {
            row[cells++] = new StyledCell(value, styleId: null);
        }
    }

    private protected override void PutDate(DateOnly value)
    {
        if (value < FirstDate)
        {
            Put(value.ToString("O", System.Globalization.CultureInfo.InvariantCulture));
        }
        else
        {
            row[cells++] = new StyledCell(value.ToDateTime(TimeOnly.MinValue), dateStyle);
        }
    }

    private protected override void End()
    {
        if (records == MostRecords)
        {
            throw new IOException(
                $"The table {Table} has more than 1 048 575 rows, the most that fit in a sheet: export as CSV."
            );
        }

        records++;
        EndCells();
    }

    private protected override void Complete()
    {
        if (!any)
        {
            throw new InvalidOperationException("A workbook needs a table.");
        }

        Wait(workbook.FinishAsync());
        file.Close();
        file.Rename();
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            try
            {
                workbook.Dispose();
            }
            finally
            {
                file.Dispose();
            }
        }
    }

    /// <summary>Without zeros at the front, nor at the end of a whole number.</summary>
    private static int SignificantDigits(ReadOnlySpan<char> plain)
    {
        var digits = plain.TrimStart("-0.");
        return digits.Contains('.') ? digits.Length - 1
            : plain.Contains('.') ? digits.Length
            : digits.TrimEnd('0').Length;
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

    private void EndCells()
    {
        Wait(workbook.AddRowAsync(row.AsMemory(0, cells)));
        cells = 0;
        used = 0;
    }

    /// <summary>Keeps the text, escaped, until the row ends.</summary>
    private ReadOnlyMemory<char> Keep(ReadOnlySpan<char> value)
    {
        if (value.Length > LongestText)
        {
            throw new IOException(
                $"A text in the table {Table} is longer than 32 767 characters, the most that fit in a cell: export as CSV."
            );
        }

        var escape = XlsxEscapes.Needs(value);
        var room = escape ? value.Length * XlsxEscapes.Length : value.Length;
        if (texts.Length - used < room)
        {
            // Cells of this row keep the memory that they point into.
            texts = new char[Math.Max(texts.Length * 2, room)];
            used = 0;
        }

        var start = used;
        if (escape)
        {
            used += XlsxEscapes.Write(value, texts.AsSpan(start));
        }
        else
        {
            value.CopyTo(texts.AsSpan(start));
            used += value.Length;
        }

        return texts.AsMemory(start, used - start);
    }
}

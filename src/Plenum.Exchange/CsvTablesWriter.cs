using System.Buffers;
using System.Globalization;
using System.Text;

namespace Plenum.Exchange;

/// <summary>
/// Writes each table to its own CSV file in one folder, which is made if it is not there: UTF-8 without byte order mark,
/// line feeds, commas, quotation marks only where needed (RFC 4180, but for the line ends). Files of other tables in the
/// folder stay as they are. The files get their real names one after another once all are complete.
/// <para>
/// Values are written as they are, also those that begin with <c>=</c>, <c>+</c>, <c>-</c> or <c>@</c>, so that nothing
/// is lost or changed. A spreadsheet program that opens such a file may take the value for a formula: who passes tables
/// from others on to spreadsheets should export a workbook, in which text stays text.
/// </para>
/// </summary>
public sealed class CsvTablesWriter(string folder) : TablesWriter
{
    private static readonly SearchValues<char> Special = SearchValues.Create(",\"\r\n");

    /// <summary>Headings with these would mislead who looks for the separator in the header.</summary>
    private static readonly SearchValues<char> SpecialInHeading = SearchValues.Create(",;\t\"\r\n");

    private readonly List<PartFile> files = [];
    private StreamWriter? text;
    private bool inRow;

    private protected override void Begin(string table, IReadOnlyList<string> columns)
    {
        CloseTable();
        var file = new PartFile(Path.Combine(folder, table + ".csv"));
        files.Add(file);
        text = new StreamWriter(
            file.Stream,
            new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            bufferSize: 32 * 1024,
            leaveOpen: true
        );
        foreach (var column in columns)
        {
            Separate();
            Put(column, SpecialInHeading);
        }

        End();
    }

    private protected override void Put(ReadOnlySpan<char> value)
    {
        Separate();
        Put(value, Special);
    }

    private protected override void PutNumber(decimal value, ReadOnlySpan<char> plain)
    {
        Separate();
        text!.Write(plain);
    }

    private protected override void PutDate(DateOnly value)
    {
        Span<char> day = stackalloc char[10];
        value.TryFormat(day, out _, "yyyy-MM-dd", CultureInfo.InvariantCulture);
        Separate();
        text!.Write(day);
    }

    private protected override void End()
    {
        text!.Write('\n');
        inRow = false;
    }

    private protected override void Complete()
    {
        CloseTable();
        foreach (var file in files)
        {
            file.Rename();
        }
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            foreach (var file in files)
            {
                file.Dispose();
            }
        }
    }

    private void CloseTable()
    {
        text?.Dispose();
        text = null;
        if (files.Count > 0)
        {
            files[^1].Close();
        }
    }

    private void Separate()
    {
        if (inRow)
        {
            text!.Write(',');
        }

        inRow = true;
    }

    private void Put(ReadOnlySpan<char> value, SearchValues<char> special)
    {
        if (!value.ContainsAny(special))
        {
            text!.Write(value);
            return;
        }

        text!.Write('"');
        while (value.IndexOf('"') is >= 0 and var mark)
        {
            text.Write(value[..(mark + 1)]);
            text.Write('"');
            value = value[(mark + 1)..];
        }

        text.Write(value);
        text.Write('"');
    }
}

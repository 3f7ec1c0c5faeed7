using System.Globalization;
using System.Runtime.CompilerServices;
using nietras.SeparatedValues;
using Plenum.Core.Foundation;

namespace Plenum.Exchange.Csv;

internal enum RecordState
{
    /// <summary>There is a record.</summary>
    Whole,

    /// <summary>There was one, and what is wrong with it has been reported; the next can be read.</summary>
    Skipped,

    /// <summary>Everything has been read.</summary>
    End,

    /// <summary>What is wrong has been reported, and nothing more can be read.</summary>
    Stopped,
}

/// <summary>
/// The records of a CSV file one after another, header and empty lines included. Finds the ends of cells and records
/// with a library and judges the quotation marks itself, because the library takes them in any place without a word.
/// </summary>
internal sealed class CsvRecords : IDisposable
{
    private readonly string file;
    private readonly Utf8Text text;
    private readonly double fileBytes;
    private readonly InputErrors errors;
    private readonly SepReader records;

    /// <summary>The values with doubled quotation marks of the record at hand, undoubled, one behind the other.</summary>
    private char[] values = [];

    /// <summary>Where the value of a column stands among them; of length 0 for all other columns.</summary>
    private (int Start, int Length)[] places = [];

    private bool hasQuotes;

    public CsvRecords(
        string file,
        Utf8Text text,
        long fileBytes,
        char separator,
        InputErrors errors
    )
    {
        this.file = file;
        this.text = text;
        this.fileBytes = Math.Max(1, fileBytes);
        this.errors = errors;
        records = Sep.New(separator)
            .Reader(options =>
                options with
                {
                    HasHeader = false,
                    DisableColCountCheck = true,
                    Unescape = false,
                    Trim = SepTrim.None,
                }
            )
            .From(text);
    }

    /// <summary>The names of the columns for errors, once they are known.</summary>
    public IReadOnlyList<string> Headings { get; set; } = [];

    /// <summary>The number of the record at hand, the first is 1.</summary>
    public int Row { get; private set; }

    public int Count { get; private set; }

    /// <summary>The share of the file that has been read; at most 1, even if the file grows meanwhile.</summary>
    public double Fraction => Math.Min(1, text.BytesRead / fileBytes);

    /// <summary>The value of a cell of the record at hand.</summary>
    public ReadOnlySpan<char> this[int column]
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => hasQuotes ? Unquoted(column) : records.Current[column].Span;
    }

    public IReadOnlyList<string> Cells()
    {
        var cells = new string[Count];
        for (var column = 0; column < Count; column++)
        {
            cells[column] = this[column].ToString();
        }

        return cells;
    }

    public RecordState Next()
    {
        text.BeginRecord();
        hasQuotes = false;
        try
        {
            if (!records.MoveNext())
            {
                return RecordState.End;
            }
        }
        catch (IOException e)
        {
            errors.Add(
                file,
                Row + 1,
                null,
                [],
                "a file that can be read",
                $"reading broke off: {e.Message}"
            );
            return RecordState.Stopped;
        }

        Row++;
        var record = records.Current;
        Count = record.ColCount;
        var characters = record.Span;
        if (text.Trouble != TextTrouble.None && characters.Contains(Utf8Text.Mark))
        {
            return Stop(text.Trouble);
        }

        if (characters.Length > Utf8Text.LongestRecord)
        {
            return Stop(TextTrouble.RecordTooLong);
        }

        return characters.Contains('"') ? Unquote(record) : RecordState.Whole;
    }

    public void Dispose()
    {
        records.Dispose();
        text.Dispose();
    }

    private ReadOnlySpan<char> Unquoted(int column)
    {
        var (start, length) = places[column];
        if (length > 0)
        {
            return values.AsSpan(start, length);
        }

        var cell = records.Current[column].Span;
        return cell is ['"', .. var inner, '"'] ? inner : cell;
    }

    private RecordState Unquote(SepReader.Row record)
    {
        if (places.Length < Count)
        {
            places = new (int, int)[Count];
        }

        var end = 0;
        for (var column = 0; column < Count; column++)
        {
            var cell = record[column].Span;
            var use = CsvQuotes.Look(cell, out var wrongFrom);
            if (use is not (QuoteUse.Bare or QuoteUse.Quoted or QuoteUse.Doubled))
            {
                return Report(use, column, cell, wrongFrom, record);
            }

            var length = 0;
            if (use == QuoteUse.Doubled)
            {
                MakeRoom(record.Span.Length);
                length = CsvQuotes.Undouble(cell[1..^1], values.AsSpan(end));
            }

            places[column] = (end, length);
            end += length;
        }

        hasQuotes = true;
        return RecordState.Whole;
    }

    private void MakeRoom(int length)
    {
        if (values.Length < length)
        {
            Array.Resize(ref values, length * 2);
        }
    }

    /// <summary>
    /// Reports quotation marks in the wrong place. If line breaks follow in the same record nobody can tell where the
    /// writer meant it to end, so the reading ends; else the next record is sound.
    /// </summary>
    private RecordState Report(
        QuoteUse use,
        int column,
        ReadOnlySpan<char> cell,
        int wrongFrom,
        SepReader.Row record
    )
    {
        var goOn = use != QuoteUse.Open && !HasLineBreak(cell[wrongFrom..]);
        for (var after = column + 1; goOn && after < Count; after++)
        {
            goOn = !HasLineBreak(record[after].Span);
        }

        var (expected, message) = use switch
        {
            QuoteUse.Open => (
                "a closing quotation mark",
                "a quotation mark is opened here and never closed: close it, and double each one inside the value"
            ),
            QuoteUse.TextAfter => (
                "a separator after the closing quotation mark",
                "text follows the closing quotation mark: double each quotation mark inside the value"
            ),
            _ => (
                "quotation marks around the whole value",
                "a quotation mark stands inside a value without quotation marks: "
                    + "put the value into quotation marks and double those inside"
            ),
        };
        errors.Add(
            file,
            Row,
            Exchange.Headings.Name(Headings, column),
            cell,
            expected,
            goOn ? message : $"{message}. Nothing below was read"
        );
        return goOn ? RecordState.Skipped : RecordState.Stopped;
    }

    private RecordState Stop(TextTrouble trouble)
    {
        var (expected, message) = trouble switch
        {
            TextTrouble.Zero => (
                "text",
                "a zero byte stands here, the file is damaged or not text: copy or save it again"
            ),
            TextTrouble.NotUtf8 => (
                "UTF-8",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"the byte {text.BadByte:X2} is not UTF-8 here: save the file as CSV UTF-8"
                )
            ),
            _ => (
                "at most 1 000 000 characters",
                "the row is longer than 1 000 000 characters: look for a quotation mark that is never closed, "
                    + "or for missing line ends"
            ),
        };
        errors.Add(file, Row, null, [], expected, $"{message}. Nothing below was read");
        return RecordState.Stopped;
    }

    private static bool HasLineBreak(ReadOnlySpan<char> characters) =>
        characters.ContainsAny('\r', '\n');
}

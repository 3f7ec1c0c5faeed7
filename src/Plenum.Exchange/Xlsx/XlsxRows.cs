using Plenum.Core.Foundation;

namespace Plenum.Exchange.Xlsx;

/// <summary>The rows below the header of a sheet.</summary>
internal sealed class XlsxRows : RowReader
{
    private readonly string file;
    private readonly SheetRows rows;
    private readonly InputErrors errors;
    private bool ended;

    private XlsxRows(string file, SheetRows rows, IReadOnlyList<string> header, InputErrors errors)
        : base(header)
    {
        this.file = file;
        this.rows = rows;
        this.errors = errors;
    }

    public override double Fraction => rows.Fraction;

    public override ReadOnlySpan<char> this[int column] => rows.Values[column];

    /// <summary>Takes over the rows; null, and they are closed, after reporting what is wrong with the header.</summary>
    public static XlsxRows? Open(string file, SheetRows rows, InputErrors errors)
    {
        XlsxRows? reader = null;
        try
        {
            if (!rows.Next())
            {
                Headings.Read(file, [], errors);
            }
            else if (rows.IsSound && Headings.Read(file, rows.Values, errors) is { } header)
            {
                rows.Headings = header;
                reader = new XlsxRows(file, rows, header, errors);
            }

            return reader;
        }
        finally
        {
            if (reader is null)
            {
                rows.Dispose();
            }
        }
    }

    public override bool Read()
    {
        try
        {
            while (!ended)
            {
                ended = !rows.Next();
                Row = rows.Row;
                if (!ended && rows.IsSound && !IsEmpty(0) && HasRightCount())
                {
                    return true;
                }
            }
        }
        catch (Exception e) when (Workbook.IsDamage(e))
        {
            errors.Add(
                file,
                Row + 1,
                null,
                [],
                "a whole .xlsx workbook",
                $"{Workbook.Damaged(e)}. Nothing below was read"
            );
            Failed = true;
            ended = true;
        }

        return false;
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            rows.Dispose();
        }
    }

    /// <summary>A sheet has no ends of rows, so a row can only have too many cells.</summary>
    private bool HasRightCount()
    {
        if (IsEmpty(CellCount))
        {
            return true;
        }

        var count = rows.Values.Count;
        while (string.IsNullOrWhiteSpace(rows.Values[count - 1]))
        {
            count--;
        }

        Headings.ReportCount(file, Row, count, CellCount, errors);
        return false;
    }

    private bool IsEmpty(int from)
    {
        for (var column = from; column < rows.Values.Count; column++)
        {
            if (!string.IsNullOrWhiteSpace(rows.Values[column]))
            {
                return false;
            }
        }

        return true;
    }
}

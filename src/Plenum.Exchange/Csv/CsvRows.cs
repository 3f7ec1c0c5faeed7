using Plenum.Core.Foundation;

namespace Plenum.Exchange.Csv;

/// <summary>The rows below the header of a CSV file.</summary>
internal sealed class CsvRows(
    string file,
    CsvRecords records,
    IReadOnlyList<string> header,
    InputErrors errors
) : RowReader(header)
{
    private bool ended;

    public override double Fraction => records.Fraction;

    public override ReadOnlySpan<char> this[int column] => records[column];

    public override bool Read()
    {
        while (!ended)
        {
            var state = records.Next();
            Row = records.Row;
            switch (state)
            {
                case RecordState.Whole when HasValue(0) && HasRightCount():
                    return true;
                case RecordState.Stopped:
                    Failed = true;
                    ended = true;
                    break;
                case RecordState.End:
                    ended = true;
                    break;
            }
        }

        return false;
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            records.Dispose();
        }
    }

    /// <summary>Empty cells beyond the last heading do no harm.</summary>
    private bool HasRightCount()
    {
        if (records.Count == CellCount || (records.Count > CellCount && !HasValue(CellCount)))
        {
            return true;
        }

        Headings.ReportCount(file, Row, records.Count, CellCount, errors);
        return false;
    }

    private bool HasValue(int from)
    {
        for (var column = from; column < records.Count; column++)
        {
            var cell = records[column];
            if (cell.Length > 0 && (!char.IsWhiteSpace(cell[0]) || !cell.IsWhiteSpace()))
            {
                return true;
            }
        }

        return false;
    }
}

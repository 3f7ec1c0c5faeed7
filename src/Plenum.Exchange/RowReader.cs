namespace Plenum.Exchange;

/// <summary>
/// Reads the rows of one table forward, once, holding no more than the row at hand. What is wrong with a row goes to the
/// errors that the reader was opened with, and that row is skipped; so a row that <see cref="Read"/> stops at is whole.
/// </summary>
public abstract class RowReader : IDisposable
{
    private protected RowReader(IReadOnlyList<string> header) => Header = header;

    /// <summary>
    /// The headings from left to right, trimmed, otherwise as written; none is empty and no two differ only in case.
    /// </summary>
    public IReadOnlyList<string> Header { get; }

    /// <summary>
    /// The number of the row at hand as a spreadsheet counts: the header is 1, the first record 2. A record with line
    /// breaks inside quotation marks is one row; an empty row counts.
    /// </summary>
    public int Row { get; private protected set; }

    /// <summary>How many cells the row at hand has: as many as there are headings.</summary>
    public int CellCount => Header.Count;

    /// <summary>The share of the table that has been read, from 0 to 1, for showing progress.</summary>
    public abstract double Fraction { get; }

    /// <summary>
    /// True once an error ended the reading before the table's end: what stands below is unknown. Rows that were only
    /// skipped do not set it; they are among the errors.
    /// </summary>
    public bool Failed { get; private protected set; }

    /// <summary>
    /// A cell of the row at hand, counted from 0, without its quotation marks, with spaces as written; empty for no
    /// value. Valid until the next <see cref="Read"/>.
    /// </summary>
    public abstract ReadOnlySpan<char> this[int column] { get; }

    /// <summary>
    /// Goes to the next row that holds anything; cells of nothing but white space hold nothing. False at the end, and
    /// after an error that the reading cannot go on from.
    /// </summary>
    public abstract bool Read();

    public void Dispose()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    protected abstract void Dispose(bool disposing);
}

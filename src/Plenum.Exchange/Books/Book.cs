namespace Plenum.Exchange.Books;

/// <summary>What a column of a workbook holds, and with it how it is shown.</summary>
public enum BookColumnKind
{
    /// <summary>Names the row; not to be edited, shown on a darker ground.</summary>
    Key,

    /// <summary>Shown for reading; not to be edited.</summary>
    Shown,

    /// <summary>A line of text.</summary>
    Text,

    /// <summary>Several lines of text, wrapped.</summary>
    Lines,

    /// <summary>A name, indented by the row's level.</summary>
    Name,

    /// <summary>A number, written as one.</summary>
    Number,
}

/// <param name="Heading">Its heading.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Width">In characters.</param>
/// <param name="IsHidden">Not shown until somebody asks for it.</param>
public sealed record BookColumn(
    string Heading,
    BookColumnKind Kind,
    double Width,
    bool IsHidden = false
);

/// <summary>How a cell of a matrix is shown.</summary>
public enum BookMark
{
    None,

    /// <summary>Something is to be decided here.</summary>
    Open,

    /// <summary>Decided, and not to be edited here.</summary>
    Settled,
}

/// <param name="Level">Level from 1.</param>
/// <param name="IsBold">It has parts.</param>
/// <param name="Cells">A text for each column; null for nothing.</param>
/// <param name="Marks">How each cell is shown; empty for the way of its column.</param>
public sealed record BookRow(
    int Level,
    bool IsBold,
    IReadOnlyList<string?> Cells,
    IReadOnlyList<BookMark> Marks
);

/// <param name="Name">What stands on its tab.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="FrozenColumns">How many of them stay in view.</param>
/// <param name="Rows">Its rows.</param>
public sealed record BookSheet(
    string Name,
    IReadOnlyList<BookColumn> Columns,
    int FrozenColumns,
    IEnumerable<BookRow> Rows
);

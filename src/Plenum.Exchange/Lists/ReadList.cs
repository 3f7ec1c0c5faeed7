using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Exchange.Lists;

/// <summary>What shows the place of the rows of a list.</summary>
public enum ListForm
{
    /// <summary>Nothing does: all rows are sisters.</summary>
    Plain,

    /// <summary>Leading spaces.</summary>
    Spaces,

    /// <summary>Leading tabs, which are empty cells of a spreadsheet.</summary>
    Cells,

    /// <summary>The codes: 1.1 is part of 1.</summary>
    Codes,

    /// <summary>A column headed <c>level</c>.</summary>
    Levels,
}

/// <summary>One element of a list.</summary>
/// <param name="Line">The line on which it begins, from 1.</param>
/// <param name="Level">1 for a row that has none above it in the list.</param>
/// <param name="Parent">The row, counted from 0, that it is part of; −1 for none.</param>
/// <param name="Code">The code that the list gives it; null for none.</param>
/// <param name="Name">The name; not empty, except in a list with errors.</param>
/// <param name="Cells">Further cells, one for each of <see cref="ReadList.Columns"/>; null where empty.</param>
public sealed record ListRow(
    int Line,
    int Level,
    int Parent,
    string? Code,
    string Name,
    IReadOnlyList<string?> Cells
);

/// <summary>Something that a person should look at before taking a list over.</summary>
public sealed record ListWarning(int Line, string Text);

/// <summary>A list as it was understood.</summary>
/// <param name="Form">What shows the place of its rows.</param>
/// <param name="Columns">The further columns of elements that it gives.</param>
/// <param name="Rows">The rows, a parent before its children and a subtree in one piece.</param>
/// <param name="Errors">All that is wrong; with any, the rows are what could be understood.</param>
/// <param name="Warnings">What should be looked at; 1 000 at most.</param>
public sealed record ReadList(
    ListForm Form,
    IReadOnlyList<ColumnDefinition> Columns,
    IReadOnlyList<ListRow> Rows,
    InputErrors Errors,
    IReadOnlyList<ListWarning> Warnings
)
{
    /// <summary>The greatest level; 0 for an empty list.</summary>
    public int Depth => Rows.Count == 0 ? 0 : Rows.Max(row => row.Level);
}

/// <summary>How large a list may be.</summary>
public static class ListLimits
{
    public const int MostRows = 100_000;

    /// <summary>Characters of one cell: as many as a cell of a workbook holds (ISO/IEC 29500).</summary>
    public const int LongestText = 32_767;
}

using Plenum.Core.Foundation;

namespace Plenum.Workbench.Workbooks;

/// <summary>One thing that a workbook would change.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="Row">The row as a spreadsheet counts.</param>
/// <param name="Code">Code of the element; empty for a new one without.</param>
/// <param name="What">The column, or <c>new</c>, <c>moved</c> or <c>order</c>.</param>
/// <param name="Before">What stands in the project; null for nothing.</param>
/// <param name="After">What stands in the workbook; null for nothing.</param>
public sealed record WorkbookChange(
    string Sheet,
    int Row,
    string Code,
    string What,
    string? Before,
    string? After
);

/// <summary>What a workbook that came back says.</summary>
/// <param name="Changes">What would change.</param>
/// <param name="Missing">Codes of elements of the subtree that are not on the outline; they stay as they are.</param>
/// <param name="Errors">All that is wrong; with any, nothing is taken.</param>
/// <param name="Command">The command that takes it over; null if nothing changes or something is wrong.</param>
public sealed record WorkbookAnswer(
    IReadOnlyList<WorkbookChange> Changes,
    IReadOnlyList<string> Missing,
    InputErrors Errors,
    EditWorkbookCommand? Command
);

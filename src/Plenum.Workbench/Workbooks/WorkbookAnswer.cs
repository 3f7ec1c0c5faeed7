using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Workbench.Commands;

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
)
{
    /// <summary>
    /// Says of what a rule finds wrong with an element in which row of the workbook the element was changed.
    /// </summary>
    /// <param name="fault">What is wrong.</param>
    /// <param name="file">Name of the workbook.</param>
    public EditFault Placed(EditFault fault, string file)
    {
        if (fault.Line is not null || fault.Table != ElementTable.Definition.Name)
        {
            return fault.Table.Length == 0 ? fault with { Table = file } : fault;
        }

        var changes = Changes.Where(change => change.Code == fault.Row).ToList();
        var change =
            changes.Find(change => change.What == fault.Column) ?? changes.FirstOrDefault();
        return change is null
            ? fault
            : fault with
            {
                Table = $"{file}, sheet {change.Sheet}",
                Line = change.Row,
            };
    }
}

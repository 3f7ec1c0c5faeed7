using System.Globalization;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Exchange.Books;
using Plenum.Workbench.Commands;

namespace Plenum.Workbench.Workbooks;

/// <summary>Collects in which cells a workbook and a project differ.</summary>
internal sealed class SheetDifference(Project project, InputErrors errors)
{
    private readonly ProjectText text = new(project);

    public InputErrors Errors => errors;

    public List<WorkbookChange> Changes { get; } = [];

    public List<WorkbookCell> Cells { get; } = [];

    public static SheetPlace Where(ReadBookSheet sheet, ReadBookRow row) =>
        new(sheet.File, row.Row);

    /// <summary>Compares a cell of an element; a column that is not on the sheet changes nothing.</summary>
    public void Compare(ReadBookSheet sheet, ReadBookRow row, int position, ColumnDefinition column)
    {
        if (!sheet.Has(column.Name))
        {
            return;
        }

        var elements = project[ElementTable.Definition];
        var before = text.Of(elements, position, column);
        var after = row[column.Name];
        if (IsSame(column, before ?? "", after))
        {
            return;
        }

        var written = after.Trim();
        Cells.Add(
            new WorkbookCell(
                new CellText(
                    elements.Definition.Name,
                    elements.Ids[position],
                    column.Name,
                    written.Length == 0 ? null : written,
                    before
                ),
                Where(sheet, row)
            )
        );
        Note(
            sheet,
            row,
            elements.Codes[position]!,
            column.Name,
            before,
            written.Length == 0 ? null : written
        );
    }

    public void Note(
        ReadBookSheet sheet,
        ReadBookRow row,
        string code,
        string what,
        string? before,
        string? after
    ) => Changes.Add(new WorkbookChange(sheet.Name, row.Row, code, what, before, after));

    /// <summary>1200.50 and 1200.5 are the same amount; spaces at the ends of a text do not count.</summary>
    private static bool IsSame(ColumnDefinition column, string before, string after) =>
        before == after
        || before.Trim() == after.Trim()
        || (
            column.Kind is CellKind.Money or CellKind.Hours or CellKind.Decimal
            && IsNumber(before, out var one)
            && IsNumber(after, out var other)
            && one == other
        );

    private static bool IsNumber(string text, out decimal number) =>
        decimal.TryParse(
            text.Trim(),
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out number
        );
}

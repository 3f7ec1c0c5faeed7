using System.Globalization;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Exchange.Books;

namespace Plenum.Workbench.Workbooks;

/// <summary>Recognises the rows of a sheet by their hidden id and their code; one that does not fit is an error.</summary>
internal sealed class SheetKeys(Project project, ReadBookSheet sheet, InputErrors errors)
{
    private readonly Dictionary<int, int> rowOf = [];

    /// <summary>Position of the row's element; −1 for a new row, null after an error.</summary>
    /// <param name="row">The row.</param>
    /// <param name="mayBeNew">A row without an id is a new one; else it is an error.</param>
    public int? Find(ReadBookRow row, bool mayBeNew)
    {
        var elements = project[ElementTable.Definition];
        var (key, code) = (row[WorkbookLayout.Id].Trim(), row[WorkbookLayout.Code].Trim());
        if (key.Length == 0)
        {
            return FindNew(row, code, mayBeNew);
        }

        if (
            !int.TryParse(key, NumberStyles.None, CultureInfo.InvariantCulture, out var id)
            || elements.RowOf(id) is not (>= 0 and var position)
        )
        {
            errors.Add(
                sheet.File,
                row.Row,
                WorkbookLayout.Id,
                key,
                "the id that was written",
                $"no element of the project has the id \"{InputErrors.Shorten(key)}\": put back the id that was written, or empty id and code for a new row"
            );
            return null;
        }

        var known = elements.Codes[position]!;
        if (code != known)
        {
            errors.Add(
                sheet.File,
                row.Row,
                WorkbookLayout.Code,
                code,
                known,
                $"the key of this row belongs to {known}, but \"{InputErrors.Shorten(code)}\" stands there: codes are not changed in the workbook; put {known} back, or empty the id if this is a new row"
            );
            return null;
        }

        if (!rowOf.TryAdd(id, row.Row))
        {
            errors.Add(
                sheet.File,
                row.Row,
                WorkbookLayout.Id,
                key,
                "each key once",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{known} stands in row {rowOf[id]} already: empty id and code of a copied row, so that it is a new one"
                )
            );
            return null;
        }

        return position;
    }

    private int? FindNew(ReadBookRow row, string code, bool mayBeNew)
    {
        var known = code.Length > 0 && project[ElementTable.Definition].RowOfCode(code) >= 0;
        if (mayBeNew && !known)
        {
            return -1;
        }

        errors.Add(
            sheet.File,
            row.Row,
            WorkbookLayout.Id,
            "",
            "the id that was written",
            known
                ? $"the hidden id of {code} is gone: put it back, or give a new row another code"
                : $"a new row belongs on the sheet {WorkbookLayout.Outline}; here every row needs its id"
        );
        return null;
    }
}

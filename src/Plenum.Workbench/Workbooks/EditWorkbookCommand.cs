using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Workbench.Commands;

namespace Plenum.Workbench.Workbooks;

/// <summary>A row of a sheet.</summary>
/// <param name="File">The file and the sheet.</param>
/// <param name="Row">The row as a spreadsheet counts.</param>
public sealed record SheetPlace(string File, int Row);

/// <summary>A new row of the outline.</summary>
/// <param name="Key">Its number in the command, below 0.</param>
/// <param name="Name">Its name.</param>
/// <param name="Code">Its code; null for the next free one.</param>
/// <param name="Cells">Further cells by the names of their columns.</param>
/// <param name="Where">Where it stands, for messages.</param>
public sealed record WorkbookRow(
    int Key,
    string Name,
    string? Code,
    IReadOnlyList<KeyValuePair<string, string>> Cells,
    SheetPlace Where
);

/// <summary>The children of an element in the order of the outline.</summary>
/// <param name="Parent">Id of the parent; below 0 for a new row.</param>
/// <param name="Children">Ids; below 0 for new rows.</param>
public sealed record WorkbookFamily(int Parent, IReadOnlyList<int> Children);

/// <summary>An activity that is ruled out for a part, or no longer is.</summary>
/// <param name="Element">Id of the part.</param>
/// <param name="Activity">The activity.</param>
/// <param name="Reason">Why; null for no longer.</param>
/// <param name="Seen">The reason that was there.</param>
public sealed record WorkbookReason(int Element, string Activity, string? Reason, string? Seen);

/// <summary>A cell of the workbook that has changed, with where it stands, for messages.</summary>
public sealed record WorkbookCell(CellText Cell, SheetPlace Where);

/// <summary>Takes over all that was changed in a workbook: one step.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Rows">New rows.</param>
/// <param name="Families">Families that have changed, a parent before its children.</param>
/// <param name="Cells">Cells that have changed.</param>
/// <param name="Reasons">Cells of the matrix that have changed.</param>
public sealed record EditWorkbookCommand(
    string File,
    IReadOnlyList<WorkbookRow> Rows,
    IReadOnlyList<WorkbookFamily> Families,
    IReadOnlyList<WorkbookCell> Cells,
    IReadOnlyList<WorkbookReason> Reasons
) : EditCommand
{
    public override string Tell(Project before) => $"take over the workbook {File}";

    protected internal override void Apply(EditDraft draft)
    {
        List<EditFault> faults = [];
        List<EditConflict> conflicts = [];
        Dictionary<int, int> ids = [];
        var rows = Rows.ToDictionary(row => row.Key);
        foreach (var family in Families)
        {
            Try(null, () => Arrange(draft, family, rows, ids));
        }

        foreach (var row in Rows.Where(row => ids.ContainsKey(row.Key)))
        {
            foreach (var (column, cell) in row.Cells)
            {
                Try(
                    row.Where,
                    () => draft.Set(Commands.Cells.ColumnOf("elements", column), ids[row.Key], cell)
                );
            }
        }

        foreach (var (cell, where) in Cells)
        {
            Try(where, () => draft.Set(cell.Definition, cell.Id, cell.Text, cell.Seen));
        }

        if (Reasons.Count > 0)
        {
            var matrix = new MatrixCells(draft.Before);
            foreach (var reason in Reasons)
            {
                Try(null, () => Rule(draft, matrix, reason));
            }
        }

        if (faults.Count > 0)
        {
            throw new EditException(faults);
        }

        if (conflicts.Count > 0)
        {
            throw new EditConflictException(conflicts);
        }

        void Try(SheetPlace? where, Action write)
        {
            try
            {
                write();
            }
            catch (EditConflictException both)
            {
                conflicts.AddRange(both.Conflicts);
            }
            catch (EditException wrong)
            {
                faults.AddRange(
                    wrong.Faults.Select(fault =>
                        where is null ? fault : fault with { Table = where.File, Line = where.Row }
                    )
                );
            }
        }
    }

    /// <summary>Puts a family into the order of the outline; sisters that are not on it stay behind those they followed.</summary>
    private static void Arrange(
        EditDraft draft,
        WorkbookFamily family,
        Dictionary<int, WorkbookRow> rows,
        Dictionary<int, int> ids
    )
    {
        var breakdown = draft.Breakdown;
        if (!TryId(family.Parent, ids, out var parent))
        {
            return;
        }

        HashSet<int> listed = [.. family.Children];
        Dictionary<int, List<int>> followers = [];
        var before = 0;
        foreach (var child in breakdown.Children(parent))
        {
            if (listed.Contains(child))
            {
                before = child;
            }
            else
            {
                Following(before).Add(child);
            }
        }

        List<int> order = [.. Following(0)];
        foreach (var child in family.Children)
        {
            order.Add(child);
            order.AddRange(Following(child));
        }

        for (var place = 0; place < order.Count; place++)
        {
            var child = order[place];
            if (child < 0)
            {
                ids[child] = Add(draft, parent, place, rows[child]);
            }
            else if (
                breakdown.Parent(child) != parent
                || breakdown.Children(parent)[place] != child
            )
            {
                breakdown.Move(child, parent, place);
            }
        }

        List<int> Following(int child) =>
            followers.TryGetValue(child, out var after) ? after : followers[child] = [];
    }

    /// <summary>A name that a sister has is refused: a workbook that is read twice would add its new rows twice.</summary>
    private static int Add(EditDraft draft, int parent, int place, WorkbookRow row)
    {
        var breakdown = draft.Breakdown;
        if (breakdown.Children(parent).Any(id => draft.Text(ElementTable.Name, id) == row.Name))
        {
            throw new EditException([
                new EditFault(
                    row.Where.File,
                    null,
                    ElementTable.Name.Name,
                    InputErrors.Shorten(row.Name),
                    "a name that no sister has",
                    $"{breakdown.Say(parent)} has a part \"{InputErrors.Shorten(row.Name)}\" already: name what makes them different. If this workbook was read before, write it anew"
                )
                {
                    Line = row.Where.Row,
                },
            ]);
        }

        try
        {
            return breakdown.Add(parent, place, row.Name, row.Code);
        }
        catch (EditException wrong)
        {
            throw new EditException([
                .. wrong.Faults.Select(fault =>
                    fault with
                    {
                        Table = row.Where.File,
                        Line = row.Where.Row,
                    }
                ),
            ]);
        }
    }

    private static bool TryId(int key, Dictionary<int, int> ids, out int id)
    {
        id = key;
        return key > 0 || ids.TryGetValue(key, out id);
    }

    private static void Rule(EditDraft draft, MatrixCells matrix, WorkbookReason reason)
    {
        var row = matrix.IdOf(reason.Element, reason.Activity);
        if (row != 0 && draft.Has(NotNeededTable.Definition, row))
        {
            if (reason.Reason is null)
            {
                draft.Remove(NotNeededTable.Definition, row);
            }
            else
            {
                draft.Set(NotNeededTable.Reason, row, reason.Reason, reason.Seen);
            }
        }
        else if (reason.Reason is not null)
        {
            draft.Add(
                NotNeededTable.Definition,
                (NotNeededTable.Element, draft.CodeOf(ElementTable.Definition, reason.Element)),
                (NotNeededTable.Activity, reason.Activity),
                (NotNeededTable.Reason, reason.Reason)
            );
        }
    }
}

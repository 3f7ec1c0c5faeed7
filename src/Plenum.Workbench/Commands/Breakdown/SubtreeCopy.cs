using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Estimate;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>
/// Copies an element with all below it: names, split logic, part types, dictionary, what is allotted, people in charge,
/// what is not needed, techniques and estimate lines. Dates, budgets, accounts and what was reported stay with the
/// original: a copy is work that is still to be planned.
/// </summary>
internal static class SubtreeCopy
{
    private static readonly ColumnDefinition[] NotCopied =
    [
        ElementTable.Code,
        ElementTable.Parent,
        ElementTable.Order,
    ];

    private static readonly ColumnDefinition[] PackageCells =
    [
        PackageTable.Technique,
        PackageTable.Base,
        PackageTable.Spread,
    ];

    /// <summary>Copies below a parent, at a place.</summary>
    /// <returns>Id of the copy.</returns>
    public static int Put(EditDraft draft, int original, int parent, int place, string? name = null)
    {
        int[] sources = [.. draft.Breakdown.Subtree(original)];
        Dictionary<int, int> copies = [];
        var top = 0;
        foreach (var source in sources)
        {
            var above = source == original ? parent : copies[draft.Breakdown.Parent(source)];
            var copy = draft.Breakdown.Add(
                above,
                source == original ? place : draft.Breakdown.Children(above).Count,
                (source == original ? name : null) ?? draft.Text(ElementTable.Name, source)!
            );
            copies[source] = copy;
            top = top == 0 ? copy : top;
            foreach (var column in ElementTable.Definition.Columns)
            {
                if (!NotCopied.Contains(column) && column != ElementTable.Name)
                {
                    draft[ElementTable.Definition].Copy(column, source, copy);
                }
            }
        }

        CopyRows(draft, NotNeededTable.Definition, NotNeededTable.Element, copies, _ => true);
        CopyRows(
            draft,
            PackageTable.Definition,
            PackageTable.Package,
            copies,
            PackageCells.Contains
        );
        CopyRows(draft, EstimateTable.Definition, EstimateTable.Package, copies, _ => true);
        return top;
    }

    private static void CopyRows(
        EditDraft draft,
        TableDefinition table,
        ColumnDefinition owner,
        Dictionary<int, int> copies,
        Func<ColumnDefinition, bool> isCopied
    )
    {
        HashSet<int> sources = [.. copies.Keys];
        var users = PackageWork
            .Users(draft, ElementTable.Definition, sources, column => column == owner)
            .ToList();
        foreach (var (_, row, source) in users)
        {
            var id = draft.Add(table);
            draft.SetReference(owner, id, copies[source]);
            foreach (var column in table.Columns.Where(column => column != owner))
            {
                if (column.IsComputed || !isCopied(column))
                {
                    continue;
                }

                // what follows a package that is copied too follows the copy
                if (
                    column == PackageTable.Base
                    && copies.TryGetValue(draft.Reference(column, row), out var copied)
                )
                {
                    draft.SetReference(column, id, copied);
                }
                else
                {
                    draft[table].Copy(column, row, id);
                }
            }
        }
    }
}

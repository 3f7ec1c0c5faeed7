using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Status;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>What other tables say of elements and packages.</summary>
internal static class PackageWork
{
    /// <summary>Tables that record what has happened: their rows are never taken out along with an element.</summary>
    private static readonly HashSet<TableDefinition> Records =
    [
        StatusTable.Definition,
        ActivityStatusTable.Definition,
        MilestoneStatusTable.Definition,
        ItemStepTable.Definition,
        ActualTable.Definition,
        CommitmentTable.Definition,
        PostingTable.Definition,
    ];

    public static bool IsRecord(TableDefinition table) => Records.Contains(table);

    /// <summary>The name of a table that holds work of the element as a package; null if there is none.</summary>
    public static string? First(EditDraft draft, int element) =>
        Users(
                draft,
                ElementTable.Definition,
                new HashSet<int> { element },
                column => column.IsPackageReference
            )
            .Select(user => user.Column.Table.Name)
            .FirstOrDefault();

    /// <summary>Ids of the elements that hold work as packages in a value. Time: all references to packages.</summary>
    public static HashSet<int> OwnersIn(Project project)
    {
        HashSet<int> owners = [];
        foreach (var definition in ProjectLayout.Tables)
        {
            foreach (var column in definition.Columns)
            {
                var target = column.IsPackageReference
                    ? column.TargetOf(ElementTable.Definition)
                    : -1;
                if (target < 0)
                {
                    continue;
                }

                foreach (var stored in project[definition].Ints(column))
                {
                    if (
                        stored >= 0
                        && column.DecodeReference(stored) is var (found, id)
                        && found == target
                    )
                    {
                        owners.Add(id);
                    }
                }
            }
        }

        return owners;
    }

    /// <summary>All rows that refer to a row, by the column that does.</summary>
    public static IEnumerable<(ColumnDefinition Column, int Id)> Users(
        EditDraft draft,
        TableDefinition table,
        int id
    ) =>
        Users(draft, table, new HashSet<int> { id }, _ => true)
            .Select(user => (user.Column, user.Id));

    /// <summary>
    /// All rows that refer to one of some rows, by the column that does. Time: all references to the table, unless the
    /// draft itself has added what is referred to.
    /// </summary>
    public static IEnumerable<(ColumnDefinition Column, int Id, int Target)> Users(
        EditDraft draft,
        TableDefinition table,
        IReadOnlySet<int> ids,
        Func<ColumnDefinition, bool> isMeant
    )
    {
        var wereThere = ids.Any(id => draft.Before[table].RowOf(id) >= 0);
        foreach (var definition in ProjectLayout.Tables)
        {
            var edit = draft.Edits.GetValueOrDefault(definition);
            if (edit is null && !wereThere)
            {
                continue;
            }

            foreach (var column in definition.Columns)
            {
                var target = column.TargetOf(table);
                if (target < 0 || !isMeant(column))
                {
                    continue;
                }

                foreach (var user in UsersIn(draft, column, target, ids, wereThere))
                {
                    yield return user;
                }
            }
        }
    }

    private static List<(ColumnDefinition Column, int Id, int Target)> UsersIn(
        EditDraft draft,
        ColumnDefinition column,
        int target,
        IReadOnlySet<int> ids,
        bool wereThere
    )
    {
        List<(ColumnDefinition, int, int)> users = [];
        var before = draft.Before[column.Table];
        var edit = draft.Edits.GetValueOrDefault(column.Table);
        HashSet<int> written = edit is null ? [] : [.. edit.Touched];
        if (wereThere)
        {
            foreach (var row in References.RowsTo(before, column, target, ids))
            {
                var id = before.Ids[row];
                if (edit is null || (edit.Has(id) && !written.Contains(id)))
                {
                    Add(id, before.Ints(column)[row]);
                }
            }
        }

        foreach (var id in edit is null ? [] : written.Concat(edit.Added).ToArray())
        {
            Add(id, edit!.Int(column, id));
        }

        return users;

        void Add(int id, int stored)
        {
            if (
                stored >= 0
                && column.DecodeReference(stored) is var (found, to)
                && found == target
                && ids.Contains(to)
            )
            {
                users.Add((column, id, to));
            }
        }
    }
}

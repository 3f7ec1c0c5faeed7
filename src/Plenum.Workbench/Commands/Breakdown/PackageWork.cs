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
                    ? TargetOf(column, ElementTable.Definition)
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

    /// <summary>All rows that refer to one of some rows, by the column that does. Time: all references to the table.</summary>
    public static IEnumerable<(ColumnDefinition Column, int Id, int Target)> Users(
        EditDraft draft,
        TableDefinition table,
        IReadOnlySet<int> ids,
        Func<ColumnDefinition, bool> isMeant
    )
    {
        foreach (var definition in ProjectLayout.Tables)
        {
            foreach (var column in definition.Columns)
            {
                var target = TargetOf(column, table);
                if (target < 0 || !isMeant(column))
                {
                    continue;
                }

                foreach (var user in UsersIn(draft, column, target, ids))
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
        IReadOnlySet<int> ids
    )
    {
        List<(ColumnDefinition, int, int)> users = [];
        var before = draft.Before[column.Table];
        var edit = draft.Edits.GetValueOrDefault(column.Table);
        var values = before.Ints(column);
        for (var row = 0; row < values.Length; row++)
        {
            Look(before.Ids[row], values[row]);
        }

        foreach (var id in edit is null ? [] : (int[])[.. edit.Added])
        {
            Look(id, edit!.Int(column, id));
        }

        return users;

        void Look(int id, int stored)
        {
            if (edit is not null)
            {
                if (!edit.Has(id))
                {
                    return;
                }

                stored = edit.Int(column, id);
            }

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

    private static int TargetOf(ColumnDefinition column, TableDefinition table)
    {
        for (var target = 0; target < column.Targets.Count; target++)
        {
            if (column.Targets[target] == table.Name)
            {
                return target;
            }
        }

        return -1;
    }
}

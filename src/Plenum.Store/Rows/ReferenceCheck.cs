using Plenum.Core;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Store.Rows;

/// <summary>Finds references to rows that are not there. Time: in the number of cells that are looked at.</summary>
internal static class ReferenceCheck
{
    /// <summary>The first reference of the project that leads nowhere, in words; null if there is none.</summary>
    public static string? All(Project project) =>
        project
            .Tables.Select(table => InRows(project, table, null))
            .FirstOrDefault(found => found is not null);

    /// <summary>
    /// The first reference that leads nowhere, in words, once some rows have changed; null if there is none. Looks at
    /// the rows that were added or updated, and at all that may refer to a row that was removed.
    /// </summary>
    public static string? AfterChange(Project project, IReadOnlyList<TableChange> changes)
    {
        foreach (var change in changes)
        {
            var found =
                InRows(project, project[change.Definition], change.Added)
                ?? InRows(project, project[change.Definition], change.Updated)
                ?? ToRemoved(project, change);
            if (found is not null)
            {
                return found;
            }
        }

        return null;
    }

    private static string? ToRemoved(Project project, TableChange change)
    {
        if (change.Removed.Count == 0)
        {
            return null;
        }

        HashSet<int> removed = [.. change.Removed];
        foreach (var table in project.Tables)
        {
            foreach (var column in table.Definition.Columns)
            {
                var target = column.TargetOf(change.Definition);
                if (
                    target >= 0
                    && References.RowsTo(table, column, target, removed) is [var row, ..]
                )
                {
                    return Words(table, row, column, change.Definition);
                }
            }
        }

        return null;
    }

    private static string? InRows(Project project, Table table, IReadOnlyList<int>? ids)
    {
        foreach (var column in table.Definition.Columns)
        {
            if (column.Kind != CellKind.Reference || (ids?.Count ?? table.Count) == 0)
            {
                continue;
            }

            var targets = new Table[column.Targets.Count];
            for (var target = 0; target < targets.Length; target++)
            {
                targets[target] = project[ProjectLayout.Target(column, target)];
            }

            var values = table.Ints(column);
            for (var i = 0; i < (ids?.Count ?? values.Length); i++)
            {
                var row = ids is null ? i : table.RowOf(ids[i]);
                if (row < 0 || values[row] < 0)
                {
                    continue;
                }

                var (target, id) = column.DecodeReference(values[row]);
                if (targets[target].RowOf(id) < 0)
                {
                    return Words(table, row, column, targets[target].Definition);
                }
            }
        }

        return null;
    }

    private static string Words(
        Table table,
        int row,
        ColumnDefinition column,
        TableDefinition target
    ) =>
        $"table {table.Definition.Name}, row with id {table.Ids[row]}, column {column.Name}: there is no row "
        + $"{column.DecodeReference(table.Ints(column)[row]).Id} in {target.Name}";
}

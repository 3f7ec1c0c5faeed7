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
        var removed = changes
            .Where(change => change.Removed.Count > 0)
            .Select(change => change.Definition.Name)
            .ToHashSet(StringComparer.Ordinal);
        foreach (var table in project.Tables)
        {
            var mayHaveLost = table.Definition.Columns.Any(column =>
                column.Targets.Any(removed.Contains)
            );
            var found = mayHaveLost
                ? InRows(project, table, null)
                : changes
                    .Where(change => change.Definition == table.Definition)
                    .SelectMany(change => new[] { change.Added, change.Updated })
                    .Select(ids => InRows(project, table, ids))
                    .FirstOrDefault(words => words is not null);
            if (found is not null)
            {
                return found;
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
                    return $"table {table.Definition.Name}, row with id {table.Ids[row]}, column {column.Name}: "
                        + $"there is no row {id} in {targets[target].Definition.Name}";
                }
            }
        }

        return null;
    }
}

namespace Plenum.Core.Foundation.Tables;

/// <summary>Which rows refer to some rows of another table.</summary>
public static class References
{
    // up to so many, one pass of wide comparisons for each is faster than a look-up for every cell
    private const int FewIds = 16;

    /// <summary>The rows of a column that refer to one of some rows, ascending.</summary>
    /// <param name="table">The table that refers.</param>
    /// <param name="column">Its column of references.</param>
    /// <param name="target">Which of the column's target tables is meant, from 0.</param>
    /// <param name="ids">Ids of rows of that target.</param>
    public static IReadOnlyList<int> RowsTo(
        Table table,
        ColumnDefinition column,
        int target,
        IReadOnlySet<int> ids
    )
    {
        var stored = table.Ints(column);
        List<int> rows = [];
        if (ids.Count > FewIds)
        {
            HashSet<int> sought = [.. ids.Select(id => column.EncodeReference(target, id))];
            for (var row = 0; row < stored.Length; row++)
            {
                if (sought.Contains(stored[row]))
                {
                    rows.Add(row);
                }
            }

            return rows;
        }

        foreach (var id in ids)
        {
            var sought = column.EncodeReference(target, id);
            for (
                int from = 0, found;
                (found = stored[from..].IndexOf(sought)) >= 0;
                from += found + 1
            )
            {
                rows.Add(from + found);
            }
        }

        rows.Sort();
        return rows;
    }
}

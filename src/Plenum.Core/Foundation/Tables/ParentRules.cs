namespace Plenum.Core.Foundation.Tables;

/// <summary>What holds for every table whose rows name a parent row of the same table.</summary>
public static class ParentRules
{
    /// <summary>For each row the row of its parent; −1 without one.</summary>
    public static int[] ParentRows(Table table, ColumnDefinition parent)
    {
        var ids = table.Ints(parent);
        var rows = new int[ids.Length];
        for (var row = 0; row < rows.Length; row++)
        {
            rows[row] = Cell.IsGiven(ids[row]) ? table.RowOf(ids[row]) : -1;
        }

        return rows;
    }

    /// <summary>Reports every ring of parents whole, in order, by code. Returns true if there is none.</summary>
    public static bool ReportRings(Table table, ColumnDefinition parent, IRowFaults faults) =>
        ReportRings(table, parent, ParentRows(table, parent), table.Codes, faults);

    /// <inheritdoc cref="ReportRings(Table, ColumnDefinition, IRowFaults)"/>
    public static bool ReportRings(
        Table table,
        ColumnDefinition parent,
        int[] parentRows,
        ReadOnlySpan<string?> codes,
        IRowFaults faults
    )
    {
        var none = true;
        foreach (var ring in DepthFirstOrder.Rings(parentRows))
        {
            none = false;
            List<string> names = [];
            foreach (var row in ring)
            {
                names.Add(codes[row]!);
            }

            names.Add(names[0]);
            const int LongestShown = 50;
            var shown = names.Count <= LongestShown ? names : [.. names.Take(LongestShown), "…"];
            faults.Add(
                table,
                ring[0],
                parent,
                "a parent that is not below the row itself",
                $"the parents form a ring of {names.Count - 1}: {string.Join(" in ", shown)}"
            );
        }

        return none;
    }
}
